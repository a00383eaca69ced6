package drape

import (
	"context"
	"math"
	"testing"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// From the same cloth let go, the quick way to rest and a slow one, with even
// masses, no net and a hundredth of the residual, end in the same drape.
func TestQuickIsTight(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	for _, fabric := range []string{limp, stiff} {
		j := job(t, 0.11, 0.012, fabric)
		quick, err := j.lay(j.leading())
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
			fabric, quick.Steps, quick.Result.Residual, slow.Steps, slow.Result.Residual, a.EdgeDrop*1000, b.EdgeDrop*1000, a.Folds, b.Folds, far*1000)
		if math.Abs(a.EdgeDrop-b.EdgeDrop) > 0.5e-3 || len(a.Folds) != len(b.Folds) || a.Count != b.Count {
			t.Errorf("%s: drop %.2f mm with %d folds, want the %.2f mm with %d of the slow way within 0.5 mm", fabric, a.EdgeDrop*1000, len(a.Folds), b.EdgeDrop*1000, len(b.Folds))
			continue
		}
		for k, f := range a.Folds {
			if g := b.Folds[k]; math.Abs(f.Depth-g.Depth) > 1e-3 {
				t.Errorf("%s: fold %d is %.1f mm deep, want %.1f within 1 mm", fabric, k+1, f.Depth*1000, g.Depth*1000)
			}
		}
	}
}
