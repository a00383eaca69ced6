package draft

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// mitreCap is how far a mitred corner of the cut line may stand out, in
// allowances: sharper corners than 60° are cut off square there.
const mitreCap = 2

// offset returns the counter-clockwise outline p moved out by d: mitred,
// capped, and without the loops and pockets that arise where the outline is
// narrower than the allowance.
func offset(p []r2.Vec, d float64) []r2.Vec {
	if d == 0 {
		return append([]r2.Vec(nil), p...)
	}
	var raw []r2.Vec
	n := len(p)
	for i := range p {
		in := r2.Unit(r2.Sub(p[i], p[(i+n-1)%n]))
		out := r2.Unit(r2.Sub(p[(i+1)%n], p[i]))
		raw = join(raw, cornerOffset(p[i], in, out, d)...)
	}
	return outerFace(raw)
}

// cornerOffset returns the offset of the corner p between the directions in
// and out. An inner corner keeps both ends: the loop they make lies inside and
// outerFace drops it.
func cornerOffset(p, in, out r2.Vec, d float64) []r2.Vec {
	n0, n1 := r2.Vec{X: in.Y, Y: -in.X}, r2.Vec{X: out.Y, Y: -out.X}
	a, b := r2.Add(p, r2.Scale(d, n0)), r2.Add(p, r2.Scale(d, n1))
	bend := turn(in, out)
	if bend <= 0 {
		return []r2.Vec{a, b}
	}
	stand := d / math.Cos(bend/2) // from the corner to the tip of its mitre
	if stand <= mitreCap*d {
		return []r2.Vec{r2.Add(p, r2.Scale(stand, r2.Unit(r2.Add(n0, n1))))}
	}
	// The cap is the line square to the bisector at mitreCap·d from p.
	run := d * (mitreCap - math.Cos(bend/2)) / math.Sin(bend/2)
	return []r2.Vec{r2.Add(a, r2.Scale(run, in)), r2.Sub(b, r2.Scale(run, out))}
}
