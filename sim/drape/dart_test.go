package drape

import (
	"context"
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// What is cut out is the dart between its legs, but for its tip, where it is as narrow
// as two layers.
func TestDartIsCutOut(t *testing.T) {
	p := draft.Cowl{DartLeft: []r2.Vec{{X: 0.16, Y: -0.4}, {X: 0.12, Y: -0.2}, {X: 0.08, Y: -0.4}}}
	d, open := dart(p)
	if want := (r2.Vec{X: 0.12, Y: -0.2 - 0.2*0.0025/0.08}); !open || r2.Norm(r2.Sub(d.tip, want)) > 1e-12 {
		t.Errorf("dart = %v, %t, want it to end at %v", d, open, want)
	}
	if got, want := d.weight(0.1), 0.08*(0.2-0.2*0.0025/0.08)/2*0.1*sim.Gravity; math.Abs(got-want) > 1e-9 {
		t.Errorf("weight(0.1 kg/m²) = %g N, want %g", got, want)
	}
	p.DartLeft[0].X = 0.0815
	if d, open := dart(p); open {
		t.Errorf("dart of 1.5 mm = %v, want none", d)
	}
	if d, open := dart(draft.Cowl{}); open {
		t.Errorf("dart of none = %v, want none", d)
	}
}

// The cloth that hangs weighs what the piece weighs, with its darts in the seams.
func TestDartKeepsItsWeight(t *testing.T) {
	j := recut(t, job(t, 0.05, 0.012, limp), func(c *draft.Cut) { c.DartShare, c.Extension = 0, 0.05 })
	d, err := j.onLattice(0.012)
	if err != nil {
		t.Fatal(err)
	}
	whole := j.Cowl
	whole.DartLeft = nil
	want := polyline.Area(cut(whole))
	if got := d.System.Cloth.Weight() / (j.Fabric.Weight * sim.Gravity); math.Abs(got/want-1) > 1e-6 {
		t.Errorf("hung cloth of %.6f m², want the %.6f of the piece with its darts", got, want)
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

// On cells of 20 mm an open dart lies in two or three of them. Hung free, such cloth
// comes to rest; drawn together there, cells were crushed and swung for ever.
func TestSewnDartsRest(t *testing.T) {
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
