package materials

import (
	"math"
	"testing"
)

// shot runs half a heart loop from its lowest point up to the clamp by
// Runge–Kutta: the angle there, how far it ends aside and how high.
func shot(load, bend, pull float64) (angle, aside, up float64) {
	type spot [4]float64
	const n = 1000
	slope := func(t float64, a spot) spot {
		sin, cos := math.Sincos(a[0])
		return spot{a[1], pull*sin + load*t*cos, -cos, -sin}
	}
	to := func(a, d spot, h float64) spot {
		for i := range a {
			a[i] += h * d[i]
		}
		return a
	}
	a, h := spot{-math.Pi, bend}, 1.0/n
	for i := range n {
		t := float64(i) * h
		d1 := slope(t, a)
		d2 := slope(t+h/2, to(a, d1, h/2))
		d3 := slope(t+h/2, to(a, d2, h/2))
		d4 := slope(t+h, to(a, d3, h))
		a = to(to(to(to(a, d1, h/6), d2, h/3), d3, h/3), d4, h/6)
	}
	return a[0], a[2], a[3]
}

// shotDepth shoots until the loop closes upright, and returns depth over length.
func shotDepth(t *testing.T, lengths float64) float64 {
	bend, pull := 2.556, -8.81
	for at := 0.0; ; at = math.Min(at+0.1, lengths) {
		load := at * at * at / 8
		for n := 0; ; n++ {
			a, x, y := shot(load, bend, pull)
			a -= math.Pi / 2
			if math.Hypot(a, x) < 1e-9 {
				if at == lengths {
					return y / 2
				}
				break
			}
			if n == 30 {
				t.Fatalf("no loop closes at L/c = %g", at)
			}
			const e = 1e-6
			ab, xb, _ := shot(load, bend+e, pull)
			ap, xp, _ := shot(load, bend, pull+e)
			ab, xb, ap, xp = (ab-math.Pi/2-a)/e, (xb-x)/e, (ap-math.Pi/2-a)/e, (xp-x)/e
			det := ab*xp - ap*xb
			bend -= (a*xp - ap*x) / det
			pull -= (ab*x - xb*a) / det
		}
	}
}

// Another integrator, which shares nothing but the equation. That the loop
// without weight hangs 0.1337 deep (Peirce) says that its ends stand upright.
func TestHeartDepth(t *testing.T) {
	for _, lengths := range []float64{0, 2, 4, 6, 8, 9} {
		want := shotDepth(t, lengths)
		if got := HeartDepth(lengths); math.Abs(got-want) > 2e-5 {
			t.Errorf("HeartDepth(%g) = %.6f, want %.6f by shooting", lengths, got, want)
		}
	}
	if got := HeartDepth(0); math.Abs(got-0.1337) > 2e-4 {
		t.Errorf("HeartDepth(0) = %.5f, want Peirce's 0.1337", got)
	}
}

// The inverse finds what was put in; where nothing can be told it says so.
func TestHeartLength(t *testing.T) {
	for _, lengths := range []float64{2, 5.3, 9, 17, 29} {
		if got, ok := HeartLength(HeartDepth(lengths)); !ok || math.Abs(got*lengths-1) > 1e-5 {
			t.Errorf("HeartLength(HeartDepth(%g)) = %g, %t, want %g", lengths, got, ok, 1/lengths)
		}
	}
	for _, depth := range []float64{-1, 0, 0.134, 0.49, 2, math.NaN(), math.Inf(1)} {
		if got, ok := HeartLength(depth); ok {
			t.Errorf("HeartLength(%g) = %g, want none", depth, got)
		}
	}
	for _, lengths := range []float64{-1, LimpLoop + 1, math.NaN()} {
		if got := HeartDepth(lengths); !math.IsNaN(got) {
			t.Errorf("HeartDepth(%g) = %g, want none", lengths, got)
		}
	}
}

// How far Peirce's formula is from the elastica, which shooting gives to 9
// bending lengths.
func TestPeirceHeart(t *testing.T) {
	for _, c := range []struct{ lengths, off float64 }{
		{1, -0.09}, {2, -0.02}, {3, 0}, {5, 0.026}, {7, 0.04}, {9, 0.035}, {12, 0.03}, {18, 0.057}, {25, 0.10},
	} {
		depth := HeartDepth(c.lengths)
		if c.lengths <= 9 {
			depth = shotDepth(t, c.lengths)
		}
		if got, ok := PeirceHeart(depth); !ok || math.Abs(got*c.lengths-1-c.off) > 0.004 {
			t.Errorf("PeirceHeart of a loop of %g bending lengths is off by %.4f, want %.3f", c.lengths, got*c.lengths-1, c.off)
		}
	}
}
