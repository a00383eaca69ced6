package drape

import (
	"context"
	"math"
	"testing"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// From the same cloth let go, the quick way to rest and a slow one, with even masses, no
// coarse level and a hundredth of the residual, end in the same drape where nothing rubs. What
// rubs rests anywhere within a band, and two ways come to it from two sides: then they
// agree by what two hands do.
func TestQuickIsTight(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	for _, c := range []struct {
		fabric      string
		rubs        bool
		drop, depth float64 // m, how far the two may part
	}{{limp, false, 0.5e-3, 1e-3}, {stiff, false, 0.5e-3, 1e-3}, {limp, true, 3e-3, 5e-3}} {
		fabric := c.fabric
		j := job(t, 0.11, 0.020, fabric)
		if !c.rubs {
			j.Fabric.Friction, j.Fabric.FrictionCloth, j.Fabric.BendFriction = 0, 0, 0
		}
		quick, err := j.onLattice(j.leading())
		if err != nil {
			t.Fatal(err)
		}
		ctx := context.Background()
		if quick, err = quick.place(ctx); err != nil {
			t.Fatal(err)
		}
		quick.settle(ctx, roughly, fallSteps, true)
		slow := *quick
		slow.State = quick.State.Clone()
		quick.finish(ctx)
		for n := 0; n < 8 && (n == 0 || slow.Result.Status != sim.Settled); n++ {
			slow.settle(ctx, settled/100, 20_000, true)
		}
		a, err := quick.Read()
		if err != nil {
			t.Fatal(err)
		}
		b, err := slow.Read()
		if err != nil {
			t.Fatal(err)
		}
		far := 0.0
		for i, p := range quick.State.Pos {
			far = math.Max(far, r3.Norm(r3.Sub(p, slow.State.Pos[i])))
		}
		t.Logf("%s: %d steps to %.1e and %d to %.1e; drops %.2f and %.2f mm, folds %v and %v, cloth %.1f mm apart at most",
			fabric, quick.Steps, quick.Result.Residual, slow.Steps, slow.Result.Residual, a.EdgeDrop*1000, b.EdgeDrop*1000,
			a.Folds, b.Folds, far*1000)
		if math.Abs(a.EdgeDrop-b.EdgeDrop) > c.drop || len(a.Folds) != len(b.Folds) || a.Count != b.Count {
			t.Errorf("%s: drop %.2f mm with %d folds, want the %.2f mm with %d of the slow way within %g mm", fabric,
				a.EdgeDrop*1000, len(a.Folds), b.EdgeDrop*1000, len(b.Folds), c.drop*1000)
			continue
		}
		for k, f := range a.Folds {
			if g := b.Folds[k]; math.Abs(f.Depth-g.Depth) > c.depth {
				t.Errorf("%s: fold %d is %.1f mm deep, want %.1f within %g mm", fabric, k+1, f.Depth*1000, g.Depth*1000,
					c.depth*1000)
			}
		}
	}
}
