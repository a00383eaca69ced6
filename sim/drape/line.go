package drape

import (
	"math"

	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// steps divides lo..hi into equal steps of at most the given size and returns
// the ends of all steps; nothing if hi < lo.
func steps(lo, hi, size float64) []float64 {
	if hi < lo {
		return nil
	}
	n := int(math.Ceil((hi-lo)/size - 1e-9))
	if n == 0 {
		return []float64{lo}
	}
	out := make([]float64, n+1)
	for k := range out {
		out[k] = lo + (hi-lo)*float64(k)/float64(n)
	}
	return out
}

// along returns the point at arc length s (m) of a polyline, clamped to its ends.
func along(p []r2.Vec, s float64) r2.Vec {
	at, _ := polyline.Along(p, s)
	return at
}

// sided mirrors a place of the left half for side = −1.
func sided(p r2.Vec, side float64) r2.Vec { return r2.Vec{X: side * p.X, Y: p.Y} }

// nearest returns how far along a polyline its place nearest to q lies, m.
func nearest(p []r2.Vec, q r2.Vec) float64 {
	best, at, done := math.Inf(1), 0.0, 0.0
	for k := 1; k < len(p); k++ {
		d := r2.Sub(p[k], p[k-1])
		l := r2.Norm(d)
		t := max(0, min(l, r2.Dot(r2.Sub(q, p[k-1]), d)/l))
		if far := r2.Norm(r2.Sub(q, r2.Add(p[k-1], r2.Scale(t/l, d)))); far < best {
			best, at = far, done+t
		}
		done += l
	}
	return at
}
