package polyline

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Length returns the length of an open line.
func Length(line []r2.Vec) float64 {
	var l float64
	for i := 1; i < len(line); i++ {
		l += r2.Norm(r2.Sub(line[i], line[i-1]))
	}
	return l
}

// Along returns the place so far down an open line and the index of the side it lies
// on; beyond either end it is that end.
func Along(line []r2.Vec, s float64) (r2.Vec, int) {
	for i := 1; i < len(line); i++ {
		way := r2.Sub(line[i], line[i-1])
		d := r2.Norm(way)
		if s <= d && d > 0 {
			return r2.Add(line[i-1], r2.Scale(math.Max(s, 0)/d, way)), i - 1
		}
		s -= d
	}
	return line[len(line)-1], len(line) - 2
}

// Off returns the distance of v from the straight side from a to b.
func Off(v, a, b r2.Vec) float64 {
	d := r2.Sub(b, a)
	t := 0.0
	if l := r2.Norm2(d); l > 0 {
		t = min(max(r2.Dot(r2.Sub(v, a), d)/l, 0), 1)
	}
	return r2.Norm(r2.Sub(v, r2.Add(a, r2.Scale(t, d))))
}

// Reversed returns a reversed copy of a line.
func Reversed(line []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[len(line)-1-i] = v
	}
	return out
}
