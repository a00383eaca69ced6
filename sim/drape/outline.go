package drape

import (
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// relief is how much of the facing is clipped away beside the cowl point, m, and from
// where on it is pinned. There front and facing meet at one point, and any cell across
// it would sew the two layers together and carry their whole shear. So it is wider
// than two cells of 8 mm; of cells half as wide 12 mm hang as 20.
const relief = 0.020

// clip returns the relief of a piece: half the facing at most, none where that is
// narrower than a roll.
func clip(p draft.Cowl) float64 {
	r := math.Min(relief, p.Facing/2)
	if r < 0.012 {
		return 0
	}
	return r
}

// cut returns the outline of the cloth that hangs: the piece with both ends of the
// facing clipped free of the cowl points.
func cut(p draft.Cowl) []r2.Vec {
	half := slices.Concat(polyline.Reversed(p.Waist), polyline.Reversed(p.Side)[1:], polyline.Reversed(p.Armhole)[1:], polyline.Reversed(p.Shoulder)[1:])
	if r := clip(p); r > 0 {
		half = slices.Concat(half, clipped(p, r), p.FacingEdge[1:])
	} else {
		half = slices.Concat(half, p.FacingEnd[1:], p.FacingEdge[1:])
	}
	out := slices.Clone(half)
	for k := len(half) - 2; k > 0; k-- {
		out = append(out, r2.Vec{X: -half[k].X, Y: half[k].Y})
	}
	return out
}

// clipped returns the end of the facing with its corner beside the cowl point clipped away.
func clipped(p draft.Cowl, r float64) []r2.Vec {
	x, top := p.HalfEdge-r, p.FoldY+r
	out := []r2.Vec{{X: x, Y: p.FoldY}, {X: x, Y: top}}
	for k := 1; k < len(p.FacingEnd); k++ {
		a, b := p.FacingEnd[k-1], p.FacingEnd[k]
		if a.Y < top && b.Y > top {
			out = append(out, r2.Add(a, r2.Scale((top-a.Y)/(b.Y-a.Y), r2.Sub(b, a))))
		}
		if b.Y > top {
			out = append(out, b)
		}
	}
	return out
}
