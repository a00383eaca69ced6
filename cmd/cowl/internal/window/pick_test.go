package window

import (
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// twoLayers are squares of 0.2 m, one 0.1 m before the other; flat places of the
// nearer are shifted by 1 m.
func twoLayers() mesh.Sheet {
	var s mesh.Sheet
	for k, z := range []float64{0, 0.1} {
		n := int32(len(s.Pos))
		for _, q := range []r2.Vec{{}, {X: 0.2}, {X: 0.2, Y: 0.2}, {Y: 0.2}} {
			s.Pos = append(s.Pos, r3.Vec{X: q.X, Y: q.Y, Z: z})
			s.Flat = append(s.Flat, r2.Add(q, r2.Vec{X: float64(k)}))
		}
		s.Tris = append(s.Tris, [3]int32{n, n + 1, n + 2}, [3]int32{n, n + 2, n + 3})
		s.Facing = append(s.Facing, false, k == 1)
	}
	return s
}

// The nearest layer is seen, and its place on the flat piece is found; a place
// of the flat piece is found in space.
func TestSeenAndInSpace(t *testing.T) {
	s := twoLayers()
	h, ok := seen(&s, r3.Vec{X: 0.05, Y: 0.15, Z: 2}, r3.Vec{Z: -1})
	if !ok || !near(h.flat.X, 1.05, 1e-12) || !near(h.flat.Y, 0.15, 1e-12) || !near(h.away, 1.9, 1e-12) {
		t.Errorf("seen %+v, %v, want the nearer layer at (1.05, 0.15), 1.9 m away", h, ok)
	}
	if _, ok := seen(&s, r3.Vec{X: 0.5, Z: 2}, r3.Vec{Z: -1}); ok {
		t.Error("a ray beside the cloth sees it")
	}
	if p, ok := inSpace(&s, r2.Vec{X: 1.05, Y: 0.15}); !ok ||
		r3.Norm(r3.Sub(p, r3.Vec{X: 0.05, Y: 0.15, Z: 0.1})) > 1e-12 {
		t.Errorf("in space at %v, %v, want (0.05, 0.15, 0.1)", p, ok)
	}
	if _, ok := inSpace(&s, r2.Vec{X: 0.7}); ok {
		t.Error("a place off the cloth is found in space")
	}
}

// A surface before the cloth hides it, one behind does not.
func TestHidden(t *testing.T) {
	wall := &mesh.Surface{Pos: []r3.Vec{{X: -1, Y: -1}, {X: 1, Y: -1}, {Y: 2}}, Tris: [][3]int32{{0, 1, 2}}}
	for _, c := range []struct {
		away float64
		want bool
	}{{3, true}, {1, false}, {2.001, false}} {
		if got := hidden(wall, r3.Vec{Z: 2}, r3.Vec{Z: -1}, c.away); got != c.want {
			t.Errorf("cloth %g m away, wall 2 m: hidden %v, want %v", c.away, got, c.want)
		}
	}
}
