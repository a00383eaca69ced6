package draft

import (
	"math"
	"slices"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// TakeUpRange returns how far the cloth of p may be slid over its cowl points: up until
// its edge runs straight from one to the other, and down until all of the
// allowance is let out.
func (p Cowl) TakeUpRange(by float64) limit.Range {
	return limit.Range{
		Field: "edge depth", Value: by, Lo: -p.Trim - p.Taken, Hi: p.HalfEdge - p.Block.CowlPoint(p.CowlPoint).X,
		Unit: limit.Length,
		Why: limit.Say("an edge that is taken up farther would be shorter than the way from one cowl point to the other; " +
			"what is let down comes out of the allowance"),
	}
}

// TakenUp returns p as a draper makes it who lifts the cloth over the cowl points by a
// length (m, at either of them; below 0 it is let down): on the form the cowl
// points stay, and the cloth has slid along edge and shoulder. The half edge
// and the extension are shorter by as much, the shoulder seam runs from the new
// cowl point to the old tip, and its pleats keep their shares of it. A seam too short
// for its pleats is an error.
func (p Cowl) TakenUp(by float64) (Cowl, error) {
	if by == 0 {
		return p, nil
	}
	if err := p.TakeUpRange(by).Check(); err != nil {
		return Cowl{}, err
	}
	l := p.Lines()
	l.Shoulder = nil
	whole, down := polyline.Length(p.Shoulder), 0.0
	for i, q := range p.Shoulder {
		if i > 0 {
			down += dist(p.Shoulder[i-1], q)
		}
		l.Shoulder = append(l.Shoulder, r2.Vec{X: q.X - by*(1-down/whole), Y: q.Y})
	}
	var err error
	if p.Pleats, err = p.pleatsOn(polyline.Length(l.Shoulder), by); err != nil {
		return Cowl{}, err
	}
	q, err := p.Redrawn(l)
	q.Taken += by
	return q, err
}

// pleatsOn returns the pleats of p on a shoulder seam of another flat length, m, which
// is left of it where the cloth is taken up by a length more, m.
func (p Cowl) pleatsOn(flat, by float64) ([]Pleat, error) {
	n := len(p.Pleats)
	if n == 0 {
		return nil, nil
	}
	covered := takes(p.Pleats, n) / 2
	folded := flat - 2*covered
	if folded < covered+pleatTip {
		way, advice := "taken up", "lower"
		if p.Taken+by < 0 {
			way, advice = "let down", "higher"
		}
		return nil, limit.Errorf("pleats", "%d pleats cover %v of shoulder, want at most %v, which is left of it with "+
			"the edge %s by %v: make them fewer or shallower, or set the edge %s",
			n, limit.Metres(covered), limit.Metres(math.Max(folded-pleatTip, 0)), way, limit.Metres(math.Abs(p.Taken+by)),
			advice)
	}
	out := slices.Clone(p.Pleats)
	for k := range out {
		out[k].At *= folded / p.ShoulderLength()
	}
	return out, nil
}

// DeepestBelowNeck returns how deep below the front neck point the edge of p could lie
// on the centre front at the most, m: in a V. Below 0 it cannot lie there at all.
func (p Cowl) DeepestBelowNeck() float64 {
	cowl := p.Block.CowlPoint(p.CowlPoint)
	v, _ := DropForEdge(cowl.X, p.HalfEdge)
	return v - (cowl.Y - p.Block.CFNeck.Y)
}

// ExtensionToNeck returns the extension with which the edge of p could just lie at the
// front neck point, m.
func (p Cowl) ExtensionToNeck() float64 {
	cowl := p.Block.CowlPoint(p.CowlPoint)
	return math.Hypot(cowl.X, cowl.Y-p.Block.CFNeck.Y) - cowl.X
}
