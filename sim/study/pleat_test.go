package study

import (
	"math"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// pleatedJob is a size 10 front with two pleats.
func pleatedJob(t *testing.T, to draft.Towards) Job {
	t.Helper()
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	blk, err := draft.FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	c := draft.DefaultCut()
	c.Pleats, c.PleatsTo = 2, to
	p, err := draft.Draft(blk, c)
	if err != nil {
		t.Fatal(err)
	}
	f, err := form.FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	return Job{Piece: p, Form: f, Spacing: 0.01, Seed: 1}
}

// The legs of a pleat are pinned to one place of the form's shoulder seam, a
// layer and more apart; the cloth between them lies beneath the seam that goes
// on, three layers a gap apart, away from where the fold points; and the folded
// seam ends at the form's shoulder tip.
func TestPleatPins(t *testing.T) {
	for _, to := range []draft.Towards{draft.Neck, draft.Armhole} {
		j := pleatedJob(t, to)
		p := j.Piece
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
			mid := (a + b) / 2
			on := j.Form.ShoulderPoint(1, p.CowlPoint+l.At)
			for _, q := range []float64{a, b} {
				if d := r3.Norm(r3.Sub(find(q).at, on)); d > sim.Shell+2*Gap {
					t.Errorf("towards the %v, pleat %d: a leg is pinned %.1f mm from its place on the form", to, k+1, d*1000)
				}
			}
			fold, place := find(b), find(a)
			if to == draft.Armhole {
				fold, place = place, fold
			}
			if fold.over-place.over < 0.99*Gap {
				t.Errorf("towards the %v, pleat %d: the fold lies %.1f mm over its place, want a gap of %.1f mm", to, k+1, (fold.over-place.over)*1000, Gap*1000)
			}
			if far := r3.Norm(r3.Sub(find(mid).at, on)); math.Abs(far-l.Depth) > 0.004 {
				t.Errorf("towards the %v, pleat %d: reaches %.1f mm under, want its depth of %.1f mm", to, k+1, far*1000, l.Depth*1000)
			}
			quarter := l.Depth / 2
			cover := b + quarter
			if to == draft.Armhole {
				cover = a - quarter
			}
			var layers [3]int
			for _, q := range []float64{a + quarter, b - quarter, cover} {
				layers[int(layer(p, q))]++
			}
			if layers != [3]int{1, 1, 1} {
				t.Errorf("towards the %v, pleat %d: %v pieces of cloth on the three layers, want one each", to, k+1, layers)
			}
		}
		tip := find(length(p.Shoulder))
		if d := r3.Norm(r3.Sub(tip.at, j.Form.ShoulderPoint(1, p.CowlPoint+p.ShoulderLength()))); math.Abs(d-tip.over) > 1e-3 {
			t.Errorf("towards the %v: the seam ends %.1f mm from the shoulder tip", to, d*1000)
		}
	}
}

// On the way a pleat is not torn: pins of the pleats are never drawn further
// apart than a bias seam gives in the hand, a seventh, and they end at their places.
func TestPleatWay(t *testing.T) {
	for _, to := range []draft.Towards{draft.Neck, draft.Armhole} {
		j := pleatedJob(t, to)
		var line []pin
		_, end := j.Piece.Legs(len(j.Piece.Pleats) - 1)
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
		if worst > 1.0/7 {
			t.Errorf("towards the %v: pins are drawn %.0f %% further apart than the cloth at %.2f of the way", to, worst*100, where)
		}
		for _, q := range line {
			if d := r3.Norm(r3.Sub(j.way(q, 1), q.at)); d > 1e-12 {
				t.Errorf("pin %.4f m down the seam ends %g m from its place", q.down, d)
			}
		}
	}
}
