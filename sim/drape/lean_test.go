package drape

import (
	"context"
	"errors"
	"math"
	"testing"

	"cowl/mesh/limit"
)

// While the wearer bends forward the edge falls from the chest, and it comes back to it;
// what was kept is followed on the way.
func TestLean(t *testing.T) {
	if testing.Short() {
		t.Skip("a drape that bends and comes up")
	}
	j := job(t, 0.11, 0.012, limp)
	j.Folds, j.Waist, j.Lean = 2, SidesPinned, math.Pi/6
	r, err := HangAll(context.Background(), j, 1)
	if err != nil {
		t.Fatal(err)
	}
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
