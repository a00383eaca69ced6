package lab

import (
	"context"
	"math"
	"strings"
	"testing"

	"cowl/materials"
	"cowl/sim"
)

// A cloth that does not know its grain hangs as the heavy elastica at every
// angle to the warp. The bending length is read back to 2 %, where Peirce's
// formula is 3 to 4 % long.
func TestLoop(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	const length, weight = 0.1, 0.15
	for _, c := range []struct{ lengths, grain, tol float64 }{
		{5, 0, 0.01}, {5, 22.5, 0.01}, {5, 45, 0.01}, {9, 0, 0.02}, {9, 45, 0.02},
	} {
		s := isotropic(weight, materials.BendFromLength(length/c.lengths, weight), 30)
		s.TensileWarp, s.TensileWeft = 1000, 1000
		r, err := Loop(context.Background(), s, LoopSetup{Length: length, Grain: rad(c.grain), Spacing: 0.00125})
		if err != nil || r.Status != sim.Settled {
			t.Fatalf("Loop(L/c = %g, %g°) = %+v, %v", c.lengths, c.grain, r, err)
		}
		want := length * materials.HeartDepth(c.lengths)
		t.Logf("L/c = %g at %4g°: depth %.3f mm, elastica %.3f (%+.2f %%); c %.3f mm, want %.3f, Peirce %.3f; %d nodes, "+
			"%d steps, %.2f s", c.lengths, c.grain,
			r.Depth*1000, want*1000, 100*(r.Depth/want-1), r.BendingLength*1000, length*1000/c.lengths, r.Peirce*1000, r.Nodes,
			r.Steps, r.Seconds)
		if math.Abs(r.Depth/want-1) > c.tol {
			t.Errorf("Loop(L/c = %g, %g°): depth %.3f mm, want %.3f ± %g %%", c.lengths, c.grain, r.Depth*1000, want*1000,
				100*c.tol)
		}
		if got := r.BendingLength * c.lengths / length; math.Abs(got-1) > 0.02 {
			t.Errorf("Loop(L/c = %g, %g°): bending length %.3f mm, want %.3f ± 2 %%", c.lengths, c.grain, r.BendingLength*1000,
				length*1000/c.lengths)
		}
		if math.Abs(r.Rigidity/materials.BendFromLength(r.BendingLength, weight)-1) > 1e-12 {
			t.Errorf("Loop(L/c = %g): rigidity %g N·m is not w·c³", c.lengths, r.Rigidity)
		}
	}
}

func TestLoopRefuses(t *testing.T) {
	s := isotropic(0.15, 10e-6, 30)
	for _, c := range []struct {
		set  LoopSetup
		want string
	}{
		{LoopSetup{Length: 0.02}, "30–500 mm"},
		{LoopSetup{Width: 1}, "5–200 mm"},
		{LoopSetup{Length: 0.1, Spacing: 0.01}, "0.3–2.5 mm"},
	} {
		if _, err := Loop(context.Background(), s, c.set); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Loop(%+v) = %v, want %q", c.set, err, c.want)
		}
	}
}
