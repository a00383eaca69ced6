package lab

import (
	"context"
	"math"
	"testing"

	"cowl/sim"
)

func TestPullKilby(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, PullWarp: 400, PullWeft: 250, Shear: 30, BendWarp: 1e-5, BendWeft: 1e-5, Twist: 5e-6}
	for _, free := range []bool{true, false} {
		for _, g := range []float64{0, 15, 30, 45, 60, 75, 90} {
			r, err := Pull(context.Background(), s, PullSetup{Grain: rad(g), Load: 0.05, Free: free})
			if err != nil || r.Status != sim.Settled {
				t.Fatalf("Pull(%g°) = %+v, %v", g, r, err)
			}
			want := OffAxisModulus(s, rad(g))
			t.Logf("free %v pulled at %g°: E = %.3f N/m, Kilby %.3f (%+.2f %%) %d nodes %d steps %.2f s", free, g, r.Modulus, want, 100*(r.Modulus/want-1), r.Nodes, r.Steps, r.Seconds)
			if math.Abs(r.Modulus/want-1) > 0.02 {
				t.Errorf("free %v Pull(%g°): E = %.3f N/m, want %.3f ± 2 %%", free, g, r.Modulus, want)
			}
		}
	}
}

func TestTrellis(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, PullWarp: 20000, PullWeft: 20000, Shear: 10, BendWarp: 1e-5, BendWeft: 1e-5, Twist: 5e-6}
	const length, width = 0.24, 0.08
	for _, load := range []float64{1, 4, 8, 14} {
		r, err := Pull(context.Background(), s, PullSetup{Length: length, Width: width, Grain: rad(45), Load: load})
		if err != nil {
			t.Fatal(err)
		}
		want := TrellisShear(length, width, r.Extension*length)
		t.Logf("load %g: extension %.2f %%, shear %.2f°, trellis %.2f°  %+v", load, r.Extension*100, deg(r.Shear), deg(want), r.Run)
		if math.Abs(deg(r.Shear-want)) > 1.5 {
			t.Errorf("shear %.2f°, want %.2f ± 1.5", deg(r.Shear), deg(want))
		}
	}
}
