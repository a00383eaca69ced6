package form

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hull returns the convex hull of the points, counter-clockwise, by Andrew's
// monotone chain (A. M. Andrew, Inf. Proc. Letters 9(5), 1979). It sorts pts.
func hull(pts []r2.Vec) []r2.Vec {
	slices.SortFunc(pts, func(a, b r2.Vec) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	out := make([]r2.Vec, 0, 2*len(pts))
	chain := func(p r2.Vec, floor int) {
		for len(out) >= floor+2 && turn(out[len(out)-2], out[len(out)-1], p) <= 0 {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	for _, p := range pts {
		chain(p, 0)
	}
	lower := len(out) - 1
	for i := len(pts) - 2; i >= 0; i-- {
		chain(pts[i], lower)
	}
	return out[:max(len(out)-1, 0)]
}

// turn is > 0 if a, b, c turn left.
func turn(a, b, c r2.Vec) float64 { return r2.Cross(r2.Sub(b, a), r2.Sub(c, a)) }

// tape returns the length of a taut tape around the points, m: the perimeter
// of their convex hull. It sorts pts.
func tape(pts []r2.Vec) float64 {
	h := hull(pts)
	var sum float64
	for i, p := range h {
		sum += r2.Norm(r2.Sub(h[(i+1)%len(h)], p))
	}
	return sum
}

// polyLength is the length of an open polyline, m.
func polyLength(p []r3.Vec) float64 {
	var sum float64
	for i := 1; i < len(p); i++ {
		sum += r3.Norm(r3.Sub(p[i], p[i-1]))
	}
	return sum
}
