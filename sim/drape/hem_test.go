package drape

import (
	"context"
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// hemmedJob is the demo on 16 mm with two folds, and a hem below the waist.
func hemmedJob(t testing.TB, hem float64, w Waist) Job {
	j := recut(t, laidJob(t, 0.08, 2), func(c *draft.Cut) { c.Extension, c.Hem = draft.Auto, hem })
	j.Spacing, j.Waist = 0.016, w
	return j
}

// With a free waist nothing but shoulder and underarm is pinned; the side seam below is
// held in its plane alone, down to the hem, and every place of it on the form's seam as
// far below the waist as it is in the flat.
func TestFreeWaistPins(t *testing.T) {
	for _, q := range []struct {
		hem            float64
		w              Waist
		waist          bool // side pins reach the waist
		sewn, sewnFrom int  // places a side, first of them m·1000 below the underarm or more
	}{
		{0, SidesPinned, true, 0, 0},
		{0, FreeWaist, false, 20, 1},
		{0.12, FreeWaist, false, 32, 1},
		{0.12, SidesPinned, true, 12, 196},
		{0.22, FreeWaist, false, 42, 1},
	} {
		j := hemmedJob(t, q.hem, q.w)
		deepest, sewn := 0.0, 0
		for _, p := range j.pins() {
			down := nearest(j.Cowl.Side, sided(p.flat, math.Copysign(1, p.flat.X)))
			switch {
			case p.name == "waist" || p.name == "dart":
				t.Errorf("hem %g, waist %v: a pin in the waist", q.hem, q.w)
			case p.sewn:
				sewn++
				if below := down - j.Cowl.SideToWaist(); below > 0.01 && math.Abs(p.at.Y+below) > 0.1*below {
					t.Errorf("hem %g: the side seam %.3f m below the waist is led to %.3f m above it", q.hem, below, p.at.Y)
				}
				if down < float64(q.sewnFrom)/1000 || p.only() != (r3.Vec{Z: 1}) {
					t.Errorf("hem %g, waist %v: sewn %.3f m down, held along %v", q.hem, q.w, down, p.only())
				}
			case p.name == "side":
				deepest = math.Max(deepest, down)
			}
		}
		if sewn != 2*q.sewn || (math.Abs(deepest-j.Cowl.SideToWaist()) < 1e-9) != q.waist || !q.waist && deepest > 0 {
			t.Errorf("hem %g, waist %v: pinned down to %.3f m, %d places sewn, want the waist %.3f m down: %t, and %d", q.hem,
				q.w, deepest, sewn, j.Cowl.SideToWaist(), q.waist, 2*q.sewn)
		}
	}
	if err := hemmedJob(t, 0.12, Pinned).Check(); err == nil || !strings.Contains(err.Error(),
		"has no seam there to pin") {
		t.Errorf("a hem with the waist pinned all round: Check() = %v, want it refused", err)
	}
}

// The demo with a hem comes to rest as sound as without one. What lies above the bust is
// as with the waist at the sides: nothing below the waist carries it; as the mean of two
// hands, of whom one alone lays a fold up to 15 mm from the other. The hem hangs as far
// below the edge as the centre front is long, less what folds and bias take up.
func TestHemHangs(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs six drapes")
	}
	hang := func(hem float64, w Waist, hand uint64) Outcome {
		j := hemmedJob(t, hem, w)
		j.Seed = hand
		d, err := Hang(context.Background(), j)
		if err != nil {
			t.Fatal(err)
		}
		o, _, err := d.outcome(0)
		if err != nil {
			t.Fatal(err)
		}
		if o.Status != sim.Settled || o.Pierced > 0 || o.Residual > 1e-3 || o.Inside > 0.005 {
			t.Errorf("hem %g, waist %v: %v, %d pierced, residual %.1e, %.1f mm in the form", hem, w, o.Status, o.Pierced,
				o.Residual, 1000*o.Inside)
		}
		return o
	}
	var off [2][2]float64 // m, of each front and fold, the mean of the hands
	for hand := range uint64(2) {
		side := hang(0, SidesPinned, hand+1)
		for f, hem := range [2]float64{0, 0.12} {
			o := hang(hem, FreeWaist, hand+1)
			if o.FoldCount != 2 || side.FoldCount != 2 || o.Kept != side.Kept || o.Extra > 0 {
				t.Fatalf("hem %g: %d folds above the bust, %d kept, %d extra, want 2 of %d, %d and none as with the waist at the "+
					"sides", hem, o.FoldCount, o.Kept, o.Extra, side.FoldCount, side.Kept)
			}
			for k := range off[f] {
				off[f][k] += (o.Folds[k].CF - side.Folds[k].CF) / 2
			}
			belowWaist(t, o, hem)
		}
	}
	for f, hem := range [2]float64{0, 0.12} {
		for k, off := range off[f] {
			if math.Abs(off) > 0.010 {
				t.Errorf("hem %g: fold %d lies %.0f mm from where it lies with the waist at the sides, want 10 at most", hem, k+1,
					1000*off)
			}
		}
	}
}

// belowWaist fails the test unless the hem hangs where it was cut to hang. Folds and bias
// lift the waist by some 2 cm; the hem is lifted with it.
func belowWaist(t *testing.T, o Outcome, hem float64) {
	t.Helper()
	if hem == 0 {
		if o.HemFront != 0 || o.HemSides != 0 {
			t.Errorf("a front that ends at the waist has a hem %.3f and %.3f m below it", o.HemFront, o.HemSides)
		}
		return
	}
	if o.HemFront < hem-0.035 || o.HemFront > hem+0.005 || math.Abs(o.HemFront-o.HemSides) > 0.02 {
		t.Errorf("a hem of %g cm hangs %.1f cm below the waist in front and %.1f at the sides, want 3.5 less to 0.5 more and "+
			"level to 2", 100*hem, 100*o.HemFront, 100*o.HemSides)
	}
}

// Cloth that hangs is not carried over to another hem, nor is its waist let go of: the
// hand places it anew.
func TestHemIsPlacedAnew(t *testing.T) {
	j := hemmedJob(t, 0.12, FreeWaist)
	d, err := j.onLattice(j.leading())
	if err != nil {
		t.Fatal(err)
	}
	w := &walker{d: d, job: j}
	for _, q := range []struct {
		name string
		to   Job
		want bool
	}{
		{"the same", j, true},
		{"longer", hemmedJob(t, 0.15, FreeWaist), false},
		{"to the waist", hemmedJob(t, 0, FreeWaist), false},
		{"sides pinned", hemmedJob(t, 0.12, SidesPinned), false},
	} {
		if got := w.carries(q.to); got != q.want {
			t.Errorf("%s: carried %t, want %t", q.name, got, q.want)
		}
	}
}
