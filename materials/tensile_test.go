package materials

import (
	"math"
	"testing"
)

// pullAtDrape is the slope from the KES strain at 490.3 N/m and the linearity LT.
func pullAtDrape(strain, linearity float64) float64 {
	return slopeAtDrape(KESTensileLoad, strain, powerOf(linearity))
}

func TestPullAtDrapeSecant(t *testing.T) {
	// A straight curve (LT = 1) has one slope, the load over the strain.
	for _, e := range []float64{0.01, 0.0268, 0.2} {
		if got, want := pullAtDrape(e, 1), 490.3325/e; !close1(got, want, 1e-12) {
			t.Errorf("pullAtDrape(%g, 1) = %g, want %g N/m", e, got, want)
		}
	}
}

// A parabola T = Fm (e/em)² has LT 2/3 and, at the load T, the slope
// 2 √(T Fm)/em: for 5 N/m and 5 %, 2·√(5·490.3325)/0.05 = 1980.57 N/m.
func TestPullAtDrapeParabola(t *testing.T) {
	if got, want := pullAtDrape(0.05, 2.0/3), 2*math.Sqrt(5*490.3325)/0.05; !close1(got, want, 1e-12) {
		t.Errorf("pullAtDrape(0.05, 2/3) = %g, want %g N/m", got, want)
	}
}

// The slope must be that of the curve it is taken from, by finite difference,
// and the area under that curve must give the linearity back.
func TestPullAtDrapeCurve(t *testing.T) {
	for _, c := range []struct{ em, lt float64 }{{0.0268, 0.65}, {0.0647, 0.65}, {0.1, 0.8}, {0.05, 0.5}} {
		p := 2/c.lt - 1
		load := func(e float64) float64 { return 490.3325 * math.Pow(e/c.em, p) }
		e := c.em * math.Pow(DrapeLoad/490.3325, 1/p)
		h := e * 1e-5
		want := (load(e+h) - load(e-h)) / (2 * h)
		if got := pullAtDrape(c.em, c.lt); !close1(got, want, 1e-8) {
			t.Errorf("pullAtDrape(%g, %g) = %g, want slope %g N/m", c.em, c.lt, got, want)
		}
		const n = 20000
		area := 0.0
		for i := range n {
			area += load((float64(i)+0.5)/n*c.em) * c.em / n
		}
		if lt := area / (490.3325 * c.em / 2); !close1(lt, c.lt, 1e-6) {
			t.Errorf("area of curve p = %g gives LT %g, want %g", p, lt, c.lt)
		}
	}
}

// The definition LT = WT / (½ · 500 gf/cm · EMT) against published triples:
// A. Kumari, K. Khurana, "Regenerated Cellulose-Based Denim Fabric for Tropical
// Regions", J. Textiles 2016, 4614168, Table 5, fabrics B, D and F. They also
// bracket TypicalLinearity.
func TestLinearityPublished(t *testing.T) {
	for _, c := range []struct{ emt, wt, lt float64 }{
		{5.735, 9.400, 0.655}, {5.135, 8.675, 0.676}, {5.455, 8.950, 0.657},
	} {
		// WT in gf·cm/cm² is the area of the curve with EMT as a fraction.
		p := 2/c.lt - 1
		area := 500 * c.emt / 100 / (p + 1)
		if !close1(area, c.wt, 2e-3) {
			t.Errorf("area of T = Fm (e/em)^%.3f at EMT %g %% = %g gf·cm/cm², published WT %g", p, c.emt, area, c.wt)
		}
		if math.Abs(c.lt-TypicalLinearity) > 0.1 {
			t.Errorf("TypicalLinearity %g is far from a published %g", TypicalLinearity, c.lt)
		}
	}
}
