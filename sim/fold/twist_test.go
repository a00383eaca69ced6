package fold

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

func TestTwist(t *testing.T) {
	const half, length = 0.12, 0.3
	c := sine{0.02, 0.1}.over(1)
	for _, tt := range []struct {
		name               string
		place              func(x, s float64) r3.Vec
		twist, tilt, drift float64 // m
	}{
		{"flat", flat, 0, 0, 0},
		{"mirror folds", func(x, s float64) r3.Vec {
			p := c(x, s)
			p.Z += 0.5 * x * x
			return p
		}, 0, 0, 0},
		// Sideways by g·s: the halves part by 2·g·s, root mean square 2·g·length/√3.
		{"sheared to the left", func(x, s float64) r3.Vec { return r3.Vec{X: x + 0.1*s, Y: -s} },
			2 * 0.1 * length / math.Sqrt(3), 0, 0},
		{"sheared to the right", func(x, s float64) r3.Vec { return r3.Vec{X: x - 0.1*s, Y: -s} },
			-2 * 0.1 * length / math.Sqrt(3), 0, 0},
		// Left up by g·x: 2·g·x, root mean square 2·g·half/√3, mean g·half.
		{"left higher", func(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -s + 0.2*x} },
			2 * 0.2 * half / math.Sqrt(3), 0.2 * half, 0},
		{"right higher", func(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -s - 0.2*x} },
			-2 * 0.2 * half / math.Sqrt(3), -0.2 * half, 0},
		{"moved to the right", func(x, s float64) r3.Vec { return r3.Vec{X: x - 0.01, Y: -s} }, -0.02, 0, -0.01},
	} {
		p := strip{half: half, length: length, cell: 5e-3}
		r, err := Read(p.onLattice(tt.place), p.frame())
		// Triangle centres see x² with an error of cell²/36 or so.
		if err != nil || !near(r.Twist, tt.twist, 2e-5) || !near(r.Tilt, tt.tilt, 1e-9) || !near(r.Drift, tt.drift, 1e-12) {
			t.Errorf("Read(%s): twist %.6f, tilt %.6f, drift %.6f, %v; want %.6f, %.6f, %.6f",
				tt.name, r.Twist, r.Tilt, r.Drift, err, tt.twist, tt.tilt, tt.drift)
		}
	}
}

func TestLocator(t *testing.T) {
	affine := func(x, s float64) r3.Vec { return r3.Vec{X: 2*x + s, Y: -3 * s, Z: x - s} }
	checked := 0
	for _, bias := range []bool{false, true} {
		p := strip{half: 0.1, length: 0.2, facing: 0.05, cell: 0.01, bias: bias}
		loc := newLocator(p.onLattice(affine))
		for i := range 41 {
			for j := range 51 {
				x, y := -0.1+0.005*float64(i), -0.2+0.005*float64(j)
				got, ok := loc.point(r2.Vec{X: x, Y: y})
				if want := affine(x, -y); !ok || r3.Norm(r3.Sub(got, want)) > 1e-9 {
					t.Fatalf("point(%g, %g), bias %v = %v, %v; want %v", x, y, bias, got, ok, want)
				}
				checked++
			}
		}
		for _, q := range []r2.Vec{{X: 0.101}, {X: -5}, {Y: 0.06}, {Y: -0.21}} {
			if got, ok := loc.point(q); ok {
				t.Errorf("point(%v) = %v, want off the sheet", q, got)
			}
		}
	}
	if checked != 2*41*51 {
		t.Errorf("checked %d places, want %d", checked, 2*41*51)
	}
}
