package paper

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// sharp is the bend from which a point of a line is a corner (rad).
const sharp = 25 * math.Pi / 180

// OnCurve reports whether point i of the closed line, which is the seam or the
// cut line, lies on a curve: the nearest seam is one, and the line hardly bends
// there.
func (p Piece) OnCurve(line []r2.Vec, i int) bool {
	n := len(line)
	in, out := r2.Sub(line[i], line[(i+n-1)%n]), r2.Sub(line[(i+1)%n], line[i])
	bend := math.Abs(math.Atan2(r2.Cross(in, out), r2.Dot(in, out)))
	return bend < sharp && p.edgeNear(line[i]).Curve
}

// edgeNear returns the edge nearest to v.
func (p Piece) edgeNear(v r2.Vec) Edge {
	var best Edge
	least := math.Inf(1)
	n := len(p.Outline)
	for _, e := range p.Edges {
		for i := e.From; ; {
			next := (i + 1) % n
			if d := fromSegment(v, p.Outline[i], p.Outline[next]); d < least {
				least, best = d, e
			}
			if i = next; i == e.To {
				break
			}
		}
	}
	return best
}
