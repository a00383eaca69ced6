package fold

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// swags are folds z = −a·cos(2π(s + rise·|x|)/wave) whose amplitude fades to 0
// at fade from CF, on either side its own. The facing mirrors them.
type swags struct {
	a, wave, rise float64
	left, right   float64 // m, fade
}

func (c swags) place(x, s float64) r3.Vec {
	fade := c.left
	if x < 0 {
		fade = c.right
	}
	a := c.a * max(0, 1-math.Abs(x)/fade)
	return r3.Vec{X: x, Y: -s, Z: -a * math.Cos(2*math.Pi*(math.Abs(s)+c.rise*math.Abs(x))/c.wave)}
}

// fades returns where twice the amplitude is MinDepth.
func (c swags) fades(fade float64) float64 { return fade * (1 - MinDepth/(2*c.a)) }

func TestAcross(t *testing.T) {
	inf := math.Inf(1)
	level := swags{a: 0.02, wave: 0.1, left: 0.12, right: 0.07}
	nested := swags{a: 0.02, wave: 0.12, rise: 0.8, left: 0.14, right: 0.1}
	even := swags{a: 0.02, wave: 0.12, rise: 0.5, left: inf, right: inf}
	// The first fold of even rises over the edge: there the edge is no valley
	// any more but stands at −a·cos φ, φ = 2π·rise·x/wave, and the prominence
	// a·(1 + cos φ) is MinDepth.
	over := even.wave / (2 * math.Pi * even.rise) * math.Acos(MinDepth/even.a-1)
	for _, tt := range []struct {
		name        string
		c           swags
		grain, cell float64 // degrees, m
		fold, of    int
		left, right float64 // m
		tol         float64 // m
	}{
		{"level", level, 0, 5e-3, 1, 3, level.fades(0.12), level.fades(0.07), 1e-3},
		{"level, bias", level, 45, 5e-3, 1, 3, level.fades(0.12), level.fades(0.07), 1e-3},
		{"level, bias, coarse", level, 45, 10e-3, 1, 3, level.fades(0.12), level.fades(0.07), 2e-3},
		{"nested", nested, 0, 5e-3, 1, 3, nested.fades(0.14), nested.fades(0.1), 1e-3},
		{"nested, bias", nested, 45, 5e-3, 2, 3, nested.fades(0.14), nested.fades(0.1), 1e-3},
		{"nested, bias, coarse", nested, 45, 10e-3, 1, 3, nested.fades(0.14), nested.fades(0.1), 2e-3},
		{"over the edge", even, 0, 5e-3, 0, 3, over, over, 1e-3},
		{"over the edge, bias", even, 45, 5e-3, 0, 3, over, over, 3e-3}, // chords and patch cut the crease at the edge
		{"to the cowl points", even, 0, 5e-3, 2, 3, 0.15, 0.15, 1e-9},
		{"rising nearly 2 in 1", swags{0.02, 0.12, 1.9, inf, inf}, 0, 5e-3, 2, 3, 0.15, 0.15, 1e-9},
		{"steeper", swags{0.02, 0.12, 4, inf, inf}, 0, 5e-3, 2, 3, 0, 0, 1e-9},
	} {
		p := strip{half: 0.15, length: 3.05 * tt.c.wave, cell: tt.cell, cut: &grid{grain: tt.grain * math.Pi / 180}}
		s, f := p.onLattice(tt.c.place), p.frame()
		r, err := Read(s, f)
		if err != nil || len(r.Folds) != tt.of {
			t.Errorf("%s: Read: %d folds, %v; want %d", tt.name, len(r.Folds), err, tt.of)
			continue
		}
		got, err := Across(s, f, r.Folds)
		if err != nil || len(got) != tt.of {
			t.Errorf("%s: Across: %v, %v; want %d", tt.name, got, err, tt.of)
			continue
		}
		if g := got[tt.fold]; !near(g.Left, tt.left, tt.tol) || !near(g.Right, tt.right, tt.tol) ||
			g.Width() != g.Left+g.Right {
			t.Errorf("%s: Across: fold %d %.4f left, %.4f right; want %.4f, %.4f ± %g",
				tt.name, tt.fold, g.Left, g.Right, tt.left, tt.right, tt.tol)
		}
	}
}

func TestAcrossErrors(t *testing.T) {
	if _, err := Across(nil, Frame{}, nil); err == nil {
		t.Error("Across(nil): no error, want one")
	}
	p := strip{half: 0.1, length: 0.3, cell: 0.01}
	if got, err := Across(p.onLattice(flat), p.frame(), nil); err != nil || len(got) != 0 {
		t.Errorf("Across(flat, no folds) = %v, %v; want none", got, err)
	}
}

var sinkReach []Reach

func BenchmarkAcross(b *testing.B) {
	p := strip{half: 0.24, length: 0.48, facing: 0.048, cell: 8e-3}
	s, f := p.onLattice(swags{0.02, 0.15, 0.5, 0.3, 0.3}.place), p.frame()
	r, err := Read(s, f)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if sinkReach, err = Across(s, f, r.Folds); err != nil {
			b.Fatal(err)
		}
	}
}
