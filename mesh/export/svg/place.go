package svg

import (
	"math"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// enough is the clearance at which a place is good (m); more is no better.
const enough = 0.022

// place returns where on the wearer's left half a mark that covers the points
// shape (m, about its middle) keeps clearest of lines and apex. Of equally
// clear places it takes the first, near the middle of the upper front.
func place(p draft.Piece, shape []r2.Vec) r2.Vec {
	wide, long := room(p)
	lines := obstacles(p)
	var best r2.Vec
	clearest := math.Inf(-1)
	for _, y := range []float64{0.35, 0.45, 0.25, 0.55, 0.2, 0.65, 0.75} {
		for _, x := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.85, 1} {
			mid := r2.Vec{X: x * wide, Y: p.FoldY - y*long}
			if c := min(enough, clearance(mid, shape, lines)); c > clearest+1e-6 {
				best, clearest = mid, c
			}
		}
	}
	return best
}

// obstacles lists the lines of the left half that no mark may touch.
func obstacles(p draft.Piece) [][]r2.Vec {
	waist := p.Waist[len(p.Waist)-1]
	lines := [][]r2.Vec{
		p.Shoulder, p.Armhole, p.Side, p.Waist,
		{waist, {Y: p.FoldY}}, {{Y: p.FoldY}, p.Shoulder[0]},
		{p.Apex, p.Apex},
	}
	if p.DartLeft != nil {
		lines = append(lines, p.DartLeft)
	}
	return lines
}

// clearance returns how far the nearest line lies from the shape set at mid.
func clearance(mid r2.Vec, shape []r2.Vec, lines [][]r2.Vec) float64 {
	least := math.Inf(1)
	for _, s := range shape {
		v := r2.Add(mid, s)
		for _, l := range lines {
			for i := 1; i < len(l); i++ {
				least = min(least, fromSegment(v, l[i-1], l[i]))
			}
		}
	}
	return least
}

// fromSegment returns the distance of v from the segment ab.
func fromSegment(v, a, b r2.Vec) float64 {
	d := r2.Sub(b, a)
	t := 0.0
	if l := r2.Norm2(d); l > 0 {
		t = min(max(r2.Dot(r2.Sub(v, a), d)/l, 0), 1)
	}
	return r2.Norm(r2.Sub(v, r2.Add(a, r2.Scale(t, d))))
}

// bar returns points along a straight mark about its middle, ends at ±half.
func bar(half r2.Vec) []r2.Vec {
	const n = 12
	s := make([]r2.Vec, n+1)
	for i := range s {
		s[i] = r2.Scale(float64(2*i)/n-1, half)
	}
	return s
}
