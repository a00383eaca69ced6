package drape

import (
	"math"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/lattice"
	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
)

// A weight of 10 g adds its weight to the load, about the place where it is
// sewn, and nothing else; slashes take no cloth away.
func TestWeigh(t *testing.T) {
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	blk, err := draft.FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	p, err := draft.Draft(blk, draft.DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	s := draft.DefaultStand()
	s.Weight, s.ReleaseWaist, s.ReleaseWaistAt = 0.010, 0.06, 0.2
	if p, err = p.Treated(s); err != nil {
		t.Fatal(err)
	}
	l, err := lattice.Cut(cut(p), lattice.Options{Spacing: 0.012, Grain: p.Grain, Origin: r2.Vec{Y: p.FoldY},
		Slits: slits(p, 0.012)})
	if err != nil {
		t.Fatal(err)
	}
	c := sim.NewCloth(l, sim.Stiffness{Weight: 0.1, TensileWarp: 1, TensileWeft: 1, Shear: 1})
	weigh(p, l, c)
	var load, moment float64
	for i, f := range c.Load {
		load += f
		moment += f * l.Rest[i].Y
	}
	d, _ := dart(p)
	cloth := polyline.Area(cut(p))*0.1*sim.Gravity - 2*d.weight(0.1)
	if want := cloth + 0.010*9.80665; math.Abs(load-want) > 1e-6 {
		t.Errorf("load %.6f N, want %.6f N", load, want)
	}
	if got := c.Weight(); math.Abs(got-load) > 1e-9 {
		t.Errorf("the piece weighs %.6f N, want the %.6f N of its load", got, load)
	}
	plain := sim.NewCloth(l, sim.Stiffness{Weight: 0.1, TensileWarp: 1, TensileWeft: 1, Shear: 1})
	for i, f := range plain.Load {
		moment -= f * l.Rest[i].Y
	}
	if got, want := moment/(0.010*9.80665), p.FoldY+p.Facing-0.005; math.Abs(got-want) > 1e-9 {
		t.Errorf("the weight hangs at y = %.4f m, want %.4f m", got, want)
	}
}
