package marker

import (
	"math"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// passes is how often the corners are clipped: each pass halves the angle of
// what stands out, and after three it is 0.05 mm of a 1 cm allowance.
const passes = 3

// clipped returns the cut line with the tips of its mitred corners clipped off
// round, so that no place lies further from the seam line than the allowance:
// a cutter clips them, and lets them run over the edge of the cloth.
func clipped(p paper.Piece) []r2.Vec {
	by := cornerAllowances(p)
	cut := p.CutLine
	for range passes {
		cut = clipTips(cut, p.Outline, by)
	}
	return cut
}

// clipTips cuts every corner that stands out further than its allowance off
// square.
func clipTips(cut, outline []r2.Vec, by []float64) []r2.Vec {
	n := len(cut)
	var out []r2.Vec
	for i, c := range cut {
		a, b := cut[(i+n-1)%n], cut[(i+1)%n]
		k := nearestPoint(outline, c)
		r := r2.Norm(r2.Sub(c, outline[k]))
		if r <= by[k]+1e-6 || r2.Cross(r2.Sub(c, a), r2.Sub(b, c)) <= 0 {
			out = append(out, c)
			continue
		}
		tip := r2.Scale(1/r, r2.Sub(c, outline[k]))
		out = append(out, cutBack(c, a, tip, r-by[k]), cutBack(c, b, tip, r-by[k]))
	}
	return out
}

// cutBack returns the place on the way from the corner c to its neighbour at
// which depth has been lost along tip; the neighbour if that is not reached.
func cutBack(c, neighbour, tip r2.Vec, depth float64) r2.Vec {
	d := r2.Sub(neighbour, c)
	fall := -r2.Dot(tip, d)
	if fall <= depth {
		return neighbour
	}
	return r2.Add(c, r2.Scale(depth/fall, d))
}

// cornerAllowances returns for each point of the outline the larger allowance
// of the two edges that meet there, m.
func cornerAllowances(p paper.Piece) []float64 {
	n := len(p.Outline)
	out := make([]float64, n)
	for _, e := range p.Edges {
		for i := e.From; ; i = (i + 1) % n {
			out[i] = max(out[i], e.Allowance)
			if i == e.To {
				break
			}
		}
	}
	return out
}

// nearestPoint returns the index of the point of line nearest to v.
func nearestPoint(line []r2.Vec, v r2.Vec) int {
	best, least := 0, math.Inf(1)
	for i, w := range line {
		if d := r2.Norm2(r2.Sub(v, w)); d < least {
			best, least = i, d
		}
	}
	return best
}
