package drape

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Two pins that stand a millimetre too far apart for stiff cloth between them come to
// hold nothing, and so does one that cloth as soft as its shear draws 3 mm aside: the
// pull of a spring between pins, worked by hand.
func TestPinsGiveWay(t *testing.T) {
	free := Job{Free: true}
	const rest, stiff, soft, keep = 0.010, 4000.0, 40.0, 1e-3 // m, N/m, N/m, N
	a, b, c := pin{}, pin{at: r3.Vec{X: 0.011}}, pin{at: r3.Vec{X: 0.003}}
	var pull, drawn float64
	for range 150 {
		pull = (b.at.X - a.at.X - rest) / (1/stiff + 2.0/pinGrip)
		a.giveWay(free, r3.Vec{X: pull}, keep)
		b.giveWay(free, r3.Vec{X: -pull}, keep)
		drawn = c.at.X / (1/soft + 1.0/pinGrip)
		c.giveWay(free, r3.Vec{X: -drawn}, keep)
	}
	if math.Abs(pull) > 2*keep {
		t.Errorf("two pins still pull at each other by %.4f N after 150 looks, want %.4f at most", pull, 2*keep)
	}
	if math.Abs(drawn) > 2*keep {
		t.Errorf("soft cloth still draws a pin by %.4f N after 150 looks, want %.4f at most", drawn, 2*keep)
	}
}

// Pins carry the cloth and do not fight each other: together those of a shoulder and its
// facing, but for the cowl point, pull along the form by less than the cloth weighs.
func TestPinsDoNotFight(t *testing.T) {
	if testing.Short() {
		t.Skip("a drape")
	}
	d := laidAndLeant(t).Drape
	sum := map[bool]float64{} // by side
	for k, p := range d.pins {
		if p.name == "shoulder" || p.name == "facing" {
			sum[p.flat.X > 0] += r3.Norm(d.Job.alongForm(p.at, d.State.Pull(d.System.Holds[k], k)))
		}
	}
	for left, s := range sum {
		if w := d.System.Cloth.Weight(); s > w {
			t.Errorf("pins of one shoulder (left: %t) pull %.2f times the weight, want less than it", left, s/w)
		}
	}
}
