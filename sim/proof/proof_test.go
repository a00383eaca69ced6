package proof

import (
	"context"
	"errors"
	"maps"
	"math"
	"sync"
	"testing"
)

// Every row says what it compares with, where that stands, and how near.
func TestRowsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range All() {
		if c.Name == "" || c.Source == "" || c.Tolerance <= 0 || seen[c.Name] {
			t.Errorf("row %+v, want a name of its own, a source and a tolerance", c.Check)
		}
		seen[c.Name] = true
	}
	if len(seen) < 25 {
		t.Errorf("%d rows, want 25 or more", len(seen))
	}
}

// The rows that take seconds pass. The drape meters and hung sheets are run by
// cowl proof, which shows their misses.
func TestQuickRows(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	n := 0
	for _, group := range [][]Pending{bends(), strips(), frictions(), rubs(), shapes()} {
		for _, c := range Run(context.Background(), group, nil) {
			n++
			if !c.Pass {
				t.Errorf("%s = %.4g %s, want %.4g ± %.3g (%s)", c.Name, c.Got, c.Unit, c.Want, c.Tolerance, c.Note)
			}
		}
	}
	if n < 20 {
		t.Errorf("%d rows run, want 20 or more", n)
	}
}

// A trial that misses or fails is a row that does not pass, with its reason;
// a cancelled one is not run.
func TestMissesStay(t *testing.T) {
	row := func(got float64, err error) Pending {
		return figure(Check{Name: "x", Want: 1, Tolerance: 0.1}, func(context.Context) (float64, error) { return got, err })
	}
	got := Run(context.Background(), []Pending{row(1.05, nil), row(1.2, nil), row(1, errors.New("no cloth"))}, nil)
	for k, want := range []bool{true, false, false} {
		if got[k].Pass != want {
			t.Errorf("row %d passes = %t, want %t", k, got[k].Pass, want)
		}
	}
	if got[1].Got != 1.2 || got[2].Note != "no cloth" {
		t.Errorf("rows %+v, want the figure of a miss and the reason of a failure", got)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if c := Run(ctx, []Pending{row(1, nil)}, nil)[0]; c.Pass || !c.Cancelled() {
		t.Errorf("cancelled row %+v, want it not to pass", c)
	}
}

// A trial that is called off while it runs has no figure, and those before it keep theirs.
func TestCancelledWhileRunning(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	ends := figure(Check{Tolerance: 1}, func(context.Context) (float64, error) { return 1, nil })
	calledOff := figure(Check{Tolerance: 1}, func(context.Context) (float64, error) { cancel(); return 0.5, nil })
	first, second := ends.check(ctx), calledOff.check(ctx)
	if first.Cancelled() || first.Got != 1 || !second.Cancelled() || second.Got != 0 || second.Pass {
		t.Errorf("rows %+v and %+v, want 1, and one that was cancelled", first, second)
	}
}

// Published figures as they stand in the table, straight lines between, ends held.
func TestLeedsNodes(t *testing.T) {
	for _, c := range []struct{ dc, want float64 }{{5, 11.7}, {15, 11.7}, {21, 10.1}, {29, 8.4}, {86.2, 3.5}, {99, 3.1}} {
		if got := leedsNodes(c.dc); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("leedsNodes(%g) = %g, want %g", c.dc, got, c.want)
		}
	}
}

// Each trial is told of as it begins.
func TestRunTells(t *testing.T) {
	row := func(name string) Pending {
		return figure(Check{Name: name}, func(context.Context) (float64, error) { return 0, nil })
	}
	var mu sync.Mutex
	told := map[string]bool{}
	Run(context.Background(), []Pending{row("a"), row("b"), row("c")}, func(ended int, begun string) {
		mu.Lock()
		defer mu.Unlock()
		told[begun] = ended < 3
	})
	if want := map[string]bool{"a": true, "b": true, "c": true}; !maps.Equal(told, want) {
		t.Errorf("told of %v, want %v", told, want)
	}
}
