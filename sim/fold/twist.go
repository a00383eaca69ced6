package fold

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// edgeReading is what the cowl edge shows.
type edgeReading struct {
	cf     r3.Vec  // m, image of its middle
	growth float64 // length in space over flat length, − 1
	tilt   float64 // m, mean height of the left half above the right half
}

// readEdge follows the flat line y = FoldY between the ends of the edge.
func readEdge(s *mesh.Sheet, f Frame) (edgeReading, error) {
	tr, err := traceLine(s, level, f.FoldY, 0)
	if err != nil {
		return edgeReading{}, err
	}
	half := min(f.HalfEdge, -tr.first(), tr.last())
	e := edgeReading{cf: tr.point(0), growth: tr.growth(-f.HalfEdge, f.HalfEdge)}
	n := int(math.Ceil(half / step))
	for i := range n {
		x := (float64(i) + 0.5) * half / float64(n)
		e.tilt += (tr.point(x).Y - tr.point(-x).Y) / float64(n)
	}
	return e, nil
}

// twist compares the two halves of the front layer. Every flat place (x, y),
// x > 0, is set against the mirror image, in the middle plane of the wearer, of
// its partner (−x, y). The size of twist is the root of the area mean of the
// squared distance between the two, so a cowl that is out of true in any
// direction shows it; it is 0 only for a mirror image. The sign is that of the
// mean height difference: > 0 if the wearer's left lies higher, or, where the
// heights balance, if the front lies to the wearer's left. Under a mirror the
// sign turns and the size stays. Places whose partner is off the sheet are
// left out.
func twist(s *mesh.Sheet, f Frame) float64 {
	loc, mid := newLocator(s), f.middle()
	var area, square float64
	var mean r3.Vec
	for _, t := range s.Tris {
		at := r2.Scale(1./3, r2.Add(r2.Add(s.Flat[t[0]], s.Flat[t[1]]), s.Flat[t[2]]))
		if at.X <= 0 || at.Y >= f.FoldY {
			continue
		}
		q, ok := loc.point(r2.Vec{X: -at.X, Y: at.Y})
		if !ok {
			continue
		}
		p := r3.Scale(1./3, r3.Add(r3.Add(s.Pos[t[0]], s.Pos[t[1]]), s.Pos[t[2]]))
		q.X = 2*mid - q.X
		d, a := r3.Sub(p, q), flatArea(s, t)
		area, square = area+a, square+a*r3.Norm2(d)
		mean = r3.Add(mean, r3.Scale(a, d))
	}
	if area == 0 {
		return 0
	}
	sign := mean.Y
	if math.Abs(mean.Y)/area < same {
		sign = mean.X
	}
	return math.Copysign(math.Sqrt(square/area), sign)
}
