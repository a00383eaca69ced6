// Package polyline measures lines of straight pieces.
package polyline

import "gonum.org/v1/gonum/spatial/r2"

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
