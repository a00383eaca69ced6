package drape

import (
	"math"

	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// Where nobody pins the side seam it is still sewn to the back. The back hangs as the
// front does and pulls as much backwards as the front pulls forwards, so the seam stays
// in the plane of the side; but nothing carries it or presses it to the body: it hangs
// from the underarm, rises, sinks and stands off as it will. A pin would carry its
// share of the weight and leave the cloth above it slack.
var inSidePlane = r3.Vec{Z: 1}

// seamStep is how far apart the seam is held as it is sewn, m: pins 4 cm apart let it
// gape and fold over between them.
const seamStep = 0.010

// sidePins hold the side seam: pinned along the form's seam from underarm to waist, or
// at the underarm alone where the waist is free, and sewn from there on down to the
// lower edge.
func (j Job) sidePins(side float64) []pin {
	if j.Waist == FreeWaist {
		return j.seamPins(side, 0)
	}
	return append(j.pinnedSide(side), j.seamPins(side, j.Cowl.SideToWaist())...)
}

// pinnedSide spreads the side seam over the form's from underarm to waist.
func (j Job) pinnedSide(side float64) []pin {
	var out []pin
	for _, s := range steps(0, j.Cowl.SideToWaist(), sideStep) {
		out = append(out, j.sidePin(side, s))
	}
	return out
}

// seamPins hold the side seam as it is sewn, below a place of it that is pinned (m down
// from the underarm). The underarm itself is pinned.
func (j Job) seamPins(side, from float64) []pin {
	var out []pin
	for k, s := range steps(from, polyline.Length(j.Cowl.Side), seamStep) {
		p := j.sidePin(side, s)
		if s > 0 {
			p.name, p.sewn = "side seam", true
		}
		if k > 0 || from == 0 {
			out = append(out, p)
		}
	}
	return out
}

// sidePin pins the place s down the side seam (m from the underarm): as it lies in the
// form's between underarm and waist, below the waist at its own length.
func (j Job) sidePin(side, s float64) pin {
	p := j.Cowl
	waist, body := p.SideToWaist(), j.sideLength()
	down := s / waist * body
	if s > waist {
		down = body + s - waist
	}
	at := j.Form.SidePoint(side, down)
	if beyond := down - j.Form.SideLength(); beyond > 0 {
		at.Y -= beyond // below the hip the seam hangs
	}
	return pin{name: "side", flat: sided(along(p.Side, s), side), at: j.off(at, sim.Shell), over: sim.Shell}
}

// sideLength is the arc from underarm to waist along the form's side seam, m.
func (j Job) sideLength() float64 {
	lo, hi := 0.0, 0.5
	for range 40 {
		if m := (lo + hi) / 2; j.Form.SidePoint(1, m).Y > 0 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

// only says along which axes the pin holds.
func (p pin) only() r3.Vec {
	if p.sewn {
		return inSidePlane
	}
	return sim.All
}

// led lists the sewn places of the side seam, which the hand leads and lets go.
func led(pins []pin) []pin {
	var out []pin
	for _, p := range pins {
		if p.sewn {
			out = append(out, p)
		}
	}
	return out
}

// hemAt returns how far the hem hangs below the waist of the form on the centre front
// and at the side seams, mean of both, m.
func (d *Drape) hemAt() (front, sides float64) {
	if d.Job.Cowl.Hem == 0 {
		return 0, 0
	}
	w := d.Job.Cowl.Waist
	low := func(k int, side float64) float64 {
		p, ok := d.Lattice.Locate(sided(w[k], side))
		if !ok {
			return math.NaN()
		}
		return -p.At(d.State.Pos).Y
	}
	return low(len(w)-1, 1), (low(0, 1) + low(0, -1)) / 2
}
