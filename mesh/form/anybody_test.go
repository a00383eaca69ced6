package form

import (
	"math"
	"testing"

	"cowl/mesh/body"

	"pgregory.net/rapid"
)

// scatterBody draws a body around a chart size, each measurement for itself.
func scatterBody(t *rapid.T) body.Body {
	k := rapid.Float64Range(0.9, 1.25).Draw(t, "size")
	near := func(name string, v, spread float64) float64 {
		return v * rapid.Float64Range(1-spread, 1+spread).Draw(t, name)
	}
	return body.Body{
		Bust: near("bust", 0.90*k, 0.05), Waist: near("waist", 0.74*k, 0.07), Hip: near("hip", 0.98*k, 0.06),
		BackWidth: 0.35 * k, AcrossFront: 0.33 * k, BustDart: 0.07 * k,
		Shoulder: near("shoulder", 0.125, 0.06), Neck: near("neck", 0.38, 0.06),
		ArmscyeDepth: near("armscye", 0.213, 0.05), NapeToWaist: near("nape", 0.415, 0.05),
		ShoulderSlope: rapid.Float64Range(0.27, 0.45).Draw(t, "slope"),
		BustSpan:      near("span", 0.20*math.Sqrt(k), 0.06), ApexDepth: near("apex", 0.26, 0.04),
		WaistToHip: near("hip depth", 0.205, 0.08),
	}
}

// TestAnyBody fits thirty bodies and measures the smooth shape; every fifth
// surface and every fifteenth whole form are built too.
func TestAnyBody(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) { // TestMain sets 30 cases
		b := scatterBody(t)
		if b.Validate() != nil {
			t.Skip("not a body")
		}
		s, err := fit(b)
		if err != nil {
			t.Fatalf("fit(%+v): %v", b, err)
		}
		if got := tape(s.outline(s.at.apex)); math.Abs(got-b.Bust) > 0.001 {
			t.Fatalf("fit(%+v): bust %.4f", b, got)
		}
		n++
		if n%5 == 0 {
			surfaceOfAny(t, b)
		}
		if n%15 == 0 {
			distancesOfAny(t, b)
		}
	})
	if n < 30 {
		t.Errorf("fitted %d bodies, want 30", n)
	}
}

// surfaceOfAny lays the surface of b and checks its topology and girths.
func surfaceOfAny(t *rapid.T, b body.Body) {
	f, err := bare(b)
	if err != nil {
		t.Fatalf("lay(%+v): %v", b, err)
	}
	if msg := closedSurface(f.surf); msg != "" {
		t.Fatalf("lay(%+v): %s", b, msg)
	}
	at := f.shape.at
	for _, g := range []struct{ got, want float64 }{
		{f.Girth(at.apex), b.Bust}, {f.Girth(0), b.Waist}, {f.Girth(at.hip), b.Hip},
	} {
		if !(math.Abs(g.got-g.want) < 0.005) {
			t.Fatalf("lay(%+v): girth %.4f, want %.4f ± 0.005", b, g.got, g.want)
		}
	}
}

// distancesOfAny builds the whole form of b and looks for numbers that are none.
func distancesOfAny(t *rapid.T, b body.Body) {
	f, err := FromBody(b)
	if err != nil {
		t.Fatalf("FromBody(%+v): %v", b, err)
	}
	for _, d := range f.grid.d {
		if math.IsNaN(float64(d)) || math.IsInf(float64(d), 0) {
			t.Fatalf("FromBody(%+v): distance %v in the grid", b, d)
		}
	}
}
