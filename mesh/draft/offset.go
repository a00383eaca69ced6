package draft

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// mitreCap is how far a mitred corner of the cut line may stand out, in
// allowances of its wider side: sharper corners than 60° are cut off square there.
const mitreCap = 2

// Offset returns the counter-clockwise outline p with every side moved out by
// its own allowance, d[i] for the side from p[i] to p[i+1]: mitred, capped, and
// without the loops and pockets that arise where the outline is narrower than
// the allowance. Where the allowance changes along a nearly straight line the
// cut line steps squarely. It panics if there is not one allowance a side.
func Offset(p []r2.Vec, d []float64) []r2.Vec {
	n := len(p)
	if len(d) != n {
		panic("draft: one allowance a side is wanted")
	}
	var raw []r2.Vec
	for i := range p {
		c := bend{at: p[i], in: r2.Unit(r2.Sub(p[i], p[(i+n-1)%n])), out: r2.Unit(r2.Sub(p[(i+1)%n], p[i])),
			before: d[(i+n-1)%n], after: d[i]}
		raw = join(raw, c.offset()...)
	}
	return outerFace(raw)
}

// offset is Offset with the same allowance all round.
func offset(p []r2.Vec, d float64) []r2.Vec {
	if d == 0 {
		return append([]r2.Vec(nil), p...)
	}
	all := make([]float64, len(p))
	for i := range all {
		all[i] = d
	}
	return Offset(p, all)
}

// bend is a corner of an outline and the allowances of its two sides.
type bend struct {
	at            r2.Vec
	in, out       r2.Vec  // unit, directions of the sides
	before, after float64 // m
}

// offset returns the corner moved out. An inner corner keeps both ends: the
// loop they make lies inside and outerFace drops it.
func (c bend) offset() []r2.Vec {
	n0, n1 := r2.Vec{X: c.in.Y, Y: -c.in.X}, r2.Vec{X: c.out.Y, Y: -c.out.X}
	a, b := r2.Add(c.at, r2.Scale(c.before, n0)), r2.Add(c.at, r2.Scale(c.after, n1))
	angle := turn(c.in, c.out)
	if angle <= 0 || c.before == 0 && c.after == 0 {
		return []r2.Vec{a, b}
	}
	sin, cos := math.Sincos(angle)
	// How far the tip of the mitre lies past a along in, and before b along out.
	past, before := (c.after-c.before*cos)/sin, (c.before-c.after*cos)/sin
	switch {
	case past < 0: // the allowance narrows by more than the corner turns
		return []r2.Vec{a, r2.Add(c.at, r2.Scale(c.after/cos, n0))}
	case before < 0:
		return []r2.Vec{r2.Add(c.at, r2.Scale(c.before/cos, n1)), b}
	}
	tip := r2.Sub(r2.Add(a, r2.Scale(past, c.in)), c.at)
	reach := mitreCap * math.Max(c.before, c.after)
	if r2.Norm(tip) <= reach {
		return []r2.Vec{r2.Add(c.at, tip)}
	}
	// The cap is the line square to the tip at reach from the corner.
	u := r2.Unit(tip)
	run := (reach - c.before*r2.Dot(n0, u)) / r2.Dot(c.in, u)
	back := (reach - c.after*r2.Dot(n1, u)) / -r2.Dot(c.out, u)
	return []r2.Vec{r2.Add(a, r2.Scale(run, c.in)), r2.Sub(b, r2.Scale(back, c.out))}
}
