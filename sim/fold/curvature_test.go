package fold

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// zigzag folds cloth sharply every leg; each corner turns by turn.
func zigzag(leg, turn float64) func(x, s float64) r3.Vec {
	sin, cos := math.Sincos(turn / 2)
	return func(x, s float64) r3.Vec {
		n, rest := math.Floor(s/leg), math.Mod(s, leg)
		if math.Mod(n, 2) == 1 {
			rest = leg - rest
		}
		return r3.Vec{X: x, Y: -s * cos, Z: rest * sin}
	}
}

func TestKinks(t *testing.T) {
	const leg = 0.06
	p := strip{half: 0.03, length: 5 * leg, cell: 5e-3}
	for _, tt := range []struct {
		name  string
		place func(x, s float64) r3.Vec
		want  int
	}{
		{"flat", flat, 0},
		{"four corners of 90°", zigzag(leg, math.Pi/2), 4},
		{"four corners of 70°", zigzag(leg, 70*math.Pi/180), 4},
		{"four corners of 50°", zigzag(leg, 50*math.Pi/180), 0},
		{"four hairpins of 170°", zigzag(leg, 170*math.Pi/180), 4},
		{"soft folds, radius 24 mm", sine{0.015, 0.12}.over(1), 0}, // 16 mm turn 38°
		{"tight roll, radius 10 mm", meander{100 * math.Pi / 180, 0.11}.over(5 * leg), 5},
	} {
		r, err := Read(p.onLattice(tt.place), p.frame())
		if err != nil || r.Kinks != tt.want {
			t.Errorf("Read(%s): kinks %d, %v; want %d", tt.name, r.Kinks, err, tt.want)
		}
	}
}

// A corner 8 mm below the edge belongs to the edge roll.
func TestKinksLeaveTheEdgeRollOut(t *testing.T) {
	const at = 8e-3
	p := strip{half: 0.03, length: 0.2, cell: 4e-3}
	corner := func(depth float64) func(x, s float64) r3.Vec {
		return func(x, s float64) r3.Vec {
			return r3.Vec{X: x, Y: -max(s-depth, 0), Z: min(s, depth)} // forward, then straight down: 90°
		}
	}
	for _, tt := range []struct {
		depth float64
		want  int
	}{{at, 0}, {0.1, 1}} {
		r, err := Read(p.onLattice(corner(tt.depth)), p.frame())
		if err != nil || r.Kinks != tt.want {
			t.Errorf("Read, corner %g m below the edge: kinks %d, %v; want %d", tt.depth, r.Kinks, err, tt.want)
		}
	}
}

// A cylinder of cloth has one radius everywhere, along the yarns and on the
// bias, and wherever the line falls among the cells.
func TestRadiusOfCylinder(t *testing.T) {
	for _, tt := range []struct {
		radius, cell float64
		bias         bool
		x, tol       float64
	}{
		{0.02, 2.5e-3, false, 0, 0.02},
		{0.02, 5e-3, false, 0, 0.05},
		{0.02, 5e-3, true, 0, 0.05},
		{0.03, 5e-3, true, 0.0013, 0.05},
		{0.03, 5e-3, false, 0.0013, 0.05},
	} {
		p := strip{half: 0.03, length: math.Round(math.Pi*tt.radius/tt.cell) * tt.cell, cell: tt.cell, bias: tt.bias}
		s := p.onLattice(func(x, s float64) r3.Vec {
			sin, cos := math.Sincos(s / tt.radius)
			return r3.Vec{X: x, Y: tt.radius * cos, Z: tt.radius * sin}
		})
		c, err := Line(s, p.frame(), tt.x)
		if err != nil || len(c.Folds) != 1 || !near(c.Folds[0].Radius, tt.radius, tt.tol*tt.radius) {
			t.Errorf("Line(%g) on radius %g, cell %g, bias %v: %+v, %v; want one fold of that radius ± %g",
				tt.x, tt.radius, tt.cell, tt.bias, c.Folds, err, tt.tol)
		}
	}
}
