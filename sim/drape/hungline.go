package drape

import (
	"math"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// hungLine is a line of the cloth from the centre front to a shoulder, hung in a curve.
type hungLine struct {
	end   r3.Vec // m, on the wearer's left
	curve hangingLine
	y, z  float64 // m, of the middle
}

// hangs hangs a line of length long (m) from a place on the left of the form, with its
// middle so far before the bridged front. It is as long as it lies over the form: by what
// that way is longer than through the air the curve is shorter, so the hand stretches
// nothing.
func (j Job) hangs(end r3.Vec, long, ahead float64) hungLine {
	if j.Free {
		return j.hangsFree(end, long, ahead)
	}
	return j.hangsFree(end, root(end.X, long, func(arc float64) float64 {
		return j.overForm(j.hangsFree(end, arc, ahead), lineParts).length() - long
	}), ahead)
}

// hangsFree hangs a line of length long (m) as if there were no form beside its middle.
func (j Job) hangsFree(end r3.Vec, long, ahead float64) hungLine {
	c := hangingCurve(end.X, long)
	lo, hi := 0.0, c.drop // the curve lies in a plane that leans forward
	for range 50 {
		m := (lo + hi) / 2
		if math.Hypot(m, j.frontAt(end.Y-m)+ahead-end.Z) > c.drop {
			hi = m
		} else {
			lo = m
		}
	}
	y := end.Y - (lo+hi)/2
	return hungLine{end: end, curve: c, y: y, z: j.frontAt(y) + ahead}
}

// at returns the place of the line at share t of its length from the middle, on a side
// of the wearer, with the middle held aside, m.
func (l hungLine) at(t, side, aside float64) r3.Vec {
	x, drop := l.curve.at(t)
	share := 1.0 // of the way from the shoulder to the middle
	if l.curve.drop > 0 {
		share = drop / l.curve.drop
	}
	return r3.Vec{X: side*x + aside*(1-t), Y: l.end.Y + (l.y-l.end.Y)*share, Z: l.end.Z + (l.z-l.end.Z)*share}
}

// overForm is a line from its middle to the left shoulder as it lies over the form.
type overForm struct {
	places []r3.Vec  // m
	down   []float64 // m from the middle, len = places
}

// lineParts is into how many parts a line is divided to lead it over the form.
const lineParts = 32

// overForm leads a line, divided into so many parts, over the form: in its middle a
// finger lies between, at the shoulder it lies on it.
func (j Job) overForm(l hungLine, parts int) overForm {
	lies := sim.Shell + j.gap()
	w := overForm{[]r3.Vec{l.at(0, 1, 0)}, []float64{0}}
	for k := 1; k <= parts; k++ {
		t := float64(k) / float64(parts)
		at, by := l.at(t, 1, 0), lies+(valleyAhead-lies)*(1-t)
		if d, _ := j.Form.Distance(at); d < by {
			at = j.off(at, by) // on a free hang it stays
		}
		w.down = append(w.down, w.length()+r3.Norm(r3.Sub(at, w.places[k-1])))
		w.places = append(w.places, at)
	}
	return w
}

// length returns the length of the way, m.
func (w overForm) length() float64 { return w.down[len(w.down)-1] }

// at returns the place so far from the middle, m.
func (w overForm) at(down float64) r3.Vec {
	for k, to := range w.down[1:] {
		if down <= to {
			t := (down - w.down[k]) / (to - w.down[k])
			return r3.Add(w.places[k], r3.Scale(t, r3.Sub(w.places[k+1], w.places[k])))
		}
	}
	return w.places[len(w.places)-1]
}

// root returns where f, which grows, is nothing between lo and hi, within a tenth of a
// millimetre of f; that end where f is least if it is nothing nowhere. Rule of
// false position as of Illinois: an end that stays has half its value (Dowell & Jarratt,
// BIT 11 (1971) 168).
func root(lo, hi float64, f func(float64) float64) float64 {
	const near = 1e-4 // m
	a, b := f(lo), f(hi)
	if a >= 0 {
		return lo
	}
	if b <= 0 {
		return hi
	}
	for range 30 {
		x := hi - b*(hi-lo)/(b-a)
		switch v := f(x); {
		case math.Abs(v) < near:
			return x
		case v > 0:
			hi, b, a = x, v, a/2
		default:
			lo, a, b = x, v, b/2
		}
	}
	return (lo + hi) / 2
}
