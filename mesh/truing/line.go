package truing

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// along returns the place at share t (0..1) of a line's length and the index
// of the side it lies on.
func along(line []r2.Vec, t float64) (r2.Vec, int) {
	return polyline.Along(line, t*polyline.Length(line))
}

// share returns how far down the line, 0..1, its place nearest to v lies.
func share(line []r2.Vec, v r2.Vec) float64 {
	best, at, before := math.Inf(1), 0.0, 0.0
	for i := 1; i < len(line); i++ {
		d := r2.Sub(line[i], line[i-1])
		l := r2.Norm(d)
		u := 0.0
		if l > 0 {
			u = min(max(r2.Dot(r2.Sub(v, line[i-1]), d)/(l*l), 0), 1)
		}
		if off := r2.Norm(r2.Sub(v, r2.Add(line[i-1], r2.Scale(u, d)))); off < best {
			best, at = off, before+u*l
		}
		before += l
	}
	return at / before
}

// inward returns how far v lies off the line (m), taken on straight beyond its
// ends: above zero to the right of it, which is inside the piece for the seams
// of the left half, cowl point to CF.
func inward(line []r2.Vec, v r2.Vec) float64 {
	best, off := math.Inf(1), 0.0
	for i := 1; i < len(line); i++ {
		d := r2.Sub(line[i], line[i-1])
		l := r2.Norm(d)
		if l == 0 {
			continue
		}
		u := r2.Dot(r2.Sub(v, line[i-1]), d) / (l * l)
		if i > 1 {
			u = math.Max(u, 0)
		}
		if i < len(line)-1 {
			u = math.Min(u, 1)
		}
		w := r2.Sub(v, r2.Add(line[i-1], r2.Scale(u, d)))
		if a := r2.Norm(w); a < best {
			best, off = a, math.Copysign(a, -r2.Cross(d, w))
		}
	}
	return off
}

// arc is a line in space with the length at each point.
type arc struct {
	pts []r3.Vec
	len []float64
}

// newArc measures a line.
func newArc(pts []r3.Vec) arc {
	a := arc{pts: pts, len: make([]float64, len(pts))}
	for i := 1; i < len(pts); i++ {
		a.len[i] = a.len[i-1] + r3.Norm(r3.Sub(pts[i], pts[i-1]))
	}
	return a
}

// at returns the place at share t (0..1) of the arc.
func (a arc) at(t float64) r3.Vec {
	s := t * a.len[len(a.len)-1]
	for i := 1; i < len(a.pts); i++ {
		if d := a.len[i] - a.len[i-1]; s <= a.len[i] && d > 0 {
			return r3.Add(a.pts[i-1], r3.Scale((s-a.len[i-1])/d, r3.Sub(a.pts[i], a.pts[i-1])))
		}
	}
	return a.pts[len(a.pts)-1]
}
