package fold

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestWrongSide(t *testing.T) {
	const half, long = 0.1, 0.3 // the strip is 0.2 × 0.3 m
	turn := func(deg float64) func(x, s float64) r3.Vec {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return func(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -s * cos, Z: s * sin} }
	}
	fold := func(at, gap float64) func(x, s float64) r3.Vec { // the part above at comes down over gap in front
		return func(x, s float64) r3.Vec {
			if s < at {
				return r3.Vec{X: x, Y: -2*at + s, Z: gap * min(1, (at-s)/0.01)}
			}
			return r3.Vec{X: x, Y: -s}
		}
	}
	row := 2 * half * pixel // one row of pixels
	for _, tt := range []struct {
		name  string
		place func(x, s float64) r3.Vec
		want  float64 // m²
		tol   float64
	}{
		{"flat", flat, 0, 0},
		{"upper half folded forward", fold(0.15, 0.01), 2 * half * 0.15, 1e-12},
		{"upper third folded forward", fold(0.1, 0.01), 2 * half * 0.1, 1e-12},
		{"facing folded inside", fold(0.1, -0.01), 0, 0},
		{"turned over", turn(180), 2 * half * long, 1e-12},
		{"turned over, at a slant of 60°", turn(120), 2 * half * long / 2, 2 * row},
		{"tipped back 60°", turn(60), 0, 0},
	} {
		p := strip{half: half, length: long, cell: 0.01}
		if got := wrongSide(p.onLattice(tt.place)); !near(got, tt.want, tt.tol) {
			t.Errorf("wrongSide(%s) = %.6f m², want %.6f ± %g", tt.name, got, tt.want, tt.tol)
		}
	}
}
