// Package polyline measures lines of straight pieces, open and closed, in whatever unit
// they are given.
package polyline

import "gonum.org/v1/gonum/spatial/r2"

// Area returns the area within a closed line, above 0 if it runs counter-clockwise: the
// shoelace formula.
func Area(closed []r2.Vec) float64 {
	var a float64
	for i, v := range closed {
		a += r2.Cross(v, closed[(i+1)%len(closed)])
	}
	return a / 2
}

// Clip keeps the part of a closed line where n·v ≥ d (Sutherland & Hodgman,
// "Reentrant polygon clipping", Comm. ACM 17, 1974).
func Clip(closed []r2.Vec, n r2.Vec, d float64) []r2.Vec {
	out := make([]r2.Vec, 0, len(closed)+2)
	for i, v := range closed {
		w := closed[(i+1)%len(closed)]
		a, b := r2.Dot(n, v)-d, r2.Dot(n, w)-d
		if a >= 0 {
			out = append(out, v)
		}
		if (a > 0 && b < 0) || (a < 0 && b > 0) {
			out = append(out, r2.Add(v, r2.Scale(a/(a-b), r2.Sub(w, v))))
		}
	}
	return out
}

// Contains reports whether v lies within a closed line: a ray to +X crosses it an odd
// number of times.
func Contains(closed []r2.Vec, v r2.Vec) bool {
	in := false
	for i, a := range closed {
		b := closed[(i+1)%len(closed)]
		if (a.Y > v.Y) != (b.Y > v.Y) && v.X < a.X+(v.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
