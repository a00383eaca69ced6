package study

import (
	"math"

	"cowl/mesh/draft"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// shoulderPlaces lists where pins go down the flat shoulder seam, m from the
// cowl point: on every leg of a pleat and where its cloth turns, and between.
func (j Job) shoulderPlaces() []float64 {
	p := j.Piece
	if j.Free {
		return steps(0, math.Min(length(p.Shoulder), shoulderStep), shoulderStep)
	}
	stops := []float64{0}
	for k := range p.Pleats {
		a, b := p.Legs(k)
		stops = append(stops, a, (a+b)/2, b)
	}
	stops = append(stops, length(p.Shoulder))
	out := []float64{0}
	for k := 1; k < len(stops); k++ {
		out = append(out, steps(stops[k-1], stops[k], shoulderStep)[1:]...)
	}
	return out
}

// layer returns in which layer the place q down the flat shoulder seam lies
// once its pleats are folded: 0 on the form, 1 where the seam is single, 2 over
// a pleat; halves where it goes over from one to the next.
func layer(p draft.Piece, q float64) float64 {
	const at = 1e-6 // m
	for k, l := range p.Pleats {
		a, b := p.Legs(k)
		from, cover := a, b // where the layer beneath and the one on top begin
		if l.To == draft.Armhole {
			q, from, cover = a+b-q, a, b // the same, seen from the tip
		}
		switch u := q - from; {
		case u < -at || q > cover+l.Depth+at:
		case u <= at:
			return 0.5
		case u < l.Depth-at:
			return 0
		case u <= l.Depth+at:
			return 0.5
		case u < 2*l.Depth-at:
			return 1
		case u <= 2*l.Depth+at || q >= cover+l.Depth-at:
			return 1.5
		default:
			return 2
		}
		if l.To == draft.Armhole {
			q = a + b - q
		}
	}
	return 1
}

// closing is the share of the way to the form by which pleats are pinched shut;
// on the rest of it they are laid over.
const closing = 0.6

// way returns where a pin is at share t of the way from the flat to the form. A
// pleat goes as it goes in the hand: its cloth is pinched towards the wearer
// until the legs meet, then laid over.
func (j Job) way(p pin, t float64) r3.Vec {
	e := smoothly(t)
	if t >= 1 || !p.onShoulder() || j.Piece.Pleats == nil {
		a := j.start(p.flat)
		return r3.Add(a, r3.Scale(e, r3.Sub(p.at, a)))
	}
	shut, laid := smoothly(t/closing), smoothly((t-closing)/(1-closing))
	side := math.Copysign(1, p.flat.X)
	k, from := -1, p.down
	var before float64 // what the pleats above take
	for i, l := range j.Piece.Pleats {
		a, b := j.Piece.Legs(i)
		if p.down >= b {
			before += 2 * l.Depth
			continue
		}
		if p.down >= a {
			k, from = i, a
		}
		break
	}
	base := j.start(sided(along(j.Piece.Shoulder, from-shut*before), side))
	if k < 0 {
		return r3.Add(base, r3.Scale(e, r3.Sub(p.at, base)))
	}
	l := j.Piece.Pleats[k]
	to := j.Form.ShoulderPoint(side, j.Piece.CowlPoint+l.At)
	x, z := tuck(p.down-from, l.Depth, shut, laid)
	if l.To == draft.Armhole && laid > 0 {
		x = -x
	}
	end := r3.Add(j.off(to, p.over), r3.Scale(math.Copysign(l.Depth-math.Abs(p.down-from-l.Depth), x), j.alongForm(side, l.At)))
	right, in := j.pleatFrame(side, k, e)
	at := r3.Add(base, r3.Scale(e, r3.Sub(j.off(to, p.over), base)))
	at = r3.Add(at, r3.Add(r3.Scale(x, right), r3.Scale(z, in)))
	return r3.Add(at, r3.Scale(laid, r3.Sub(p.at, end)))
}

// tuck returns where the place u between the legs of a pleat lies: x along the
// seam from its first leg, z into it. While it shuts its two sides keep their
// length; shut, it is laid over towards x.
func tuck(u, depth, shut, laid float64) (x, z float64) {
	w := depth - math.Abs(u-depth) // m from the nearer leg
	if laid > 0 {
		sin, cos := math.Sincos(laid * math.Pi / 2)
		return w * sin, w * cos
	}
	cos := 1 - shut
	x, z = w*cos, w*math.Sqrt(1-cos*cos)
	if u > depth {
		x = 2*depth*cos - x
	}
	return x, z
}

// alongForm returns the unit direction of the form's shoulder seam, down from
// the neck, at place s below the cowl point.
func (j Job) alongForm(side, s float64) r3.Vec {
	const d = 0.005 // m
	s += j.Piece.CowlPoint
	return r3.Unit(r3.Sub(j.Form.ShoulderPoint(side, s+d), j.Form.ShoulderPoint(side, s-d)))
}

// pleatFrame returns the directions along the seam and into pleat k at share e
// of the way.
func (j Job) pleatFrame(side float64, k int, e float64) (right, in r3.Vec) {
	q, leg := j.Piece.Legs(k)
	a, b := along(j.Piece.Shoulder, q), along(j.Piece.Shoulder, leg)
	flat := r2.Unit(r2.Sub(sided(b, side), sided(a, side)))
	s := j.Piece.Pleats[k].At
	_, up := j.Form.Distance(j.Form.ShoulderPoint(side, j.Piece.CowlPoint+s))
	mix := func(a, b r3.Vec) r3.Vec { return r3.Unit(r3.Add(r3.Scale(1-e, a), r3.Scale(e, b))) }
	return mix(r3.Vec{X: flat.X, Y: flat.Y}, j.alongForm(side, s)), mix(r3.Vec{Z: -1}, r3.Scale(-1, r3.Unit(up)))
}

// overAt is the distance from the form at which a place of the shoulder seam
// is pinned, m: layers keep their gap.
func overAt(p draft.Piece, q float64) float64 { return sim.Shell + layer(p, q)*Gap }
