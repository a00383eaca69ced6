package draft

import (
	"cowl/mesh/polyline"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
)

// pleatNotches mark the legs of the pleats of the wearer's left half: the fold
// is brought onto the place.
func (p Cowl) pleatNotches() []Notch {
	var out []Notch
	for k, l := range p.Pleats {
		a, b := p.Legs(k)
		place, fold := a, b
		if l.To == Armhole {
			place, fold = b, a
		}
		for _, m := range []struct {
			at   float64
			name string
		}{{place, "place"}, {fold, "fold"}} {
			at, i := polyline.Along(p.Shoulder, m.at)
			out = append(out, Notch{at, outward(p.Shoulder[i], p.Shoulder[i+1]), fmt.Sprintf("pleat %d, %s", k+1, m.name)})
		}
	}
	return out
}

// PleatJut returns where the seam line for paper meets the middle of pleat k of
// the wearer's left half: the pleat lies folded there, beneath the seam beyond
// its fold, and its edge on that seam if the line between the legs mirrors it
// about the fold (common practice: fold the paper, then cut). Cut straight from
// leg to leg, a pleat of 2 cm ends some 4 mm short of the seam or beyond it.
func (p Cowl) PleatJut(k int) r2.Vec {
	a, b := p.Legs(k)
	from, _ := polyline.Along(p.Shoulder, a)
	to, _ := polyline.Along(p.Shoulder, b)
	_, i := polyline.Along(p.Shoulder, b+samePoint)
	leg, beyond := to, r2.Sub(p.Shoulder[i+1], to)
	if p.Pleats[k].To == Armhole {
		_, i = polyline.Along(p.Shoulder, a-samePoint)
		leg, beyond = from, r2.Sub(p.Shoulder[i], from)
	}
	hinge := p.pleatHinge()
	fold := r2.Unit(r2.Sub(hinge, leg))
	d := r2.Sub(r2.Scale(2*r2.Dot(beyond, fold), fold), beyond)
	middle := r2.Sub(lerp(from, to, 0.5), hinge)
	t := r2.Cross(r2.Sub(hinge, leg), middle) / r2.Cross(d, middle)
	return r2.Add(leg, r2.Scale(t, d))
}

// pleatHinge is the point of CF that the pleats were opened from.
func (p Cowl) pleatHinge() r2.Vec { return r2.Vec{Y: p.Apex.Y} }

// pleatLine is how far into the piece the lines of a pleat are marked, m; below
// it falls free.
const pleatLine = 0.04

// PleatLine is a leg of a pleat as it is marked on the cloth, m, from the
// shoulder seam of the wearer's left half into the piece.
type PleatLine struct {
	Name     string
	From, To r2.Vec
}

// PleatLines returns the lines to mark for the pleats, towards the point of CF
// that they were opened from.
func (p Cowl) PleatLines() []PleatLine {
	var out []PleatLine
	for _, n := range p.pleatNotches() {
		to := r2.Add(n.At, r2.Scale(pleatLine, r2.Unit(r2.Sub(p.pleatHinge(), n.At))))
		out = append(out, PleatLine{n.Name, n.At, to})
	}
	return out
}
