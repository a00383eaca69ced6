package gltf

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"math"
)

// file is what the strict reader below understood of a GLB. It shares no type
// with the writer.
type file struct {
	title, caution string
	names          []string
	meshes         [][]part
}

// part is one primitive, decoded.
type part struct {
	pos, normal, uv [][]float64
	index           []int
	doubleSided     bool
	min, max        []float64
}

type glb struct {
	Asset struct {
		Version string
		Extras  struct{ Title, Caution string }
	}
	Scene  int
	Scenes []struct{ Nodes []int }
	Nodes  []struct {
		Name string
		Mesh int
	}
	Meshes []struct {
		Primitives []struct {
			Attributes map[string]int
			Indices    int
			Material   int
			Mode       int
		}
	}
	Materials []struct{ DoubleSided bool }
	Accessors []struct {
		BufferView, ByteOffset, ComponentType, Count int
		Type                                         string
		Min, Max                                     []float64
	}
	BufferViews []struct{ Buffer, ByteOffset, ByteLength, Target int }
	Buffers     []struct{ ByteLength int }
	bin         []byte
}

// read refuses whatever the standard refuses, as far as these files go.
func read(raw []byte) (*file, error) {
	g, err := chunks(raw)
	if err != nil {
		return nil, err
	}
	f := &file{title: g.Asset.Extras.Title, caution: g.Asset.Extras.Caution}
	for _, n := range g.Scenes[g.Scene].Nodes {
		node := g.Nodes[n]
		f.names = append(f.names, node.Name)
		var parts []part
		for k := range g.Meshes[node.Mesh].Primitives {
			p, err := g.part(node.Mesh, k)
			if err != nil {
				return nil, fmt.Errorf("%s primitive %d: %w", node.Name, k, err)
			}
			parts = append(parts, p)
		}
		f.meshes = append(f.meshes, parts)
	}
	return f, nil
}

func chunks(raw []byte) (*glb, error) {
	le := binary.LittleEndian
	if len(raw) < 28 || string(raw[:4]) != "glTF" || le.Uint32(raw[4:]) != 2 || int(le.Uint32(raw[8:])) != len(raw) {
		return nil, fmt.Errorf("header %q, %d bytes", raw[:12], len(raw))
	}
	n := int(le.Uint32(raw[12:]))
	if n%4 != 0 || string(raw[16:20]) != "JSON" {
		return nil, fmt.Errorf("JSON chunk of %d bytes, kind %q", n, raw[16:20])
	}
	head := raw[20+n:]
	m := int(le.Uint32(head))
	if m%4 != 0 || string(head[4:8]) != "BIN\x00" || len(head) != 8+m {
		return nil, fmt.Errorf("BIN chunk of %d bytes, kind %q, %d left", m, head[4:8], len(head))
	}
	g := &glb{bin: head[8:]}
	if err := json.NewDecoder(bytes.NewReader(raw[20 : 20+n])).Decode(g); err != nil {
		return nil, err
	}
	if g.Asset.Version != "2.0" || len(g.Buffers) != 1 || g.Buffers[0].ByteLength != m {
		return nil, fmt.Errorf("version %q, buffers %v for %d bytes", g.Asset.Version, g.Buffers, m)
	}
	return g, nil
}

func (g *glb) part(mesh, k int) (p part, err error) {
	prim := g.Meshes[mesh].Primitives[k]
	if prim.Mode != 4 {
		return p, fmt.Errorf("mode %d, want 4", prim.Mode)
	}
	p.doubleSided = g.Materials[prim.Material].DoubleSided
	for name, dst := range map[string]*[][]float64{"POSITION": &p.pos, "NORMAL": &p.normal, "TEXCOORD_0": &p.uv} {
		if a, ok := prim.Attributes[name]; ok {
			if *dst, err = g.numbers(a, 34962, 5126); err != nil {
				return p, fmt.Errorf("%s: %w", name, err)
			}
		}
	}
	p.min, p.max = g.Accessors[prim.Attributes["POSITION"]].Min, g.Accessors[prim.Attributes["POSITION"]].Max
	rows, err := g.numbers(prim.Indices, 34963, 5125)
	for _, r := range rows {
		p.index = append(p.index, int(r[0]))
	}
	return p, err
}

// numbers decodes one accessor and checks its alignment and bounds.
func (g *glb) numbers(i, target, component int) ([][]float64, error) {
	a := g.Accessors[i]
	v := g.BufferViews[a.BufferView]
	wide := map[string]int{"SCALAR": 1, "VEC2": 2, "VEC3": 3}[a.Type]
	if v.Target != target || a.ComponentType != component || wide == 0 {
		return nil, fmt.Errorf("target %d, component %d, type %q", v.Target, a.ComponentType, a.Type)
	}
	start := v.ByteOffset + a.ByteOffset
	if start%4 != 0 || a.ByteOffset+4*wide*a.Count > v.ByteLength || v.ByteOffset+v.ByteLength > len(g.bin) {
		return nil, fmt.Errorf("accessor at byte %d, %d × %d numbers, view %+v, buffer %d", start, a.Count, wide, v,
			len(g.bin))
	}
	rows := make([][]float64, a.Count)
	for r := range rows {
		for k := range wide {
			word := binary.LittleEndian.Uint32(g.bin[start+4*(r*wide+k):])
			x := float64(word)
			if component == 5126 {
				x = float64(math.Float32frombits(word))
			}
			rows[r] = append(rows[r], x)
		}
	}
	return rows, nil
}
