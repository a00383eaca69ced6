package draft

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// outerFace returns the outer boundary, counter-clockwise, of all that the
// closed line p encloses, p being allowed to cross itself: p is split where it
// meets itself, and the boundary is walked from its lowest point, at each
// crossing along the line furthest to the right.
func outerFace(p []r2.Vec) []r2.Vec {
	g := newGraph(splitAtCrossings(p))
	start := 0
	for i, v := range g.at {
		if v.Y < g.at[start].Y || v.Y == g.at[start].Y && v.X < g.at[start].X {
			start = i
		}
	}
	var face []r2.Vec
	from, here := r2.Vec{X: 1}, start // came from the left: nothing lies below
	for range 2 * len(g.at) {
		face = append(face, g.at[here])
		next := g.rightmost(here, from)
		from, here = r2.Sub(g.at[next], g.at[here]), next
		if here == start {
			return face
		}
	}
	return face
}

// splitAtCrossings returns p with a point wherever it meets itself.
func splitAtCrossings(p []r2.Vec) []r2.Vec {
	n := len(p)
	var out []r2.Vec
	for i := range p {
		a, b := p[i], p[(i+1)%n]
		var ts []float64
		for j := range p {
			if t, ok := meetingPoint(a, b, p[j], p[(j+1)%n]); ok && j != i {
				ts = append(ts, t)
			}
		}
		slices.Sort(ts)
		out = join(out, a)
		for _, t := range ts {
			out = join(out, lerp(a, b, t))
		}
	}
	return out
}

// meetingPoint returns where along ab, 0..1, it meets cd; lines that run
// along each other do not meet.
func meetingPoint(a, b, c, d r2.Vec) (float64, bool) {
	u, v, w := r2.Sub(b, a), r2.Sub(d, c), r2.Sub(c, a)
	det := r2.Cross(u, v)
	if math.Abs(det) < 1e-12*r2.Norm(u)*r2.Norm(v) {
		return 0, false
	}
	t, s := r2.Cross(w, v)/det, r2.Cross(w, u)/det
	const slack = 1e-9
	in := func(x float64) bool { return x >= -slack && x <= 1+slack }
	return min(max(t, 0), 1), in(t) && in(s)
}

// graph is a line drawing: points and which of them are joined.
type graph struct {
	at     []r2.Vec
	joined [][]int
}

// newGraph makes one node of points that are the same.
func newGraph(p []r2.Vec) graph {
	var g graph
	node := func(v r2.Vec) int {
		for i, w := range g.at {
			if dist(v, w) <= 2*samePoint {
				return i
			}
		}
		g.at, g.joined = append(g.at, v), append(g.joined, nil)
		return len(g.at) - 1
	}
	for i := range p {
		a, b := node(p[i]), node(p[(i+1)%len(p)])
		if a != b && !slices.Contains(g.joined[a], b) {
			g.joined[a], g.joined[b] = append(g.joined[a], b), append(g.joined[b], a)
		}
	}
	return g
}

// rightmost returns the neighbour of node i that lies furthest to the right of
// the direction from; the way back comes last.
func (g graph) rightmost(i int, from r2.Vec) int {
	best, least := g.joined[i][0], math.Inf(1)
	for _, j := range g.joined[i] {
		a := turn(from, r2.Sub(g.at[j], g.at[i]))
		if a > math.Pi-1e-9 || a < -math.Pi+1e-9 {
			a = math.Pi // straight back
		}
		if a < least {
			best, least = j, a
		}
	}
	return best
}
