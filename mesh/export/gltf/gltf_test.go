package gltf

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"cowl/mesh"
	"cowl/mesh/surface"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// wave is a sheet of n × n cells, sine-shaped in space, its upper half facing.
func wave(n int) mesh.Sheet {
	var s mesh.Sheet
	for j := range n + 1 {
		for i := range n + 1 {
			f := r2.Vec{X: 0.1 * float64(i-n/2), Y: -0.07 * float64(j)}
			s.Flat = append(s.Flat, f)
			s.Pos = append(s.Pos, r3.Vec{X: f.X, Y: 1.4 + f.Y, Z: 0.02 * math.Sin(9*f.X+5*f.Y)})
		}
	}
	for j := range n {
		for i := range n {
			a := int32(j*(n+1) + i)
			b, c, d := a+1, a+int32(n+1), a+int32(n+2)
			s.Tris = append(s.Tris, [3]int32{a, c, b}, [3]int32{b, c, d})
			s.Facing = append(s.Facing, j < n/2, j < n/2)
		}
	}
	return s
}

// facets is a sheet as it is, with the normals of its triangles.
func facets(s mesh.Sheet) surface.Surface { return surface.Surface{Sheet: s, Normal: s.Normals()} }

// octahedron is the smallest closed form.
func octahedron() *mesh.Surface {
	s := &mesh.Surface{Tris: [][3]int32{
		{0, 2, 4}, {2, 1, 4}, {1, 3, 4}, {3, 0, 4}, {2, 0, 5}, {1, 2, 5}, {3, 1, 5}, {0, 3, 5},
	}}
	for _, p := range []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}} {
		s.Pos, s.Normal = append(s.Pos, r3.Scale(0.2, p)), append(s.Normal, p)
	}
	return s
}

func TestWrite(t *testing.T) {
	noFacing := wave(3)
	for i := range noFacing.Facing {
		noFacing.Facing[i] = false
	}
	lone := wave(2)
	lone.Flat, lone.Pos = append(lone.Flat, r2.Vec{}), append(lone.Pos, r3.Vec{Y: 1})
	for _, c := range []struct {
		name   string
		sheet  mesh.Sheet
		form   *mesh.Surface
		title  string
		counts [][]int // triangles of each primitive of each node
	}{
		{"front and facing", wave(4), nil, "a cowl", [][]int{{16, 16}}},
		{"no facing", noFacing, nil, "", [][]int{{18}}},
		{"with form", wave(4), octahedron(), "länge ½", [][]int{{16, 16}, {8}}},
		{"vertex in no triangle", lone, nil, "x", [][]int{{4, 4}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			if err := Write(&out, facets(c.sheet), c.form, Options{Title: c.title}); err != nil {
				t.Fatal(err)
			}
			f, err := read(out.Bytes())
			if err != nil {
				t.Fatal("read back:", err)
			}
			if f.title != c.title || !strings.Contains(f.caution, "not a record") {
				t.Errorf("title %q, caution %q, want %q and a caution", f.title, f.caution, c.title)
			}
			if len(f.meshes) != len(c.counts) {
				t.Fatalf("nodes %v, want %d", f.names, len(c.counts))
			}
			for n, parts := range f.meshes {
				if len(parts) != len(c.counts[n]) {
					t.Fatalf("node %s has %d primitives, want %d", f.names[n], len(parts), len(c.counts[n]))
				}
				for k, p := range parts {
					if len(p.index) != 3*c.counts[n][k] {
						t.Errorf("node %s primitive %d: %d indices, want %d", f.names[n], k, len(p.index), 3*c.counts[n][k])
					}
					checkPart(t, p)
				}
			}
			checkPlaces(t, f.meshes[0][0], c.sheet)
		})
	}
}

// checkPart checks what the standard asks of any primitive.
func checkPart(t *testing.T, p part) {
	t.Helper()
	if len(p.pos) == 0 || len(p.normal) != len(p.pos) {
		t.Fatalf("%d places, %d normals", len(p.pos), len(p.normal))
	}
	lo, hi := append([]float64(nil), p.pos[0]...), append([]float64(nil), p.pos[0]...)
	for i, q := range p.pos {
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], q[k]), max(hi[k], q[k])
		}
		n := p.normal[i]
		if l := math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2]); math.Abs(l-1) > 1e-6 {
			t.Fatalf("normal %d has length %v, want 1", i, l)
		}
	}
	for k := range 3 {
		if lo[k] != p.min[k] || hi[k] != p.max[k] {
			t.Errorf("bounds on axis %d: stored %v to %v, found %v to %v", k, p.min[k], p.max[k], lo[k], hi[k])
		}
	}
	for _, v := range p.index {
		if v >= len(p.pos) {
			t.Fatalf("index %d of %d vertices", v, len(p.pos))
		}
	}
}

// checkPlaces compares places, flat coordinates and sides with the sheet.
func checkPlaces(t *testing.T, p part, s mesh.Sheet) {
	t.Helper()
	if !p.doubleSided || len(p.pos) != len(s.Pos) || len(p.uv) != len(s.Pos) {
		t.Fatalf("double-sided %v, %d places, %d flat, want true and %d", p.doubleSided, len(p.pos), len(p.uv), len(s.Pos))
	}
	for i, q := range s.Pos {
		if d := math.Abs(p.pos[i][0]-q.X) + math.Abs(p.pos[i][1]-q.Y) + math.Abs(p.pos[i][2]-q.Z); d > 1e-6 {
			t.Fatalf("vertex %d at %v, want %v", i, p.pos[i], q)
		}
		if d := math.Abs(p.uv[i][0]-s.Flat[i].X) + math.Abs(p.uv[i][1]+s.Flat[i].Y); d > 1e-6 {
			t.Fatalf("flat %d at %v, want (x, -y) of %v", i, p.uv[i], s.Flat[i])
		}
	}
	if p.normal[0][2] <= 0 {
		t.Errorf("normal of the first vertex %v, want it to face +Z, the right side", p.normal[0])
	}
}

func TestWriteRefuses(t *testing.T) {
	bad := wave(2)
	bad.Pos[3].Y = math.NaN()
	badForm := octahedron()
	badForm.Pos[1].X = math.Inf(1)
	for _, c := range []struct {
		name  string
		sheet mesh.Sheet
		form  *mesh.Surface
		want  string
	}{
		{"NaN", bad, nil, "cloth: vertex 3"},
		{"infinite form", wave(2), badForm, "form: vertex 1"},
		{"empty", mesh.Sheet{}, nil, "0 triangles"},
	} {
		err := Write(&bytes.Buffer{}, facets(c.sheet), c.form, Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: Write gave %v, want an error with %q", c.name, err, c.want)
		}
	}
	full := errors.New("disc full")
	if err := Write(failing{full}, facets(wave(2)), nil, Options{}); !errors.Is(err, full) {
		t.Errorf("Write to a full disc gave %v, want %v", err, full)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

func TestWriteIsDeterministic(t *testing.T) {
	var a, b bytes.Buffer
	for _, out := range []*bytes.Buffer{&a, &b} {
		if err := Write(out, facets(wave(5)), octahedron(), Options{Title: "twice"}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("two writes of one sheet differ (%d and %d bytes)", a.Len(), b.Len())
	}
}
