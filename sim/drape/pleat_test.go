package drape

import (
	"math"
	"testing"

	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// pleatedJob is a size 10 front with two pleats.
func pleatedJob(t *testing.T, to draft.Towards) Job {
	t.Helper()
	return recut(t, Job{Form: size10().form, Spacing: 0.01, Seed: 1}, func(c *draft.Cut) {
		*c = draft.DefaultCut()
		c.Pleats, c.PleatsTo = 2, to
	})
}

// The legs of a pleat are pinned to one place of the form's shoulder seam, a
// layer apart, no pin between them; the seam that goes on over the pleat lies two
// layers up; and the folded seam ends at the form's shoulder tip.
func TestPleatPins(t *testing.T) {
	for _, to := range []draft.Towards{draft.Neck, draft.Armhole} {
		j := pleatedJob(t, to)
		p := j.Cowl
		at := map[float64]pin{}
		for _, q := range j.shoulderPins(1) {
			if q.onShoulder() {
				at[math.Round(q.down*1e6)] = q
			}
		}
		find := func(q float64) pin {
			got, ok := at[math.Round(q*1e6)]
			if !ok {
				t.Fatalf("towards the %v: no pin %.4f m down the flat seam", to, q)
			}
			return got
		}
		for k, l := range p.Pleats {
			a, b := p.Legs(k)
			on := j.Form.ShoulderPoint(1, p.CowlPoint+l.At)
			for _, q := range []float64{a, b} {
				if d := r3.Norm(r3.Sub(find(q).at, on)); d > sim.Shell+2*j.gap() {
					t.Errorf("towards the %v, pleat %d: a leg is pinned %.1f mm from its place on the form", to, k+1, d*1000)
				}
			}
			fold, place := find(b), find(a)
			if to == draft.Armhole {
				fold, place = place, fold
			}
			if fold.over-place.over < 0.99*j.gap() {
				t.Errorf("towards the %v, pleat %d: the fold lies %.1f mm over its place, want a gap of %.1f mm", to, k+1,
					(fold.over-place.over)*1000, j.gap()*1000)
			}
			for q := range at {
				if q > math.Round(a*1e6) && q < math.Round(b*1e6) {
					t.Errorf("towards the %v, pleat %d: a pin between the legs, %.1f mm down", to, k+1, q/1000)
				}
			}
			cover := b + l.Depth/2
			if to == draft.Armhole {
				cover = a - l.Depth/2
			}
			if got := layer(p, cover); got != 2 {
				t.Errorf("towards the %v, pleat %d: layer %g over it, want 2", to, k+1, got)
			}
		}
		tip := find(polyline.Length(p.Shoulder))
		if d := r3.Norm(r3.Sub(tip.at, j.Form.ShoulderPoint(1,
			p.CowlPoint+p.ShoulderLength()))); math.Abs(d-tip.over) > 1e-3 {
			t.Errorf("towards the %v: the seam ends %.1f mm from the shoulder tip", to, d*1000)
		}
	}
}

// On the way a pleat is not torn: pins of the pleats are never drawn further
// apart than the cloth between them, and they end at their places.
func TestPleatWay(t *testing.T) {
	for _, to := range []draft.Towards{draft.Neck, draft.Armhole} {
		j := pleatedJob(t, to)
		var line []pin
		_, end := j.Cowl.Legs(len(j.Cowl.Pleats) - 1)
		for _, q := range j.shoulderPins(1) { // at the tip the form turns away, with pleats and without
			if q.onShoulder() && q.down <= end {
				line = append(line, q)
			}
		}
		worst, where := 0.0, 0.0
		for k := 0; k <= 40; k++ {
			s := float64(k) / 40
			for i := 1; i < len(line); i++ {
				a, b := line[i-1], line[i]
				cloth := math.Hypot(b.down-a.down, b.over-a.over) // from layer to layer it may be drawn a little
				if long := r3.Norm(r3.Sub(j.way(b, s), j.way(a, s)))/cloth - 1; long > worst {
					worst, where = long, s
				}
			}
		}
		if worst > 0.05 {
			t.Errorf("towards the %v: pins are drawn %.0f %% further apart than the cloth at %.2f of the way", to, worst*100,
				where)
		}
		for _, q := range line {
			if d := r3.Norm(r3.Sub(j.way(q, 1), q.at)); d > 1e-12 {
				t.Errorf("pin %.4f m down the seam ends %g m from its place", q.down, d)
			}
		}
	}
}

// A front with pleats comes to rest and is no knot.
func TestPleatsHang(t *testing.T) {
	if testing.Short() {
		t.Skip("ten seconds")
	}
	j := pleatedJob(t, draft.Neck)
	f, err := materials.Find(limp)
	if err != nil {
		t.Fatal(err)
	}
	j.Fabric, j.Spacing = f, 0.012
	sound(t, "two pleats", run(t, j).Outcome)
}
