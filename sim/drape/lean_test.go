package drape

import (
	"errors"
	"math"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r3"
)

// While the wearer bends forward the edge falls from the chest, and it comes back to it;
// what was kept is followed on the way.
func TestLean(t *testing.T) {
	if testing.Short() {
		t.Skip("a drape that bends and comes up")
	}
	r := laidAndLeant(t)
	l := r.Outcome.Lean
	if l == nil || !l.Upright.Settled || !l.Bent.Settled || !l.Back.Settled {
		t.Fatalf("lean %+v, want three postures at rest", l)
	}
	t.Logf("%+v", *l)
	if l.Upright.StandOff != r.Outcome.StandOff || l.Upright.Kept != r.Outcome.Kept {
		t.Errorf("upright %+v, want the %g m and %d folds of the drape", l.Upright, r.Outcome.StandOff, r.Outcome.Kept)
	}
	if !(l.Bent.StandOff > l.Upright.StandOff+0.003 && l.Bent.Opening > l.Upright.Opening) {
		t.Errorf("bent by 30°: %+v, upright %+v, want the edge to fall from the chest", l.Bent, l.Upright)
	}
	if !(l.Back.StandOff < l.Bent.StandOff && l.Back.Opening < l.Bent.Opening) {
		t.Errorf("back: %+v, bent %+v, want it nearer to the chest", l.Back, l.Bent)
	}
}

// A wearer who bends forward bends away from a cowl at the back: its cloth lies closer. Not
// on 16 mm, where by one hand of three the edge hangs 3 mm off the back already.
func TestLeanBack(t *testing.T) {
	if testing.Short() {
		t.Skip("a drape that bends and comes up")
	}
	j := job(t, 0.10, 0.014, limp)
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	block, err := draft.CowlFromBody(b, draft.AtBack)
	if err != nil {
		t.Fatal(err)
	}
	c := draft.DefaultCut()
	c.Worn, c.Extension, c.CowlPoint = draft.AtBack, 0.10, 0.05
	if j.Cowl, err = draft.Draft(block, c); err != nil {
		t.Fatal(err)
	}
	j.Form, j.Folds, j.Waist, j.Lean = size10().form.Turned(), 2, SidesPinned, math.Pi/6
	l := run(t, j).Outcome.Lean
	if l == nil || !l.Upright.Settled || !l.Bent.Settled || !l.Back.Settled {
		t.Fatalf("lean %+v, want three postures at rest", l)
	}
	t.Logf("%+v", *l)
	if !(l.Bent.Opening < l.Upright.Opening && l.Bent.StandOff < l.Upright.StandOff+0.001) {
		t.Errorf("bent by 30°: %+v, upright %+v, want the cloth nearer to the back", l.Bent, l.Upright)
	}
}

// The weight turns towards the bust, at whichever side of the form it is.
func TestDown(t *testing.T) {
	bust := size10().form.Apex(1)
	for worn, z := range map[draft.Side]float64{draft.AtFront: bust.Z, draft.AtBack: -bust.Z} {
		d := down(math.Pi/6, worn)
		if math.Abs(r3.Norm(d)-1) > 1e-15 || !(d.Z*z > 0) || math.Abs(d.Y+math.Sqrt(3)/2) > 1e-15 {
			t.Errorf("down(30°, %v) = %v, want 30° from straight down towards a bust at Z %+.2f", worn, d, z)
		}
	}
}

func TestLeanRefused(t *testing.T) {
	for _, q := range []struct {
		lean float64
		free bool
	}{{-0.1, false}, {2, false}, {0.5, true}} {
		j := job(t, 0.11, 0.012, limp)
		j.Lean, j.Free, j.Waist = q.lean, q.free, FreeWaist
		var e *limit.Error
		if err := j.Check(); !errors.As(err, &e) || e.Field != "lean" {
			t.Errorf("lean %g, free %t: %v, want it refused", q.lean, q.free, err)
		}
	}
}
