package gltf

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"

	"cowl/mesh"
	"cowl/mesh/surface"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// builder gathers the JSON part and the binary part side by side.
type builder struct {
	doc document
	bin []byte
}

func newBuilder(title string, c Cloth) *builder {
	front, used := c.material("cloth")
	facing, _ := c.material("self-facing")
	return &builder{doc: document{
		Asset: asset{"2.0", "cowl", extras{title, Caution,
			"place in the flat piece: u = X m (0 on the centre front, + wearer's left), v = -Y m"}},
		Scenes:         []scene{{Name: title}},
		Materials:      []material{front, facing, formMaterial},
		ExtensionsUsed: used,
	}}
}

// addCloth adds one node: the front and the facing share their vertices.
func (b *builder) addCloth(s surface.Surface) {
	uv := b.flats(s.Flat)
	at := attributes{b.positions(s.Pos), b.normals(s.Normal), &uv}
	var prims []primitive
	for material, facing := range []bool{false, true} {
		var tris [][3]int32
		for i, t := range s.Tris {
			if s.Facing[i] == facing {
				tris = append(tris, t)
			}
		}
		if len(tris) > 0 {
			prims = append(prims, primitive{at, b.indices(tris), material, modeTris})
		}
	}
	b.addNode("cloth", prims)
}

func (b *builder) addForm(f *mesh.Surface) {
	at := attributes{Position: b.positions(f.Pos), Normal: b.normals(f.Normal)}
	b.addNode("form", []primitive{{at, b.indices(f.Tris), 2, modeTris}})
}

func (b *builder) addNode(name string, prims []primitive) {
	b.doc.Scenes[0].Nodes = append(b.doc.Scenes[0].Nodes, len(b.doc.Nodes))
	b.doc.Nodes = append(b.doc.Nodes, node{name, len(b.doc.Meshes)})
	b.doc.Meshes = append(b.doc.Meshes, shape{name, prims})
}

// positions stores places and their bounds. The bounds are taken after the
// rounding to float32, because a reader compares them with the stored numbers.
func (b *builder) positions(pos []r3.Vec) int {
	lo := []float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	hi := []float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	start := len(b.bin)
	for _, p := range pos {
		for k, x := range [3]float64{p.X, p.Y, p.Z} {
			x = float64(float32(x))
			lo[k], hi[k] = math.Min(lo[k], x), math.Max(hi[k], x)
			b.float(x)
		}
	}
	return b.addAccessor(start, targetArray, accessor{ComponentType: typeFloat, Count: len(pos), Type: "VEC3", Min: lo,
		Max: hi})
}

// normals stores unit vectors. A vertex in no triangle has no normal; it gets
// +Z, since glTF allows unit normals only and nothing is drawn from it.
func (b *builder) normals(normal []r3.Vec) int {
	start := len(b.bin)
	for _, n := range normal {
		if n == (r3.Vec{}) {
			n.Z = 1
		}
		n = r3.Unit(n)
		b.float(n.X)
		b.float(n.Y)
		b.float(n.Z)
	}
	return b.addAccessor(start, targetArray, accessor{ComponentType: typeFloat, Count: len(normal), Type: "VEC3"})
}

func (b *builder) flats(flat []r2.Vec) int {
	start := len(b.bin)
	for _, p := range flat {
		b.float(p.X)
		b.float(-p.Y)
	}
	return b.addAccessor(start, targetArray, accessor{ComponentType: typeFloat, Count: len(flat), Type: "VEC2"})
}

func (b *builder) indices(tris [][3]int32) int {
	start := len(b.bin)
	for _, t := range tris {
		for _, v := range t {
			b.bin = binary.LittleEndian.AppendUint32(b.bin, uint32(v))
		}
	}
	return b.addAccessor(start, targetIndex, accessor{ComponentType: typeUint32, Count: 3 * len(tris), Type: "SCALAR"})
}

func (b *builder) float(x float64) {
	b.bin = binary.LittleEndian.AppendUint32(b.bin, math.Float32bits(float32(x)))
}

// addAccessor closes a run of numbers that began at start and returns its
// accessor. Every number takes 4 bytes, so each run is aligned as it stands.
func (b *builder) addAccessor(start, target int, a accessor) int {
	a.BufferView = len(b.doc.BufferViews)
	b.doc.BufferViews = append(b.doc.BufferViews, bufferView{0, start, len(b.bin) - start, target})
	b.doc.Accessors = append(b.doc.Accessors, a)
	return len(b.doc.Accessors) - 1
}

// write puts out the 12-byte header, the JSON chunk padded with spaces and the
// binary chunk (Khronos Group, glTF 2.0 Specification, 2021, §4.4).
func (b *builder) write(w io.Writer) error {
	b.doc.Buffers = []buffer{{len(b.bin)}}
	text, err := json.Marshal(b.doc)
	if err != nil {
		return fmt.Errorf("gltf: %w", err)
	}
	for len(text)%4 != 0 {
		text = append(text, ' ')
	}
	le := binary.LittleEndian
	out := le.AppendUint32([]byte("glTF"), 2)
	out = le.AppendUint32(out, uint32(12+8+len(text)+8+len(b.bin)))
	out = append(le.AppendUint32(out, uint32(len(text))), "JSON"...)
	out = append(out, text...)
	out = append(le.AppendUint32(out, uint32(len(b.bin))), "BIN\x00"...)
	out = append(out, b.bin...)
	if _, err := w.Write(out); err != nil {
		return fmt.Errorf("gltf: %w", err)
	}
	return nil
}
