package sim

import (
	"math"
	"testing"
)

// The shooting must give the small-deflection limit y = wL⁴/8B, and c = L/2 at
// 41.5°, the setting of the bending length test (F. T. Peirce, "The handle of
// cloth as a measurable quantity", J. Textile Inst. 21, 1930): load 8.
func TestChord(t *testing.T) {
	for _, c := range []struct{ load, want, tol float64 }{
		{1e-3, 1e-3 / 8 * 180 / math.Pi, 1e-6},
		{6, 34.57, 0.01}, {7, 38.26, 0.01}, {8, 41.49, 0.01}, {9, 44.33, 0.01},
		{0.150 * Gravity * 0.05 * 0.05 * 0.05 / 10e-6, 60.19, 0.01},
	} {
		if got := chord(c.load); math.Abs(got-c.want) > c.tol {
			t.Errorf("chord(%g) = %.4f°, want %.4f ± %g", c.load, got, c.want, c.tol)
		}
	}
}

// limp is an isotropic cloth: C11 = C22 = 2G, C12 = 0 and one bending stiffness
// in every direction, D66 = B/2.
func limp(weight, b float64) Stiffness {
	return Stiffness{Weight: weight, TensileWarp: 200, TensileWeft: 200, Shear: 100, BendWarp: b, BendWeft: b,
		Twist: b / 2}
}

func TestOverhangLoads(t *testing.T) {
	const length, b = 0.05, 10e-6
	for _, load := range []float64{6, 7, 8, 9} {
		s := limp(load*b/(length*length*length)/Gravity, b)
		for _, g := range []float64{0, 45} {
			got, want := overhang(t, length, 0.0025, g*math.Pi/180, s), chord(load)
			t.Logf("overhang(wL³/B = %g, %g°) = %.3f°, elastica %.3f", load, g, got, want)
			if math.Abs(got-want) > 0.3 {
				t.Errorf("overhang(wL³/B = %g, %g°) = %.3f°, want %.3f ± 0.3", load, g, got, want)
			}
			if testing.Short() {
				break
			}
		}
	}
}

// Second order: the error falls fourfold with every halving of the spacing.
func TestOverhangOrder(t *testing.T) {
	s := limp(0.150, 10e-6)
	want := chord(0.150 * Gravity * 0.05 * 0.05 * 0.05 / 10e-6)
	var miss []float64
	for _, h := range []float64{0.01, 0.005, 0.0025} {
		miss = append(miss, math.Abs(overhang(t, 0.05, h, 0, s)-want))
	}
	for k := 1; k < len(miss); k++ {
		order := math.Log2(miss[k-1] / miss[k])
		t.Logf("error %.3f° → %.3f°, order %.2f", miss[k-1], miss[k], order)
		if order < 1.7 {
			t.Errorf("error %.3f° → %.3f° at half the spacing, order %.2f, want 1.7 or more", miss[k-1], miss[k], order)
		}
	}
}
