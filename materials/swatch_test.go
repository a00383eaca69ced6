package materials

import (
	"strings"
	"testing"
)

// A FAST test of plain wool, 168 g/m² with bending lengths of 15.00 and
// 14.50 mm, is printed with 5.56 and 5.02 µN·m. The overhang is twice that.
func TestSwatchFabric(t *testing.T) {
	f, err := Swatch{Name: "plain-wool", Weight: 0.168, OverhangWarp: 0.030, OverhangWeft: 0.029, BiasStretch: 0.041}.Fabric()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		q    Field
		want float64
		kind Kind
	}{
		{BendWarp, 5.56, Measured},
		{BendWeft, 5.02, Measured},
		{BendBias, 5.28, Assumed},
		{Shear, 30, Derived}, // 123/4.1
	} {
		if got := c.q.InUnits(f); !close1(got, c.want, 2e-3) || f.Basis[c.q].Kind != c.kind {
			t.Errorf("Swatch %s = %g (%v), want %g (%v)", c.q.Key(), got, f.Basis[c.q], c.want, c.kind)
		}
	}
	if !f.Complete() {
		t.Error("weight, bending and bias stretch tested, but not Complete")
	}
}

// At the angle of the test a heavy elastica has w L³/B = 8.004 (numerical
// solution of the equilibrium equation), so half the overhang is the bending
// length to within 0.05 % in rigidity.
func TestSwatchElastica(t *testing.T) {
	f, err := Swatch{Name: "a", Weight: 0.1, OverhangWarp: 0.024, OverhangWeft: 0.024, OverhangBias: 0.026}.Fabric()
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.1 * 9.80665 * 0.024 * 0.024 * 0.024 / 8.004; !close1(f.BendWarp, want, 1e-3) {
		t.Errorf("BendWarp = %g, want %g N·m", f.BendWarp, want)
	}
	if f.Basis[BendBias].Kind != Measured || !close1(f.BendBias/f.BendWarp, 2197.0/1728, 1e-9) {
		t.Errorf("bias over warp = %g, %v, want the cube of 26/24", f.BendBias/f.BendWarp, f.Basis[BendBias])
	}
}

func TestSwatchErrors(t *testing.T) {
	good := Swatch{Name: "a", Weight: 0.1, OverhangWarp: 0.024, OverhangWeft: 0.024}
	for _, c := range []struct {
		spoil func(*Swatch)
		want  string
	}{
		{func(s *Swatch) { s.OverhangWeft = 0 }, "overhang for bend_weft_uNm 0 mm, want 5–200 mm"},
		{func(s *Swatch) { s.OverhangBias = 24 }, "overhang for bend_bias_uNm 24000 mm"},
		{func(s *Swatch) { s.Weight = 0 }, "weight_gsm 0 g/m²"},
		{func(s *Swatch) { s.BiasStretch = -0.01 }, "bias stretch"},
		{func(s *Swatch) { s.BiasStretch = 4.1 }, "shear_N_per_m 0.3"},
		{func(s *Swatch) { s.Name = "My Silk" }, `name "My Silk"`},
	} {
		s := good
		c.spoil(&s)
		if _, err := s.Fabric(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Fabric of %+v: error %v, want it to say %q", s, err, c.want)
		}
	}
	if _, err := good.Fabric(); err != nil {
		t.Errorf("Fabric of a good swatch: %v", err)
	}
}
