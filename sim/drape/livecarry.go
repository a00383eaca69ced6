package drape

import (
	"context"
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// carry lays j and takes over how d lies; nil if that would not be sane.
func (d *Drape) carry(j Job) (*Drape, error) {
	spacing := j.Spacing
	for 1.5*spacing < d.Lattice.Spacing {
		spacing *= 2
	}
	f, err := j.onLattice(spacing)
	if err != nil {
		return nil, err
	}
	var to func(r2.Vec) r2.Vec
	if !sameOutline(j.Cowl, d.Job.Cowl) {
		m, ok := matched(j.Cowl, d.Job.Cowl)
		if !ok {
			return nil, nil
		}
		to = m.at
	}
	if f.State.Take(f.Lattice, d.State, d.Lattice, to) > 0 {
		return nil, nil
	}
	if !f.sane() {
		return nil, nil
	}
	return f, nil
}

// Bounds of what is taken over. A link longer than this, as a share of its rest
// length, or cloth deeper in the form would throw the cloth about. A short
// link is a chord across a fold and does no harm.
const (
	longest = 1.3
	deepest = 0.010 // m
	easings = 40    // times that stretched cloth is eased
)

// sane reports whether the cloth can be let go as it lies, after easing the
// places where the other cut has stretched it.
func (d *Drape) sane() bool {
	for range easings {
		if !d.easeLong() {
			return d.Inside() <= deepest
		}
	}
	return false
}

// easeLong eases the ends of links that are too long; false if there are none.
func (d *Drape) easeLong() bool {
	l, x := d.Lattice, d.State.Pos
	chosen, found := make([]bool, len(x)), false
	for i := range x {
		for _, n := range [2]int32{l.U[i].Next, l.V[i].Next} {
			if n != lattice.None && r3.Norm(r3.Sub(x[n], x[i])) > longest*l.Spacing {
				chosen[i], chosen[n], found = true, true, true
			}
		}
	}
	if found {
		d.ease(chosen)
	}
	return found
}

// The way of the pins after a change: a share of a spacing a step.
const (
	shiftStride = 0.005
	shiftLeast  = 100
	shiftMost   = 4000
	shiftPhases = 50
	eases       = 400 // steps in which yarns that the other lattice crushed open again
)

// shift leads the pins and the edge from where the cloth lies to where the hand
// of the placing holds them.
// Without the hand at the edge the drop came out anywhere between none and twice
// that of a placing: what has fallen for one cut need not rise again for another.
func (d *Drape) shift(ctx context.Context, h hand) {
	d.unpick()
	from := make([]r3.Vec, len(d.System.Holds))
	for k := range from {
		from[k] = d.System.Holds[k].Point.At(d.State.Pos)
	}
	w := d.even()
	for range eases {
		w.Ease()
	}
	n := d.strides(h, from)
	for k := range shiftPhases {
		d.between(h, from, float64(k+1)/shiftPhases)
		if !d.walk(ctx, w, n/shiftPhases) {
			return
		}
	}
}

// mostAstray is how far the edge may stand from where the hand has led it, m in the mean. Cloth that
// hangs in folds may hold it back: at 14 to 19 mm (20 mm lattice, front and back) it came to
// rest 1 to 4 cm higher than a fresh placing, at 8 to 12 mm (14 and 20 mm) up to 15 mm.
const mostAstray = 0.012

// follows reports whether the edge has come to where the hand leads it.
func (d *Drape) follows() bool {
	sum, n := 0.0, 0.0
	for k, h := range d.System.Holds {
		if h.Name == "edge" && d.State.Grip[k] > 0 {
			sum, n = sum+r3.Norm(r3.Sub(d.State.Target[k], h.Point.At(d.State.Pos))), n+1
		}
	}
	return sum <= mostAstray*n
}

// between sets pins, edge and centre for share t of the way from where they lay.
func (d *Drape) between(h hand, from []r3.Vec, t float64) {
	d.lead(h, 1, guideGrip)
	for k := range from {
		d.State.Target[k] = r3.Add(from[k], r3.Scale(t, r3.Sub(d.State.Target[k], from[k])))
	}
}

// strides returns in how many steps the farthest hold comes to its place.
func (d *Drape) strides(h hand, from []r3.Vec) int {
	d.lead(h, 1, guideGrip)
	far := 0.0
	for k := range from {
		if d.State.Grip[k] > 0 {
			far = math.Max(far, r3.Norm(r3.Sub(d.State.Target[k], from[k])))
		}
	}
	return max(shiftLeast, min(shiftMost, int(far/(shiftStride*d.Lattice.Spacing))))
}
