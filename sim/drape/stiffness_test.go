package drape

import (
	"math"
	"testing"

	"cowl/materials"
)

// What a fabric file says of friction, softening and locking reaches the solver
// in SI units.
func TestStiffness(t *testing.T) {
	f, err := materials.Parse("loops", []byte(`name: loops
weight_gsm: 150
bend_warp_uNm: 10
bend_weft_uNm: 8
bend_friction_mN: 0.3
bend_softening_mm: 2.7
shear_friction_N_per_m: 0.6
shear_lock_deg: 45
`))
	if err != nil {
		t.Fatal(err)
	}
	s := Stiffness(f)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"weight, kg/m²", s.Weight, 0.15},
		{"bending along the warp, N·m", s.BendWarp, 10e-6},
		{"bending along the weft, N·m", s.BendWeft, 8e-6},
		{"friction of bending, N", s.BendFriction, 0.3e-3},
		{"softening, m", s.Softening, 2.7e-3},
		{"friction of shear, N/m", s.ShearFriction, 0.6},
		{"locking angle, rad", s.Lock, math.Pi / 4},
	} {
		if math.Abs(c.got-c.want) > 1e-9*c.want {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
}
