package outline

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// corner is the bend from which a point of an outline is a corner (rad).
const corner = 25 * math.Pi / 180

// mostCorners is how many corners an outline may have: a garment has a dozen.
const mostCorners = 300

// Corners returns the indices of the corners of a closed outline, in its order.
func Corners(p []r2.Vec) []int {
	var out []int
	n := len(p)
	for i, v := range p {
		if Bends(p[(i+n-1)%n], v, p[(i+1)%n]) {
			out = append(out, i)
		}
	}
	return out
}

// Bends reports whether the line from a over v to b has a corner at v.
func Bends(a, v, b r2.Vec) bool {
	in, next := r2.Sub(v, a), r2.Sub(b, v)
	return math.Abs(math.Atan2(r2.Cross(in, next), r2.Dot(in, next))) > corner
}

// edges cuts the outline at its corners; the allowance of an edge is how far
// the middle of its longest side lies from the cut line. The last edge must
// end at point 0, so a curve that runs through it is cut there. Without a cut
// line there is no allowance.
func edges(seam, cut []r2.Vec, bare bool) ([]paper.Edge, error) {
	at := Corners(seam)
	if len(at) > mostCorners {
		return nil, fmt.Errorf("outline has %d corners, want at most %d: have curves drawn finely", len(at), mostCorners)
	}
	if len(at) == 0 || at[0] != 0 {
		at = append([]int{0}, at...)
	}
	var out []paper.Edge
	for i, from := range at {
		to := at[(i+1)%len(at)]
		e := paper.Edge{Name: fmt.Sprintf("edge %d", i+1), From: from, To: to, Curve: (to-from+len(seam))%len(seam) != 1}
		if !bare {
			e.Allowance = fromLine(middle(seam, from, to), cut)
		}
		out = append(out, e)
	}
	return out, nil
}

// middle returns the middle of the longest side between two points of a
// closed line.
func middle(p []r2.Vec, from, to int) r2.Vec {
	var mid r2.Vec
	long := -1.0
	for i := from; ; {
		next := (i + 1) % len(p)
		if d := r2.Norm(r2.Sub(p[next], p[i])); d > long {
			long, mid = d, r2.Scale(0.5, r2.Add(p[i], p[next]))
		}
		if i = next; i == to {
			return mid
		}
	}
}

// fromLine returns how far v lies from a closed line (m), to a hundredth of a
// millimetre.
func fromLine(v r2.Vec, line []r2.Vec) float64 {
	least := math.Inf(1)
	for i, a := range line {
		least = min(least, polyline.Off(v, a, line[(i+1)%len(line)]))
	}
	return math.Round(least*1e5) / 1e5
}

// notch returns the mark on the outline nearest to v, pointing out of it.
func notch(seam []r2.Vec, v r2.Vec) draft.Notch {
	least, at := math.Inf(1), 0
	for i, a := range seam {
		if d := polyline.Off(v, a, seam[(i+1)%len(seam)]); d < least {
			least, at = d, i
		}
	}
	a, b := seam[at], seam[(at+1)%len(seam)]
	d := r2.Unit(r2.Sub(b, a))
	t := min(max(r2.Dot(r2.Sub(v, a), d), 0), r2.Norm(r2.Sub(b, a)))
	return draft.Notch{At: r2.Add(a, r2.Scale(t, d)), Dir: r2.Vec{X: d.Y, Y: -d.X}, Name: "notch"}
}
