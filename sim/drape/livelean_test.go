package drape

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"cowl/mesh/limit"
)

// The wearer of cloth that one watches bends as that of a drape of the same job, to the bit,
// and the cloth that is watched hangs on as it was. Moving cloth is no cloth to bend in.
func TestLiveLean(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cowl twice")
	}
	j := coarse(t, limp)
	j.Folds, j.Waist = 2, SidesPinned
	d, err := Hang(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	want, err := d.leaned(t.Context(), math.Pi/6)
	if err != nil {
		t.Fatal(err)
	}
	l := NewLive(j)
	defer l.Close()
	var e *limit.Error
	if _, err := l.Lean(t.Context(), math.Pi/6, nil); !errors.As(err, &e) || e.Field != "lean" {
		t.Errorf("Lean of cloth that is being placed: %v, want it refused", err)
	}
	f := resting(t, l, 0)
	was, most := slices.Clone(f.Sheet.Pos), 0.0
	got, err := l.Lean(t.Context(), math.Pi/6, func(share float64) { most = max(most, share) })
	if err != nil || got != want || most != 1 {
		t.Errorf("Lean = %+v, %v, told %g of it, want %+v and all of it", got, err, most, want)
	}
	if l.Frame(&f); f.Stage != StageRest {
		t.Errorf("after it the cloth is %q, want it at rest", f.Stage)
	}
	sameBits(t, f.Sheet.Pos, was)
	if _, err := l.Lean(t.Context(), 2, nil); !errors.As(err, &e) || e.Field != "lean" {
		t.Errorf("Lean by 115°: %v, want it refused", err)
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := l.Lean(gone, math.Pi/6, func(float64) {}); !errors.Is(err, context.Canceled) {
		t.Errorf("Lean that is stopped: %v, want %v", err, context.Canceled)
	}
}
