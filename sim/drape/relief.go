package drape

import (
	"slices"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// relief is how much of the facing is clipped away beside the cowl point, m.
// There front and facing meet at one point, and any cell across it would sew
// the two layers together and carry their whole shear.
const relief = 0.012

// relieved returns the outline of the piece with both ends of the facing
// clipped free of the cowl points.
func relieved(p draft.Cowl) []r2.Vec {
	if p.Facing <= 2*relief {
		return p.Outline
	}
	x := p.HalfEdge - relief
	half := slices.Concat(backwards(p.Waist), backwards(p.Side)[1:], backwards(p.Armhole)[1:], backwards(p.Shoulder)[1:],
		[]r2.Vec{{X: x, Y: p.FoldY}, {X: x, Y: p.FoldY + relief}})
	for k := 1; k < len(p.FacingEnd); k++ {
		a, b := p.FacingEnd[k-1], p.FacingEnd[k]
		if top := p.FoldY + relief; a.Y < top && b.Y > top {
			half = append(half, r2.Add(a, r2.Scale((top-a.Y)/(b.Y-a.Y), r2.Sub(b, a))))
		}
		if b.Y > p.FoldY+relief {
			half = append(half, b)
		}
	}
	half = append(half, p.FacingEdge[1:]...)
	out := slices.Clone(half)
	for k := len(half) - 2; k > 0; k-- {
		out = append(out, r2.Vec{X: -half[k].X, Y: half[k].Y})
	}
	return out
}

// backwards returns a polyline from its end to its start.
func backwards(p []r2.Vec) []r2.Vec {
	q := slices.Clone(p)
	slices.Reverse(q)
	return q
}
