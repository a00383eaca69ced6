package materials

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPeirceBias(t *testing.T) {
	for _, c := range []struct{ b1, b2, want float64 }{
		{4, 4, 4},        // balanced: the same in every direction
		{1, 9, 9.0 / 4},  // 1/√B = (1 + 1/3)/2 = 2/3
		{4, 1, 16.0 / 9}, // 1/√B = (1/2 + 1)/2 = 3/4
		{1, 1e12, 4 * 1}, // a rigid weft leaves half the compliance
	} {
		if got := PeirceBias(c.b1, c.b2); !close1(got, c.want, 1e-5) {
			t.Errorf("PeirceBias(%g, %g) = %g, want %g", c.b1, c.b2, got, c.want)
		}
	}
}

func TestTwist(t *testing.T) {
	for _, c := range []struct {
		warp, weft, bias, want float64
		clamped                bool
	}{
		{4, 4, 4, 2, false},       // isotropic, no cross coupling: D66 = B/2
		{4, 2, 3, 1.5, false},     //
		{4, 4, 2, 0.2, true},      // zero by the formula, held at 0.05·4
		{9, 1, 1, 0.05 * 3, true}, // negative by the formula
		{4, 4, 2.2, 0.2, false},   // exactly at the limit is no clamp
	} {
		f := Fabric{BendWarp: c.warp, BendWeft: c.weft, BendBias: c.bias}
		got, clamped := f.Twist()
		if math.Abs(got-c.want) > 1e-12 || clamped != c.clamped {
			t.Errorf("Twist of %g × %g, bias %g = %g, %v, want %g, %v", c.warp, c.weft, c.bias, got, clamped, c.want, c.clamped)
		}
	}
}

// Whatever the rigidities, the twist is positive and the bias estimate lies
// between warp and weft, or at most at four times the limper one.
func TestBendProperties(t *testing.T) {
	size := rapid.Float64Range(0.05e-6, 2000e-6)
	rapid.Check(t, func(t *rapid.T) {
		f := Fabric{BendWarp: size.Draw(t, "warp"), BendWeft: size.Draw(t, "weft"), BendBias: size.Draw(t, "bias"),
			Weight: 0.1}
		if d, _ := f.Twist(); !(d > 0) {
			t.Fatalf("Twist = %g, want > 0", d)
		}
		lo, hi := min(f.BendWarp, f.BendWeft), max(f.BendWarp, f.BendWeft)
		b := PeirceBias(f.BendWarp, f.BendWeft)
		if b < lo*(1-1e-12) || b > hi*(1+1e-12) || b > 4*lo*(1+1e-12) {
			t.Fatalf("PeirceBias(%g, %g) = %g, want between them and below 4·%g", f.BendWarp, f.BendWeft, b, lo)
		}
		if c := f.GravityLength(); !close1(c*c*c*0.1*9.80665, (lo+hi)/2, 1e-9) {
			t.Fatalf("GravityLength³ W g = %g, want mean rigidity %g", c*c*c*0.1*9.80665, (lo+hi)/2)
		}
	})
}

// What friction alone holds flat, over the bending length, worked apart from the rows of
// M. Matsudaira et al., J. Textile Engineering 61 (2015) 69, table 1: cotton broad, 12.38
// mg/cm², B 0.118 gf·cm²/cm, 2HB 0.124 gf·cm/cm: c 21.2 mm, L0 31.6 mm; tropical and
// faille as it.
func TestFrictionLength(t *testing.T) {
	for name, want := range map[string]float64{"cotton-broad": 1.49, "wool-tropical": 0.89, "polyester-faille": 0.67} {
		f, err := Find(name)
		if got := f.FrictionLength() / f.GravityLength(); err != nil || math.Abs(got-want) > 0.01 {
			t.Errorf("%s: friction holds %.3f bending lengths flat (%v), want %.2f", name, got, err, want)
		}
	}
	if l := (Fabric{Weight: 0.1}).FrictionLength(); l != 0 {
		t.Errorf("without friction %g m, want 0", l)
	}
}
