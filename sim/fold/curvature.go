package fold

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// MaxRadius is the largest radius reported; a crest flatter than this is
// straight for all that a drape can show, and keeps a Reading finite.
const MaxRadius = 1.0 // m

// A kink is a place where the section turns by more than kinkTurn within
// kinkReach, which is tighter than a mean radius of 15 mm. The definition is
// ours; no published one was found. Lattices coarser than 8 mm cannot show it.
const (
	kinkReach = 0.016       // m
	kinkTurn  = math.Pi / 3 // rad
)

// smoothed returns the section under a moving average one lattice spacing wide.
// A section of a triangle mesh is a polygon, whose curvature is nothing on the
// sides and without bound at the corners; the average spreads each corner over
// the sides next to it. Only radii and kinks are read from it: depths come
// from the section itself. Near the ends the window shrinks evenly.
func (p profile) smoothed() []r2.Vec {
	half := int(math.Round(p.lattice / 2 / p.step))
	out := make([]r2.Vec, len(p.section))
	for i := range out {
		k := min(half, i, len(out)-1-i)
		var sum r2.Vec
		for _, q := range p.section[i-k : i+k+1] {
			sum = r2.Add(sum, q.At)
		}
		out[i] = r2.Scale(1/float64(2*k+1), sum)
	}
	return out
}

// crestRadius returns the smallest radius of the upper half of a crest, that
// is where it stands within half its prominence, on the front layer. The
// radius is that of the circle through three points one cell diagonal apart.
// A line along the yarns has a corner every spacing, one on the bias every
// diagonal: with the average and this arm both give the mean curvature.
func (p profile) crestRadius(pts []r2.Vec, c crest) float64 {
	arm := max(1, int(math.Round(math.Sqrt2*p.lattice/p.step)))
	floor := p.ahead[c.index] - c.prominence/2
	lo, hi := c.index, c.index
	for lo > 0 && p.ahead[lo-1] >= floor {
		lo--
	}
	for hi+1 < len(pts) && p.ahead[hi+1] >= floor {
		hi++
	}
	lo, hi = max(lo, arm), min(hi, len(pts)-1-arm)
	least := MaxRadius
	hi = max(lo, hi) // a crest at the very edge may be shorter than an arm
	for i := lo; i <= hi && i+arm < len(pts); i++ {
		least = min(least, circumradius(pts[i-arm], pts[i], pts[i+arm]))
	}
	return least
}

// circumradius returns the radius of the circle through three points, abc/4A;
// +Inf if they lie on a line.
func circumradius(a, b, c r2.Vec) float64 {
	ab, bc, ca := r2.Sub(b, a), r2.Sub(c, b), r2.Sub(a, c)
	return r2.Norm(ab) * r2.Norm(bc) * r2.Norm(ca) / (2 * math.Abs(r2.Cross(ab, bc)))
}

// kinks counts the places that turn too fast. A run of them is one. The first
// kinkReach below the edge is the edge roll and is left out.
func (p profile) kinks() int {
	heading := headings(p.smoothed())
	reach := max(1, int(math.Round(kinkReach/p.step)))
	count, inside := 0, false
	for i := reach; i+reach < len(heading); i++ {
		sharp := math.Abs(heading[i+reach]-heading[i]) > kinkTurn
		if sharp && !inside {
			count++
		}
		inside = sharp
	}
	return count
}

// headings returns the direction of each leg in radians, counted on through
// full turns so that differences are true turnings.
func headings(pts []r2.Vec) []float64 {
	out := make([]float64, len(pts)-1)
	for i := range out {
		leg := r2.Sub(pts[i+1], pts[i])
		out[i] = math.Atan2(leg.Y, leg.X)
		if i > 0 {
			out[i] = out[i-1] + math.Remainder(out[i]-out[i-1], 2*math.Pi)
		}
	}
	return out
}
