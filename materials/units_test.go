package materials

import (
	"math"
	"testing"
)

// close1 reports whether got lies within tol (relative) of want.
func close1(got, want, tol float64) bool { return math.Abs(got-want) <= tol*math.Abs(want) }

func TestUnits(t *testing.T) {
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"1 gf·cm²/cm in µN·m, by definition of the gram-force", GramForceCm2PerCm * 1e6, 98.0665, 1e-12},
		{"1 gf·cm/cm in mN", GramForceCmPerCm * 1e3, 9.80665, 1e-12},
		{"1 gf/(cm·deg) in N/m per rad: 0.980665 N/(m·deg)", GramForcePerCmDegree, 0.980665 * 57.29577951308232, 1e-12},
		{"1 gf/(cm·deg), rounded as in tables", GramForcePerCmDegree, 56.19, 1e-4},
		{"1 mg/cm² in g/m²", MilligramPerCm2 * 1e3, 10, 1e-12},
		{"1 oz/yd² in g/m², ASTM D3776 factor", OuncePerYard2 * 1e3, 33.906, 1e-5},
		{"KES top load 500 gf/cm in N/m", KESTensileLoad, 490.3325, 1e-12},
		{"0.118 gf·cm²/cm of cotton broad (Matsudaira et al. 2015, Table 1) in µN·m", 0.118 * GramForceCm2PerCm * 1e6, 11.57,
			1e-3},
		{"12.38 mg/cm² of cotton broad in g/m²", 12.38 * MilligramPerCm2 * 1e3, 123.8, 1e-12},
		{"0.10 W c³ in mg·cm (BS 3356) at 168 g/m², 1.5 cm, in µN·m", 0.10 * 168 * math.Pow(1.5, 3) * MilligramCm * 1e6,
			5.56, 1e-3},
	} {
		if !close1(c.got, c.want, c.tol) {
			t.Errorf("%s = %.9g, want %.9g", c.what, c.got, c.want)
		}
	}
}

// The worked figures are those of a FAST test: W 168 g/m², warp 15.00 mm,
// weft 14.50 mm give 5.56 and 5.02 µN·m with B = 9.81e-6 W c³.
func TestBendFromLength(t *testing.T) {
	for _, c := range []struct{ gsm, mm, want, tol float64 }{
		{168, 15.00, 5.56, 1e-3},
		{168, 14.50, 5.02, 1e-3},
		{100, 10, 0.980665, 1e-12},
	} {
		got := BendFromLength(c.mm/1e3, c.gsm/1e3)
		if !close1(got*1e6, c.want, c.tol) {
			t.Errorf("BendFromLength(%g mm, %g g/m²) = %g µN·m, want %g", c.mm, c.gsm, got*1e6, c.want)
		}
		if back := BendingLength(got, c.gsm/1e3); !close1(back*1e3, c.mm, 1e-12) {
			t.Errorf("BendingLength of that = %g mm, want %g", back*1e3, c.mm)
		}
	}
}

// An orthotropic sheet that hardly stretches has E45 = 4G, so a pull of
// 5 gf/cm on the bias gives the strain 4.903/(4G).
func TestShearFromBiasStretch(t *testing.T) {
	for _, g := range []float64{15, 30, 80} {
		eb5 := 5 * GramForcePerCm / (4 * g)
		if got := ShearFromBiasStretch(eb5); !close1(got, g, 5e-3) {
			t.Errorf("ShearFromBiasStretch(%.4f) = %g N/m, want %g", eb5, got, g)
		}
	}
	if got := ShearFromBiasStretch(0.041); !close1(got, 30, 1e-9) {
		t.Errorf("ShearFromBiasStretch(4.1 %%) = %g N/m, want 123/4.1 = 30", got)
	}
}
