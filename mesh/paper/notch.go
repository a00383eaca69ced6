package paper

import (
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	notchOut = 0.006 // m, a notch reaches into the allowance so far at most
	notchIn  = 0.004 // m, and into the piece where there is none
)

// NotchMark returns the ends of the drawn notch: from the seam line across the
// allowance, or into the piece where there is none.
func (p Piece) NotchMark(n draft.Notch) (from, to r2.Vec) {
	reach := min(p.allowanceAt(n.At), notchOut)
	if reach == 0 {
		reach = -notchIn
	}
	return n.At, r2.Add(n.At, r2.Scale(reach, n.Dir))
}

// NotchOnCut returns where the notch meets the cut line: there a cutter looks
// for it.
func (p Piece) NotchOnCut(n draft.Notch) r2.Vec {
	best, far := n.At, 4*p.allowanceAt(n.At)
	for i, a := range p.CutLine {
		b := p.CutLine[(i+1)%len(p.CutLine)]
		if t, ok := ray(n.At, n.Dir, a, b); ok && t < far {
			best, far = r2.Add(n.At, r2.Scale(t, n.Dir)), t
		}
	}
	return best
}

// ray returns how far from o along dir the segment ab is met.
func ray(o, dir, a, b r2.Vec) (float64, bool) {
	d := r2.Sub(b, a)
	det := r2.Cross(dir, d)
	if det == 0 {
		return 0, false
	}
	w := r2.Sub(a, o)
	t, s := r2.Cross(w, d)/det, r2.Cross(w, dir)/det
	const slack = 1e-9
	return max(t, 0), t >= -slack && s >= -slack && s <= 1+slack
}
