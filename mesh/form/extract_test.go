package form

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestSurfaceIsClosed(t *testing.T) {
	for _, n := range []int{6, 10, 18} {
		s := bareForm(t, n).Surface()
		if msg := closedSurface(s); msg != "" {
			t.Errorf("size %d: Surface: %s", n, msg)
		}
		if c := len(s.Tris); c < 8000 || c > 20000 {
			t.Errorf("size %d: %d triangles, want 8000 to 20000", n, c)
		}
	}
}

// TestNormals holds the normals against the triangles they belong to.
func TestNormals(t *testing.T) {
	s := build(t, 10).Surface()
	if len(s.Normal) != len(s.Pos) {
		t.Fatalf("Surface: %d normals for %d vertices", len(s.Normal), len(s.Pos))
	}
	worst := 1.0
	for _, tri := range s.Tris {
		a := r3.Unit(r3.Cross(r3.Sub(s.Pos[tri[1]], s.Pos[tri[0]]), r3.Sub(s.Pos[tri[2]], s.Pos[tri[0]])))
		for _, v := range tri {
			worst = min(worst, r3.Dot(a, s.Normal[v]))
		}
	}
	if want := math.Cos(45 * math.Pi / 180); worst < want {
		t.Errorf("Surface: a normal leaves its triangle by cos %.3f, want >= %.3f", worst, want)
	}
}

func TestMirrorSymmetry(t *testing.T) {
	f := build(t, 10)
	s := f.Surface()
	at := map[r3.Vec]r3.Vec{}
	for i, p := range s.Pos {
		at[p] = s.Normal[i]
	}
	for p, n := range at {
		if m, ok := at[flip(p, -1)]; !ok || m != flip(n, -1) {
			t.Fatalf("Surface: vertex %v has no exact mirror image with a mirrored normal", p)
		}
	}
	if len(at) < 4000 {
		t.Errorf("looked at %d vertices, want 4000 and more", len(at))
	}
	for _, p := range []r3.Vec{{X: 0.1, Y: 0.2, Z: 0.1}, {X: 0.03, Y: 0.4, Z: -0.1}, {X: 0.5, Y: 0, Z: 0}} {
		dl, gl := f.Distance(p)
		dr, gr := f.Distance(flip(p, -1))
		if dl != dr || gl != flip(gr, -1) {
			t.Errorf("Distance(%v) = %v %v, mirrored %v %v, want the same", p, dl, gl, dr, gr)
		}
	}
}

// TestNoSelfIntersection tries every edge against every triangle near it that
// shares no vertex with it.
func TestNoSelfIntersection(t *testing.T) {
	s := build(t, 10).Surface()
	const cell = 0.02
	key := func(p r3.Vec) [3]int {
		return [3]int{int(math.Floor(p.X / cell)), int(math.Floor(p.Y / cell)), int(math.Floor(p.Z / cell))}
	}
	bins := map[[3]int][]int{}
	for i, tri := range s.Tris {
		k := key(s.Pos[tri[0]])
		bins[k] = append(bins[k], i)
	}
	tried := 0
	for _, a := range s.Tris {
		k := key(s.Pos[a[0]])
		for o := range 27 {
			for _, i := range bins[[3]int{k[0] + o%3 - 1, k[1] + o/3%3 - 1, k[2] + o/9 - 1}] {
				b := s.Tris[i]
				if slices.Contains(b[:], a[0]) || slices.Contains(b[:], a[1]) {
					continue
				}
				tried++
				if pierces(s, a[0], a[1], b) {
					t.Fatalf("Surface: edge %v pierces triangle %v", a[:2], b)
				}
			}
		}
	}
	if tried < 100000 {
		t.Errorf("tried %d pairs, want 100000 and more", tried)
	}
}

// pierces reports whether the edge p q goes through a triangle.
func pierces(s mesh.Surface, p, q int32, t [3]int32) bool {
	a, b, c, o, e := s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]], s.Pos[p], s.Pos[q]
	vol := func(a, b, c, d r3.Vec) float64 { return r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)), r3.Sub(d, a)) }
	if (vol(a, b, c, o) > 0) == (vol(a, b, c, e) > 0) {
		return false
	}
	x, y, z := vol(o, e, a, b), vol(o, e, b, c), vol(o, e, c, a)
	return x > 0 && y > 0 && z > 0 || x < 0 && y < 0 && z < 0
}

// closedSurface says what keeps a surface from being a closed, oriented sphere
// of positive volume without NaN, or "".
func closedSurface(s mesh.Surface) string {
	edges := map[[2]int32]int{}
	var volume float64
	for _, t := range s.Tris {
		for e := range t {
			edges[[2]int32{t[e], t[(e+1)%3]}]++
		}
		volume += r3.Dot(s.Pos[t[0]], r3.Cross(s.Pos[t[1]], s.Pos[t[2]])) / 6
	}
	for e, n := range edges {
		if n != 1 || edges[[2]int32{e[1], e[0]}] != 1 {
			return fmt.Sprintf("edge %v runs %d times one way and %d the other, want 1 and 1", e, n, edges[[2]int32{e[1], e[0]}])
		}
	}
	if chi := len(s.Pos) - len(edges)/2 + len(s.Tris); chi != 2 {
		return fmt.Sprintf("Euler characteristic %d, want 2", chi)
	}
	if !(volume > 0.02 && volume < 0.1) {
		return fmt.Sprintf("volume %.4f m³, want 0.02 to 0.1", volume)
	}
	return ""
}
