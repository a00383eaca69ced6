package lab

import (
	"context"
	"math"
	"testing"

	"cowl/sim"
)

func deg(rad float64) float64 { return rad * 180 / math.Pi }
func rad(deg float64) float64 { return deg * math.Pi / 180 }

// isotropic is a cloth that does not know its grain: C11 = C22 = 2G, C12 = 0
// and one bending stiffness in every direction, D66 = B/2.
func isotropic(weight, b, shear float64) sim.Stiffness {
	return sim.Stiffness{Weight: weight, TensileWarp: 2 * shear, TensileWeft: 2 * shear, Shear: shear, BendWarp: b,
		BendWeft: b, Twist: b / 2}
}

// loaded returns an isotropic cloth of which a strip of that length carries
// the load w·L³/B.
func loaded(load, length float64) sim.Stiffness {
	const b = 10e-6
	return isotropic(load*b/(length*length*length)/sim.Gravity, b, 100)
}

// The table of the heavy elastica, the small-deflection limit y = wL⁴/8B and
// that of a long strip, which hangs plumb.
func TestChord(t *testing.T) {
	for _, c := range []struct{ load, want, tol float64 }{
		{1e-3, 1e-3 / 8 * 180 / math.Pi, 1e-6},
		{6, 34.57, 0.01}, {7, 38.26, 0.01}, {7.5, 39.92, 0.01}, {8, 41.49, 0.01}, {8.5, 42.95, 0.01}, {9, 44.33, 0.01},
		{1e5, 90, 2},
	} {
		if got := deg(Chord(c.load)); math.Abs(got-c.want) > c.tol {
			t.Errorf("Chord(%g) = %.4f°, want %.4f ± %g", c.load, got, c.want, c.tol)
		}
		if got, ok := chordLoad(Chord(c.load)); ok && math.Abs(got/c.load-1) > 1e-6 {
			t.Errorf("chordLoad(Chord(%g)) = %g", c.load, got)
		}
	}
}

func TestBend(t *testing.T) {
	const length = 0.05
	for _, c := range []struct {
		load   float64
		grains []float64
	}{{6, []float64{0}}, {7, []float64{90}}, {8, []float64{0, 45, 90, 22.5}}, {9, []float64{45}}} {
		for _, g := range c.grains {
			r, err := Bend(context.Background(), loaded(c.load, length), BendSetup{Length: length, Grain: rad(g)})
			if err != nil || r.Status != sim.Settled {
				t.Fatalf("Bend(wL³/B = %g, %g°) = %+v, %v", c.load, g, r, err)
			}
			want := deg(Chord(c.load))
			t.Logf("wL³/B = %g at %4g°: chord %.3f°, elastica %.3f; c %.3f mm, want %.3f; %d nodes, %d steps, %.2f s", c.load,
				g, deg(r.Chord), want, r.BendingLength*1000, 1000*length/math.Cbrt(c.load), r.Nodes, r.Steps, r.Seconds)
			if math.Abs(deg(r.Chord)-want) > 0.3 {
				t.Errorf("Bend(wL³/B = %g, %g°): chord %.3f°, want %.3f ± 0.3", c.load, g, deg(r.Chord), want)
			}
		}
	}
}

// A cloth of different warp and weft: each reads its own stiffness at 0° and 90°.
func TestBendOrthotropic(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 400, TensileWeft: 300, Shear: 50, BendWarp: 12e-6, BendWeft: 4e-6,
		Twist: 3e-6}
	const length = 0.045
	for _, c := range []struct{ grain, b float64 }{{0, s.BendWarp}, {90, s.BendWeft}} {
		r, err := Bend(context.Background(), s, BendSetup{Length: length, Grain: rad(c.grain)})
		want := deg(Chord(s.Weight * sim.Gravity * length * length * length / c.b))
		if err != nil || r.Status != sim.Settled || math.Abs(deg(r.Chord)-want) > 0.3 {
			t.Errorf("Bend(%g°) = %.3f° (%s, %v), want %.3f ± 0.3", c.grain, deg(r.Chord), r.Status, err, want)
		}
		t.Logf("%g°: %.3f°, elastica %.3f", c.grain, deg(r.Chord), want)
	}
}

// Half the overhang that hangs at 41.5° is the bending length (Peirce 1930).
func TestBendingLength(t *testing.T) {
	s := loaded(8, 0.04)
	r, err := Bend(context.Background(), s, BendSetup{})
	want := math.Cbrt(s.BendWarp / (s.Weight * sim.Gravity))
	t.Logf("%+v", r)
	if err != nil || math.Abs(deg(r.Chord)-41.5) > 0.05 {
		t.Errorf("Bend(length 0): chord %.3f°, %v, want 41.5 ± 0.05", deg(r.Chord), err)
	}
	if math.Abs(r.Length/2/want-1) > 0.01 || math.Abs(r.BendingLength/want-1) > 0.01 {
		t.Errorf("Bend(length 0): half the overhang %.3f mm, bending length %.3f mm, want %.3f ± 1 %%", r.Length*500,
			r.BendingLength*1000, want*1000)
	}
}

// Second order: the error falls fourfold with every halving of the spacing.
func TestBendOrder(t *testing.T) {
	const length = 0.05
	s := loaded(12, length)
	var miss []float64
	for _, h := range []float64{0.01, 0.005, 0.0025} {
		r, err := Bend(context.Background(), s, BendSetup{Length: length, Width: 0.02, Spacing: h})
		if err != nil {
			t.Fatal(err)
		}
		miss = append(miss, math.Abs(deg(r.Chord-Chord(12))))
	}
	for k := 1; k < len(miss); k++ {
		order := math.Log2(miss[k-1] / miss[k])
		t.Logf("error %.3f° → %.3f°, order %.2f", miss[k-1], miss[k], order)
		if order < 1.8 {
			t.Errorf("error %.3f° → %.3f° at half the spacing, order %.2f, want 1.8 or more", miss[k-1], miss[k], order)
		}
	}
}
