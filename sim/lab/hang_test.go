package lab

import (
	"context"
	"os"
	"testing"

	"cowl/sim"
)

func TestHangX(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, PullWarp: 2000, PullWeft: 2000, Shear: 50, BendWarp: 1e-5, BendWeft: 1e-5, Twist: 5e-6}
	for _, n := range []float64{30, 60, 120} {
		if n == 120 && os.Getenv("LONG") == "" {
			continue
		}
		r, err := Hang(context.Background(), s, HangSetup{Spacing: 0.6 / n, Placings: 12})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%g: drop %.1f forward %.1f (%.1f..%.1f) E %.3f mJ stored %.3f %+v", n, r.Drop*1000, r.Forward*1000, r.Curve*1000, r.V*1000, r.Energy*1000, r.Stored*1000, r.Run)
		for _, e := range r.Each {
			t.Logf("   %-26s drop %6.1f fwd %6.1f  %.3f mJ %s", e.Name, e.Drop*1000, e.Forward*1000, e.Energy*1000, e.Status)
		}
	}
}
