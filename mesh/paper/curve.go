package paper

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// sharp is the bend from which a point of a line is a corner (rad).
const sharp = 25 * math.Pi / 180

// OnCurve reports whether point i of the closed line, which is the seam or the
// cut line, lies on a curve: the nearest seam is one, the line hardly bends
// there, and it is no place of the mouth of a dart, whose corners are flat.
func (p Piece) OnCurve(line []r2.Vec, i int) bool {
	n := len(line)
	in, out := r2.Sub(line[i], line[(i+n-1)%n]), r2.Sub(line[(i+1)%n], line[i])
	bend := math.Abs(math.Atan2(r2.Cross(in, out), r2.Dot(in, out)))
	return bend < sharp && p.edgeNear(line[i]).Curve && !p.inMouth(line[i])
}

// inMouth reports whether v lies at the open end of a dart: between its legs or their
// lines beyond the seam, no nearer to its point than their ends.
func (p Piece) inMouth(v r2.Vec) bool {
	for _, l := range p.Lines {
		if l.Kind != Dart || len(l.Points) != 3 {
			continue
		}
		a, b, d := r2.Sub(l.Points[0], l.Points[1]), r2.Sub(l.Points[2], l.Points[1]), r2.Sub(v, l.Points[1])
		if r2.Cross(a, b) < 0 {
			a, b = b, a
		}
		slack := 1e-6 * r2.Norm(a)
		if r2.Cross(a, d) > -slack && r2.Cross(d, b) > -slack && r2.Norm(d) > 0.9*r2.Norm(a) {
			return true
		}
	}
	return false
}

// edgeNear returns the edge nearest to v.
func (p Piece) edgeNear(v r2.Vec) Edge {
	var best Edge
	least := math.Inf(1)
	n := len(p.Outline)
	for _, e := range p.Edges {
		for i := e.From; ; {
			next := (i + 1) % n
			if d := polyline.Off(v, p.Outline[i], p.Outline[next]); d < least {
				least, best = d, e
			}
			if i = next; i == e.To {
				break
			}
		}
	}
	return best
}
