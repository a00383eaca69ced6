package paper

import (
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// notchIn is how far a notch reaches into the piece where there is no allowance, m.
const notchIn = 0.004

// NotchMark returns the ends of the drawn notch: from the seam line over the whole
// allowance to the cut edge, where it is snipped, or into the piece where there is none.
func (p Piece) NotchMark(n draft.Notch) (from, to r2.Vec) {
	if to = p.NotchOnCut(n); to == n.At {
		to = r2.Sub(n.At, r2.Scale(notchIn, n.Dir))
	}
	return n.At, to
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
