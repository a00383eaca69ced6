package fold

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

func allOf(s *mesh.Sheet) []int32 {
	all := make([]int32, len(s.Flat))
	for i := range all {
		all[i] = int32(i)
	}
	return all
}

func TestPatch(t *testing.T) {
	const cell = 10e-3
	plane := func(x, s float64) r3.Vec { return r3.Vec{X: 1.1*x + 0.1*s, Y: 0.2*x - 0.9*s, Z: 0.3*x + 0.4*s + 0.05} }
	roll := func(radius float64) func(x, s float64) r3.Vec {
		return func(x, s float64) r3.Vec {
			sin, cos := math.Sincos((s - 0.05) / radius)
			return r3.Vec{X: x, Y: -radius * sin, Z: radius * cos}
		}
	}
	chord := func(radius float64) float64 { return cell * cell / (8 * radius) } // what it cuts off
	for _, tt := range []struct {
		name  string
		place func(x, s float64) r3.Vec
		tol   float64 // m, within a spacing of the middle
	}{
		{"plane", plane, 1e-12},
		{"roll of 30 mm", roll(0.03), chord(0.03) / 10},
		{"roll of 15 mm", roll(0.015), chord(0.015) / 8},
	} {
		checked := 0
		for _, grain := range []float64{0, 0.3, math.Pi / 4} {
			p := strip{half: 0.05, length: 0.1, cell: cell, cut: &grid{grain, r2.Vec{X: 1e-3, Y: 2e-3}}}
			s := p.onLattice(tt.place)
			middle := r2.Vec{X: 0.002, Y: -0.05}
			pt, ok := patchAt(s, allOf(s), middle, cell)
			if !ok {
				t.Fatalf("%s: no patch", tt.name)
			}
			for i, q := range s.Flat { // it passes through its vertices
				if r2.Norm(r2.Sub(q, middle)) < patchReach*cell {
					if got := pt.point(q); r3.Norm(r3.Sub(got, s.Pos[i])) > 1e-9 {
						t.Errorf("%s: vertex %v at %v, want %v", tt.name, q, got, s.Pos[i])
					}
					checked++
				}
			}
			for k := range 100 {
				sin, cos := math.Sincos(float64(k))
				q := r2.Add(middle, r2.Scale(cell*float64(k)/100, r2.Vec{X: cos, Y: sin}))
				if got, want := pt.point(q), tt.place(q.X, -q.Y); r3.Norm(r3.Sub(got, want)) > tt.tol {
					t.Errorf("%s, grain %.2f: point(%v) = %v, want %v ± %g", tt.name, grain, q, got, want, tt.tol)
				}
			}
		}
		if checked < 75 {
			t.Errorf("%s: passed %d vertices, want 75 or more", tt.name, checked)
		}
	}
}

// Few vertices, a row of them, or the two shores of a slit.
func TestPatchOfLittle(t *testing.T) {
	for _, tt := range []struct {
		name string
		flat []r2.Vec // spacings
		want bool
	}{
		{"none", nil, false},
		{"one", []r2.Vec{{}}, false},
		{"two", []r2.Vec{{}, {X: 1}}, false},
		{"a row", []r2.Vec{{}, {X: 1}, {X: 2}, {X: -1}, {X: -2}}, false},
		{"a triangle", []r2.Vec{{}, {X: 1}, {Y: 1}}, true},
		{"a row off the line", []r2.Vec{{}, {X: 1}, {X: 2}, {Y: 1}}, true},
		{"one far off", []r2.Vec{{}, {X: 1}, {Y: 3.1}}, false},
		{"twice the same", []r2.Vec{{}, {X: 1}, {X: 1}, {Y: 1}, {Y: 1}, {X: 1, Y: 1}}, true},
	} {
		s := &mesh.Sheet{Flat: tt.flat, Pos: make([]r3.Vec, len(tt.flat))}
		for i, q := range tt.flat {
			s.Pos[i] = r3.Vec{X: q.X, Y: q.Y, Z: 2 * q.X}
		}
		pt, ok := patchAt(s, allOf(s), r2.Vec{}, 1)
		if ok != tt.want {
			t.Errorf("patchAt(%s): %v, want %v", tt.name, ok, tt.want)
		}
		if q := (r2.Vec{X: 0.3, Y: 0.4}); ok && r3.Norm(r3.Sub(pt.point(q), r3.Vec{X: 0.3, Y: 0.4, Z: 0.6})) > 1e-9 {
			t.Errorf("patchAt(%s): point(%v) = %v, want the plane", tt.name, q, pt.point(q))
		}
	}
}
