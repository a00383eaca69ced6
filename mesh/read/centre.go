package read

import (
	"math"

	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// samples is at how many points an outline is held against another.
const samples = 300

// centreOf returns the straight line inside about which the outline mirrors
// best, and whether there is one.
func centreOf(p paper.Piece) (cf [2]r2.Vec, ok bool) {
	least := mostOff
	for _, l := range p.Lines {
		a, b := l.Points[0], l.Points[len(l.Points)-1]
		if r2.Norm(r2.Sub(b, a)) < leastCF || !straight(l.Points) || !touches(p.Outline, a) || !touches(p.Outline, b) {
			continue
		}
		if d := offOutline(p.Outline, acrossLine(p.Outline, a, b), least); d < least {
			least, cf, ok = d, [2]r2.Vec{a, b}, true
		}
	}
	return cf, ok
}

// touches reports whether v lies on a closed line.
func touches(p []r2.Vec, v r2.Vec) bool { return offOutline(p, []r2.Vec{v}, onSeam) < onSeam }

// acrossLine returns points mirrored about the line ab.
func acrossLine(points []r2.Vec, a, b r2.Vec) []r2.Vec {
	u := r2.Unit(r2.Sub(b, a))
	out := make([]r2.Vec, len(points))
	for i, v := range points {
		d := r2.Sub(v, a)
		out[i] = r2.Add(a, r2.Sub(r2.Scale(2*r2.Dot(d, u), u), d))
	}
	return out
}

// offOutline returns how far the farthest of some points lies from the closed
// line p (m); it stops at enough.
func offOutline(p, points []r2.Vec, enough float64) float64 {
	most := 0.0
	for i := 0; i < len(points) && most < enough; i += 1 + len(points)/samples {
		least := math.Inf(1)
		for k, a := range p {
			least = min(least, polyline.Off(points[i], a, p[(k+1)%len(p)]))
		}
		most = max(most, least)
	}
	return most
}
