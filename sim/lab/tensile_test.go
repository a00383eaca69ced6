package lab

import (
	"context"
	"math"
	"testing"

	"cowl/sim"
)

// Swivelling jaws leave the middle of a long strip in plain tension, as free
// ends do: both read the off-axis modulus.
func TestPullKilby(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 400, TensileWeft: 250, Shear: 30, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	n := 0
	for _, free := range []bool{true, false} {
		for _, g := range []float64{0, 15, 30, 45, 60, 75, 90} {
			r, err := Tensile(context.Background(), s, TensileSetup{Grain: rad(g), Load: 0.05, Free: free})
			if err != nil || r.Status != sim.Settled {
				t.Fatalf("Pull(%g°, free %v) = %+v, %v", g, free, r, err)
			}
			want := OffAxisModulus(s, rad(g))
			t.Logf("free %v at %g°: E = %.3f N/m, Kilby %.3f (%+.2f %%), %d nodes, %d steps, %.2f s", free, g, r.Modulus, want,
				100*(r.Modulus/want-1), r.Nodes, r.Steps, r.Seconds)
			if math.Abs(r.Modulus/want-1) > 0.02 {
				t.Errorf("Pull(%g°, free %v): E = %.3f N/m, want %.3f ± 2 %%", g, free, r.Modulus, want)
			}
			n++
		}
	}
	if n != 14 {
		t.Errorf("%d strips pulled, want 14", n)
	}
}

// A cloth whose yarns stretch a hundred and fifty times less than it shears.
func TestPullStiffYarns(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 3500, TensileWeft: 1500, Shear: 23, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	for _, g := range []float64{30, 45} {
		r, err := Tensile(context.Background(), s, TensileSetup{Grain: rad(g), Load: 0.05})
		want := OffAxisModulus(s, rad(g))
		t.Logf("%g°: E = %.3f N/m, Kilby %.3f", g, r.Modulus, want)
		if err != nil || math.Abs(r.Modulus/want-1) > 0.02 {
			t.Errorf("Pull(%g°): E = %.3f N/m, %v, want %.3f ± 2 %%", g, r.Modulus, err, want)
		}
	}
}

func TestTrellisShear(t *testing.T) {
	for _, c := range []struct{ growth, want float64 }{
		{0, 0},
		// length ratio √(1 + sin γ) of a sheared square pulled at its corners
		{0.2 * (math.Sqrt(1+math.Sin(math.Pi/9)) - 1), 20},
		{1, 90},
	} {
		if got := deg(TrellisShear(0.3, 0.1, c.growth)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("TrellisShear(0.3, 0.1, %g) = %g°, want %g", c.growth, got, c.want)
		}
	}
}

// The bias extension test: stiff yarns turn in the central zone as the rods of
// a trellis.
func TestPullTrellis(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 20000, TensileWeft: 20000, Shear: 10, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	const length, width = 0.24, 0.08
	last := 0.0
	for _, load := range []float64{1, 4, 8, 14} {
		r, err := Tensile(context.Background(), s, TensileSetup{Length: length, Width: width, Grain: rad(45), Load: load})
		if err != nil || r.Status != sim.Settled {
			t.Fatalf("Pull(45°, %g N/m) = %+v, %v", load, r, err)
		}
		want := TrellisShear(length, width, r.Extension*length)
		t.Logf("%g N/m: extension %.2f %%, shear %.2f°, trellis %.2f°", load, r.Extension*100, deg(r.Shear), deg(want))
		if math.Abs(deg(r.Shear-want)) > 1.5 {
			t.Errorf("Pull(45°, %g N/m): shear %.2f°, want %.2f ± 1.5", load, deg(r.Shear), deg(want))
		}
		last = deg(r.Shear)
	}
	if last < 30 {
		t.Errorf("the largest shear angle tried is %.1f°, want 30 or more", last)
	}
}

func TestPullRefuses(t *testing.T) {
	for _, p := range []TensileSetup{{Length: 2}, {Width: 1}, {Load: 1e4}, {Spacing: 0.1}} {
		if _, err := Tensile(context.Background(), sim.Stiffness{}, p); err == nil {
			t.Errorf("Pull(%+v): no error", p)
		}
	}
}
