package drape

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
)

// What is left of a dart is sewn along its legs, and the cloth that the seam takes up
// is cut out, as a wide dart is cut open and pressed flat: drawn together within a
// cell or two it has no crossing to fold on and is crushed, and a crushed dart stored
// more than all folds together, as much more as the lattice was coarser. Its weight
// hangs on the seam; what it stiffens the seam is left out.
const (
	stitchStep  = 0.010  // m
	stitchStiff = 200.0  // N/m: a pull of 10 g opens the seam by 0.5 mm
	stitchLong  = 0.2e-3 // m
	dartEnds    = 2.5e-3 // m, the width of the dart from which it is cut; two layers lie as near
)

// openDart is what is left of the dart of the left half, m.
type openDart struct {
	outer, tip, inner r2.Vec // ends of the legs on the waist, and where they begin
}

// dart returns what is sewn up of a dart; false where it is closed, or so narrow that
// most of it would not be cut: that is eased in.
func dart(p draft.Cowl) (openDart, bool) {
	d := p.DartLeft
	if len(d) < 3 {
		return openDart{}, false
	}
	mouth := r2.Norm(r2.Sub(d[0], d[2]))
	if mouth < 2*dartEnds {
		return openDart{}, false
	}
	return openDart{d[0], lerp(d[1], lerp(d[0], d[2], 0.5), dartEnds/mouth), d[2]}, true
}

// slits part the cells in which both legs lie, those of the mouth and of the tip too,
// which a slit parts where it runs on through them.
func (d openDart) slits(spacing float64) []lattice.Slit {
	mouth := lerp(d.outer, d.inner, 0.5)
	up := r2.Unit(r2.Sub(d.tip, mouth))
	on := r2.Scale(math.Sqrt2*spacing, up)
	from, to := r2.Sub(mouth, on), r2.Add(d.tip, on)
	var out []lattice.Slit
	for _, side := range [2]float64{1, -1} {
		out = append(out, lattice.Slit{From: sided(from, side), To: sided(to, side),
			Dart: []r2.Vec{sided(d.outer, side), sided(d.tip, side), sided(d.inner, side)}})
	}
	return out
}

// weight is that of the cloth which one seam takes up, N.
func (d openDart) weight(areal float64) float64 {
	return math.Abs(r2.Cross(r2.Sub(d.outer, d.tip), r2.Sub(d.inner, d.tip))) / 2 * areal * sim.Gravity
}

// beside reports whether a flat place lies between the legs or within so much of them, m.
func (d openDart) beside(q r2.Vec, within float64) bool {
	q.X = math.Abs(q.X)
	for _, leg := range [2]r2.Vec{d.outer, d.inner} {
		if at := nearest([]r2.Vec{d.tip, leg}, q); r2.Norm(r2.Sub(q, along([]r2.Vec{d.tip, leg}, at))) <= within {
			return true
		}
	}
	left, right, way := r2.Sub(d.outer, d.tip), r2.Sub(d.inner, d.tip), r2.Sub(q, d.tip)
	return r2.Cross(way, left)*r2.Cross(right, way) > 0 && r2.Dot(way, left) > 0
}

// BesideDart reports whether a flat place lies between the legs of an open dart or within
// so much of them, m. There the cloth is one fold, whose lips meet.
func (j Job) BesideDart(q r2.Vec, within float64) bool {
	d, open := dart(j.Cowl)
	return open && d.beside(q, within)
}

// closed returns where the crossings beside the seams lie with the dart closed: turned
// about its tip, each onto the other leg.
func (d openDart) closed(l *lattice.Lattice) []r2.Vec {
	left, right := r2.Sub(d.outer, d.tip), r2.Sub(d.inner, d.tip)
	turn := math.Atan2(r2.Cross(left, right), r2.Dot(left, right))
	out := make([]r2.Vec, len(l.Rest))
	for i, q := range l.Rest {
		out[i] = r2.Vec{X: math.Inf(1), Y: math.Inf(1)}
		if !d.beside(q, 3*l.Spacing) {
			continue
		}
		side := math.Copysign(1, q.X)
		way, by := r2.Sub(sided(q, side), d.tip), turn
		if r2.Cross(way, r2.Add(left, right))*turn < 0 { // on the inner side
			by = -turn
		}
		out[i] = sided(r2.Add(d.tip, r2.Rotate(way, by, r2.Vec{})), side)
	}
	return out
}

// stitches sew up the open darts of both halves and hang their cloth on the seams.
func (j Job) stitches(l *lattice.Lattice, c *sim.Cloth) ([]sim.Tie, error) {
	d, open := dart(j.Cowl)
	if !open {
		return nil, nil
	}
	var out []sim.Tie
	beside := r2.Scale(l.Spacing/2, r2.Unit(r2.Sub(d.outer, d.inner)))
	long := r2.Norm(r2.Sub(d.outer, d.tip))
	places := steps(-math.Sqrt2*l.Spacing/long, 1, stitchStep/long)
	weight := d.weight(j.Fabric.Weight) / float64(2*len(places))
	for _, side := range [2]float64{1, -1} {
		for _, s := range places {
			outer, inner := d.legs(s)
			a, ok := l.LocateFrom(sided(r2.Add(outer, beside), side), sided(outer, side))
			b, on := l.LocateFrom(sided(r2.Sub(inner, beside), side), sided(inner, side))
			if !ok || !on {
				return nil, fmt.Errorf("drape: the dart at (%.1f, %.1f) cm lies off the cloth", outer.X*100, outer.Y*100)
			}
			c.Sew(a, weight)
			c.Sew(b, weight)
			out = append(out, sim.Tie{A: a, B: b, Long: stitchLong, Stiff: stitchStiff * stitchLong})
		}
	}
	return out, nil
}

// legs returns a place on either leg, s from the tip to the mouth; before the tip both
// lie on the cut beyond it.
func (d openDart) legs(s float64) (outer, inner r2.Vec) {
	if s >= 0 {
		return lerp(d.tip, d.outer, s), lerp(d.tip, d.inner, s)
	}
	on := lerp(d.tip, lerp(d.outer, d.inner, 0.5), s)
	return on, on
}

func lerp(a, b r2.Vec, t float64) r2.Vec { return r2.Add(a, r2.Scale(t, r2.Sub(b, a))) }
