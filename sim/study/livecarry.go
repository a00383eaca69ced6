package study

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
	f, err := j.lay(spacing)
	if err != nil {
		return nil, err
	}
	to := func(q r2.Vec) r2.Vec { return q }
	if !sameOutline(j.Piece, d.Job.Piece) {
		m, ok := matched(j.Piece, d.Job.Piece)
		if !ok {
			return nil, nil
		}
		to = m.at
	}
	for i, q := range f.Lattice.Rest {
		p, ok := d.Lattice.Locate(to(q))
		if !ok {
			return nil, nil
		}
		f.State.Pos[i] = p.At(d.State.Pos)
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

// The way of the pins after a change: they travel from where the cloth lies,
// a share of a spacing a step, then are looked over as in the placing.
const (
	shiftStride = 0.005
	shiftLeast  = 100
	shiftMost   = 4000
	shiftPhases = 50
	shiftSmooth = 10  // steps between two looks
	eases       = 400 // steps in which yarns that the other lattice crushed open again
)

// shift leads the pins from where the cloth lies to their places and smooths
// the cloth.
func (d *Drape) shift(ctx context.Context) {
	d.unpick()
	from, far := make([]r3.Vec, len(d.pins)), 0.0
	for k, p := range d.pins {
		from[k] = d.Scene.Holds[k].Point.At(d.State.Pos)
		d.State.Target[k], d.State.Grip[k] = from[k], p.grip()
		if !p.out {
			far = math.Max(far, r3.Norm(r3.Sub(p.at, from[k])))
		}
	}
	n := int(far / (shiftStride * d.Lattice.Spacing))
	n = max(shiftLeast, min(shiftMost, n))
	w := d.even()
	for range eases {
		w.Ease()
	}
	for k := range shiftPhases {
		t := float64(k+1) / shiftPhases
		for i, p := range d.pins {
			d.State.Target[i], d.State.Grip[i] = r3.Add(from[i], r3.Scale(t, r3.Sub(p.at, from[i]))), p.grip()
		}
		if !d.walk(ctx, w, n/shiftPhases) {
			return
		}
	}
	for range smoothings {
		d.repin()
		for i, p := range d.pins {
			d.State.Target[i] = p.at
		}
		if !d.walk(ctx, w, shiftSmooth) {
			return
		}
	}
}
