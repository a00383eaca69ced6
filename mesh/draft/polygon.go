package draft

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

func dist(a, b r2.Vec) float64 { return r2.Norm(r2.Sub(a, b)) }

func lerp(a, b r2.Vec, t float64) r2.Vec {
	return r2.Add(a, r2.Scale(t, r2.Sub(b, a)))
}

// samePoint is the distance below which two points of an outline are one (m):
// far below what can be drawn, far above rounding.
const samePoint = 1e-6

// join appends line to dst and leaves out points equal to the one before.
func join(dst []r2.Vec, line ...r2.Vec) []r2.Vec {
	for _, v := range line {
		if len(dst) == 0 || dist(dst[len(dst)-1], v) > samePoint {
			dst = append(dst, v)
		}
	}
	return dst
}

// segmentsMeet reports whether the closed segments ab and cd have a point in
// common.
func segmentsMeet(a, b, c, d r2.Vec) bool {
	side := func(p, q, r r2.Vec) float64 { return r2.Cross(r2.Sub(q, p), r2.Sub(r, p)) }
	s1, s2 := side(a, b, c), side(a, b, d)
	s3, s4 := side(c, d, a), side(c, d, b)
	if s1*s2 < 0 && s3*s4 < 0 {
		return true
	}
	within := func(p, q, r r2.Vec) bool {
		return math.Min(p.X, q.X) <= r.X && r.X <= math.Max(p.X, q.X) &&
			math.Min(p.Y, q.Y) <= r.Y && r.Y <= math.Max(p.Y, q.Y)
	}
	return s1 == 0 && within(a, b, c) || s2 == 0 && within(a, b, d) ||
		s3 == 0 && within(c, d, a) || s4 == 0 && within(c, d, b)
}

// Crossing returns the first two sides of the closed outline p that meet
// anywhere but in a shared corner, or that fold back on each other; a side is
// named by the index of its first point.
func Crossing(p []r2.Vec) (i, j int, ok bool) {
	n := len(p)
	for i := range n {
		a, b, next := p[i], p[(i+1)%n], p[(i+2)%n]
		u, v := r2.Sub(b, a), r2.Sub(next, b)
		if r2.Cross(u, v) == 0 && r2.Dot(u, v) < 0 {
			return i, (i + 1) % n, true
		}
		lo, hi := r2.Vec{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y)}, r2.Vec{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y)}
		for j := i + 2; j < n; j++ {
			c, d := p[j], p[(j+1)%n]
			if c.X > hi.X && d.X > hi.X || c.X < lo.X && d.X < lo.X || c.Y > hi.Y && d.Y > hi.Y || c.Y < lo.Y && d.Y < lo.Y {
				continue // their boxes do not touch
			}
			if (j+1)%n != i && segmentsMeet(a, b, c, d) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// linesMeet reports whether two open lines have a point in common.
func linesMeet(p, q []r2.Vec) bool {
	for i := 1; i < len(p); i++ {
		for j := 1; j < len(q); j++ {
			if segmentsMeet(p[i-1], p[i], q[j-1], q[j]) {
				return true
			}
		}
	}
	return false
}
