package paper

import (
	"fmt"

	"cowl/mesh/draft"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// treatments says in a few words each what is done to the front beyond cutting
// and sewing it together.
func treatments(p draft.Cowl) []string {
	var out []string
	if n := len(p.Pleats); n > 0 {
		out = append(out, fmt.Sprintf("pleats in each shoulder: %d, %s", n, length(p.Pleats[0].Depth)),
			fmt.Sprintf("fold onto place, towards the %v", p.Pleats[0].To))
	}
	for k := 0; k < len(p.Releases); k += 2 {
		out = append(out, fmt.Sprintf("slash %d: %s from the seam", k/2+1, length(slashed(p.Releases[k]))))
	}
	if p.StayShoulder {
		out = append(out, fmt.Sprintf("stay tape %s, each shoulder", length(p.ShoulderLength())))
	}
	if p.StayEdge {
		out = append(out, fmt.Sprintf("stay tape %s, cowl edge", length(2*p.HalfEdge)))
	}
	if p.Weight > 0 {
		out = append(out, fmt.Sprintf("weight %.0f g, facing at %s", p.Weight*1000, p.Worn.Centre()))
	}
	switch {
	case p.Taken > 0:
		out = append(out, fmt.Sprintf("edge taken up %s at each cowl point", length(p.Taken)), "these lines are without it")
	case p.Taken < 0:
		out = append(out, fmt.Sprintf("edge let down %s at each cowl point", length(-p.Taken)), "these lines have it")
	}
	return out
}

// treatmentSteps says how they are done, in the order of the work.
func treatmentSteps(p draft.Cowl) []string {
	var out []string
	for k := 0; k < len(p.Releases); k += 2 {
		out = append(out, fmt.Sprintf("Slash both halves along slash %d, through the allowance and %s beyond the seam "+
			"line, and stay its end with a few stitches. Bind the raw edges narrowly.",
			k/2+1, length(slashed(p.Releases[k]))))
	}
	if p.StayEdge {
		out = append(out, fmt.Sprintf("Lay %s of narrow tape along the fold of the cowl edge, on the wrong side, and sew "+
			"it in by hand: the cloth may be held in to it, never drawn out.", length(2*p.HalfEdge)))
	}
	if p.Weight > 0 {
		out = append(out, fmt.Sprintf("Cover the weight of %.0f g and sew it to the free edge of the facing on the %s.",
			p.Weight*1000, p.Worn.Centre()))
	}
	if n := len(p.Pleats); n > 0 {
		out = append(out, fmt.Sprintf("Bring the folds of the %d pleats of each shoulder onto their places, so that they "+
			"point to the %v, and baste across: inside, each ends on the seam line. Folded, the seam is %s.",
			n, p.Pleats[0].To, length(p.ShoulderLength())))
	}
	if p.StayShoulder {
		out = append(out, fmt.Sprintf("Cut the stay of each shoulder %s long, and lay it along the seam line.",
			length(p.ShoulderLength())))
	}
	return out
}

// length writes a length of m as the paper is spoken.
func length(m float64) string { return ruler.Spoken().Length(m) }

// slashed is the length of a slash, from the seam line, m.
func slashed(r draft.Release) float64 { return r2.Norm(r2.Sub(r.To, r.From)) }

// SlashFromCut returns a slash from the cut line, where the shears go in, to its
// end.
func (p Piece) SlashFromCut(l Line) []r2.Vec {
	out := r2.Unit(r2.Sub(l.Points[0], l.Points[len(l.Points)-1]))
	return append([]r2.Vec{p.NotchOnCut(draft.Notch{At: l.Points[0], Dir: out})}, l.Points[1:]...)
}
