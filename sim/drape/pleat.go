package drape

import (
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// shoulderPlaces lists where pins go down the flat shoulder seam, m from the
// cowl point: on both legs of every pleat and between pleats. The cloth between
// the legs hangs free, as in a pleat that is not pressed: pinned in three layers
// too, it knotted at the seam.
func (j Job) shoulderPlaces() []float64 {
	p := j.Cowl
	if j.Free {
		return steps(0, math.Min(polyline.Length(p.Shoulder), shoulderStep), shoulderStep)
	}
	out, from := []float64{0}, 0.0
	for k := range p.Pleats {
		a, b := p.Legs(k)
		out, from = append(append(out, steps(from, a, shoulderStep)[1:]...), b), b
	}
	return append(out, steps(from, polyline.Length(p.Shoulder), shoulderStep)[1:]...)
}

// layer returns in which layer the place q down the flat shoulder seam lies
// once its pleats are folded: 1 where the seam is single, 2 over a pleat, 1.5
// where a fold begins, 0.5 where it goes under.
func layer(p draft.Cowl, q float64) float64 {
	const at = 1e-6 // m
	for k, l := range p.Pleats {
		fold, place := p.Legs(k)
		over := fold - q // m, from the fold over the pleat
		if l.To == draft.Neck {
			fold, place = place, fold
			over = q - fold
		}
		switch {
		case math.Abs(q-place) <= at:
			return 0.5
		case math.Abs(over) <= at || math.Abs(over-l.Depth) <= at:
			return 1.5
		case over > 0 && over < l.Depth:
			return 2
		}
	}
	return 1
}

// closing is the share of the way to the form by which pleats are pinched shut.
const closing = 0.6

// way returns where a pin is at share t of the way from the flat to the form. A
// pleat is pinched until its legs meet.
func (j Job) way(p pin, t float64) r3.Vec {
	a := j.start(p.flat)
	if p.onShoulder() {
		taken := 0.0 // m, by the pleats above
		for k, l := range j.Cowl.Pleats {
			if _, leg := j.Cowl.Legs(k); p.down >= leg {
				taken += 2 * l.Depth
			}
		}
		if taken > 0 {
			shut := smoothly(t / closing)
			a = j.start(sided(along(j.Cowl.Shoulder, p.down-shut*taken), math.Copysign(1, p.flat.X)))
		}
	}
	return r3.Add(a, r3.Scale(smoothly(t), r3.Sub(p.at, a)))
}

// overAt is the distance from the form at which a place of the shoulder seam
// is pinned, m: layers keep their gap.
func (j Job) overAt(q float64) float64 { return sim.Shell + layer(j.Cowl, q)*j.gap() }
