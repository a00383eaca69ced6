package drape

import (
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// match maps the flat places of one piece to those of another: every line of
// the outline by its share of the length, so that edge stays edge and seam
// stays seam, and the cloth between them by mean value coordinates.
type match struct{ front, facing outlines }

// outlines is one half of a piece and the other, point by point.
type outlines struct{ from, to []r2.Vec }

// lineSteps is how many parts a line of the outline is divided into.
const lineSteps = 12

// matched returns the match of two pieces; false if only one has a facing, or
// if their pleats differ, which are folded by hand.
func matched(from, to draft.Cowl) (match, bool) {
	m := match{
		front:  outlines{frontHalf(from), frontHalf(to)},
		facing: outlines{facingHalf(from), facingHalf(to)},
	}
	return m, len(m.facing.from) == len(m.facing.to) && slices.EqualFunc(from.Pleats, to.Pleats,
		func(a, b draft.Pleat) bool { return a.Depth == b.Depth && a.To == b.To })
}

// frontHalf runs from CF at the waist round the wearer's left half to CF at the edge.
func frontHalf(p draft.Cowl) []r2.Vec {
	out := []r2.Vec{}
	for _, line := range [][]r2.Vec{p.Waist, p.Side, p.Armhole, p.Shoulder} {
		out = append(out, shares(polyline.Reversed(line))...)
	}
	return append(out, p.Shoulder[0], r2.Vec{Y: p.FoldY})
}

// facingHalf runs from CF at the edge by the cowl point to CF at the top; nil
// if there is no facing.
func facingHalf(p draft.Cowl) []r2.Vec {
	if len(p.FacingEnd) < 2 {
		return nil
	}
	out := []r2.Vec{{Y: p.FoldY}}
	out = append(out, shares(p.FacingEnd)...)
	out = append(out, shares(p.FacingEdge)...)
	return append(out, p.FacingEdge[len(p.FacingEdge)-1])
}

// shares returns the points at equal shares of a polyline, without its end.
func shares(line []r2.Vec) []r2.Vec {
	whole := polyline.Length(line)
	out := make([]r2.Vec, lineSteps)
	for k := range out {
		out[k] = along(line, whole*float64(k)/lineSteps)
	}
	return out
}

// at returns where place q of the one piece is on the other.
func (m match) at(q r2.Vec) r2.Vec {
	half, side := m.front, math.Copysign(1, q.X)
	if q.Y > half.from[len(half.from)-1].Y && len(m.facing.from) > 0 {
		half = m.facing
	}
	return sided(half.at(r2.Vec{X: math.Abs(q.X), Y: q.Y}), side)
}

// onLine is how near to the outline a place is taken to lie on it, as a share
// of the distance to the next points.
const onLine = 1e-9

// at maps q by mean value coordinates: K. Hormann, M. S. Floater, "Mean value
// coordinates for arbitrary planar polygons", ACM Transactions on Graphics
// 25(4) (2006), equations 1 and 11. They hold outside of the polygon too.
func (o outlines) at(q r2.Vec) r2.Vec {
	n := len(o.from)
	away := make([]r2.Vec, n)
	for k, p := range o.from {
		if away[k] = r2.Sub(p, q); away[k] == (r2.Vec{}) {
			return o.to[k]
		}
	}
	half := make([]float64, n) // tangent of half the angle that the line from k to the next takes
	for k, a := range away {
		b := away[(k+1)%n]
		ra, rb := r2.Norm(a), r2.Norm(b)
		if ra*rb+r2.Dot(a, b) < onLine*ra*rb {
			return r2.Add(o.to[k], r2.Scale(ra/(ra+rb), r2.Sub(o.to[(k+1)%n], o.to[k])))
		}
		half[k] = r2.Cross(a, b) / (ra*rb + r2.Dot(a, b))
	}
	var sum r2.Vec
	var whole float64
	for k, a := range away {
		w := (half[(k+n-1)%n] + half[k]) / r2.Norm(a)
		sum, whole = r2.Add(sum, r2.Scale(w, o.to[k])), whole+w
	}
	return r2.Scale(1/whole, sum)
}

// sameOutline reports whether two pieces have the same outline and fold.
func sameOutline(a, b draft.Cowl) bool {
	return a.FoldY == b.FoldY && slices.Equal(a.Outline, b.Outline)
}
