package lab

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// rosette is a level sheet with the rim mid + high·cos nθ.
func rosette(mid, high float64, n int) *mesh.Sheet {
	const corners = 1440
	s := &mesh.Sheet{Pos: []r3.Vec{{}}}
	for k := range corners {
		a := 2 * math.Pi * float64(k) / corners
		r := mid + high*math.Cos(float64(n)*a)
		s.Pos = append(s.Pos, r3.Vec{X: r * math.Cos(a), Z: -r * math.Sin(a)})
		s.Tris = append(s.Tris, [3]int32{0, int32(k + 1), int32((k+1)%corners + 1)})
	}
	return s
}

// A rim of known waves: its area is π(mid² + high²/2), each wave one node of
// twice the height.
func TestShadow(t *testing.T) {
	for _, c := range []struct {
		high  float64
		n     int
		nodes int
	}{{0.010, 7, 7}, {0.0025, 5, 5}, {0.0019, 5, 0}, {0, 3, 0}, {0.02, 12, 12}, {0.02, 1, 1}} {
		s := shadowOf(rosette(0.12, c.high, c.n), 0.09, 0.16)
		want := math.Pi * (0.12*0.12 + c.high*c.high/2)
		if math.Abs(s.Area()/want-1) > 2e-3 {
			t.Errorf("%d waves of %g m: area %.6f m², want %.6f", c.n, c.high, s.Area(), want)
		}
		nodes := s.Nodes()
		if len(nodes) != c.nodes {
			t.Errorf("%d waves of %g m: %d nodes, want %d", c.n, c.high, len(nodes), c.nodes)
		}
		for _, d := range nodes {
			if math.Abs(d-2*c.high) > 2e-4 {
				t.Errorf("%d waves of %g m: node %g m deep, want %g", c.n, c.high, d, 2*c.high)
			}
		}
	}
}

// Cloth that has drawn in below the plate leaves the shadow of the plate.
func TestShadowOfPlate(t *testing.T) {
	s := shadowOf(rosette(0.05, 0, 1), 0.09, 0.16)
	if want := math.Pi * 0.09 * 0.09; math.Abs(s.Area()/want-1) > 1e-3 || s.Rim[7] != 0.09 {
		t.Errorf("area %.6f m², rim %g m, want those of the plate, %.6f and 0.09", s.Area(), s.Rim[7], want)
	}
}

// The distance of the plate has a unit gradient that points away from it.
func TestPlate(t *testing.T) {
	p := plate(0.09)
	n := 0
	for r := 0.0; r < 0.12; r += 0.0031 {
		for y := -0.02; y < 0.01; y += 0.0013 {
			at := r3.Vec{X: 0.6 * r, Y: y, Z: 0.8 * r}
			d, g := p.Distance(at)
			if e, _ := p.Distance(r3.Add(at, r3.Scale(1e-6, g))); math.Abs((e-d)/1e-6-1) > 0.02 && d > 0 {
				t.Errorf("Distance(%v) grows by %g along its gradient, want 1", at, (e-d)/1e-6)
			}
			if math.Abs(r3.Norm(g)-1) > 1e-9 {
				t.Errorf("Distance(%v): gradient %v, want a unit vector", at, g)
			}
			n++
		}
	}
	if n < 500 {
		t.Errorf("%d points, want 500 or more", n)
	}
}
