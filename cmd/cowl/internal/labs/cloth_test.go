package labs

import (
	"math"
	"testing"

	"cowl/cmd/cowl/internal/flags"
)

// Values given as flags reach the fabric in SI units.
func TestLabClothValues(t *testing.T) {
	var f clothFlags
	p, err := flags.NewParser(&f, flags.Tables{"values": Values()})
	if err != nil {
		t.Fatal(err)
	}
	_, err = p.Parse([]string{
		"--weight=150gsm", "--bend=10uNm", "--bend-friction=0.3mN", "--bend-softening=2.7mm",
		"--shear=50N/m", "--shear-friction=0.6N/m", "--shear-lock=45",
	})
	if err != nil {
		t.Fatal(err)
	}
	c, err := f.cloth()
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"weight, kg/m²", c.Weight, 0.15},
		{"bending, N·m", c.BendWarp, 10e-6},
		{"bending along the weft, N·m", c.BendWeft, 10e-6},
		{"friction of bending, N", c.BendFriction, 0.3e-3},
		{"softening, m", c.BendSoftening, 2.7e-3},
		{"shear, N/m", c.Shear, 50},
		{"friction of shear, N/m", c.ShearFriction, 0.6},
		{"locking angle, rad", c.ShearLock, math.Pi / 4},
	} {
		if math.Abs(v.got-v.want) > 1e-9*v.want {
			t.Errorf("%s: %g, want %g", v.what, v.got, v.want)
		}
	}
}
