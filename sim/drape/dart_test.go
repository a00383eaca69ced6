package drape

import (
	"context"
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The cloth of an open dart, and no other, begins behind the front; the farther from its
// legs the more.
func TestInDart(t *testing.T) {
	p := draft.Cowl{DartLeft: []r2.Vec{{X: 0.16, Y: -0.4}, {X: 0.10, Y: -0.25}, {X: 0.08, Y: -0.42}}}
	for _, q := range []struct {
		name string
		at   r2.Vec
		in   bool
	}{
		{"between the legs", r2.Vec{X: 0.115, Y: -0.38}, true}, {"the same on the other half", r2.Vec{X: -0.115, Y: -0.38},
			true},
		{"above the apex", r2.Vec{X: 0.10, Y: -0.2}, false}, {"at the side", r2.Vec{X: 0.2, Y: -0.4}, false},
		{"at the centre front", r2.Vec{Y: -0.4}, false},
	} {
		if got := inDart(p, q.at); (got > 0) != q.in {
			t.Errorf("inDart(%s) = %g, want above 0: %t", q.name, got, q.in)
		}
	}
	if got := inDart(draft.Cowl{}, r2.Vec{X: 0.1}); got != 0 {
		t.Errorf("inDart without a dart = %g, want 0", got)
	}
}

// A dart that is left open hangs sewn up: its legs lie within a few millimetres of each
// other over their whole length.
func TestDartIsSewn(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a drape")
	}
	j := recut(t, laidJob(t, 0.05, 1), func(c *draft.Cut) { c.DartShare, c.Extension = 0, 0.05 })
	j.Waist = SidesPinned
	d, err := Hang(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for _, s := range d.System.Ties[d.tapes:] {
		worst = math.Max(worst, r3.Norm(r3.Sub(s.A.At(d.State.Pos), s.B.At(d.State.Pos))))
	}
	if n := len(d.System.Ties) - d.tapes; n < 20 || worst > 0.008 {
		t.Errorf("%d stitches, the legs are %.1f mm apart at most, want 20 or more and 8 mm", n, 1000*worst)
	}
}

// On cells of 20 mm an open dart lies in two or three of them, which its seam crushes.
// Hung free, such cloth comes to rest.
func TestCrushedCellsRest(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs two drapes")
	}
	for _, c := range []struct {
		share float64
		how   draft.How
		folds int
	}{{0.45, draft.Shift, 1}, {0.55, draft.Pivot, 2}} {
		j := recut(t, job(t, 0.08, 0.020, "cotton-broad"), func(cut *draft.Cut) {
			cut.DartShare, cut.Extension, cut.How, cut.Facing = c.share, 0.08, c.how, 0.062
		})
		j.Folds, j.Waist, j.Free = c.folds, SidesPinned, true
		d, err := Hang(context.Background(), j)
		if err != nil {
			t.Fatal(err)
		}
		if d.Result.Status != sim.Settled {
			t.Errorf("dart closed by %g, %s: %s, %.1e of the weight unbalanced, want settled", c.share, c.how, d.Result.Status,
				d.Result.Residual)
		}
	}
}
