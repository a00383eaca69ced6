package contact

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// onTriangle returns the weights of the point of triangle a, b, c nearest to p
// (C. Ericson, Real-Time Collision Detection, 2005, §5.1.5).
func onTriangle(p, a, b, c r3.Vec) [3]float64 {
	ab, ac, ap := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(p, a)
	d1, d2 := r3.Dot(ab, ap), r3.Dot(ac, ap)
	if d1 <= 0 && d2 <= 0 {
		return [3]float64{1, 0, 0}
	}
	bp := r3.Sub(p, b)
	d3, d4 := r3.Dot(ab, bp), r3.Dot(ac, bp)
	if d3 >= 0 && d4 <= d3 {
		return [3]float64{0, 1, 0}
	}
	vc := d1*d4 - d3*d2
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		v := d1 / (d1 - d3)
		return [3]float64{1 - v, v, 0}
	}
	cp := r3.Sub(p, c)
	d5, d6 := r3.Dot(ab, cp), r3.Dot(ac, cp)
	if d6 >= 0 && d5 <= d6 {
		return [3]float64{0, 0, 1}
	}
	vb := d5*d2 - d1*d6
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		w := d2 / (d2 - d6)
		return [3]float64{1 - w, 0, w}
	}
	va := d3*d6 - d5*d4
	if va <= 0 && d4-d3 >= 0 && d5-d6 >= 0 {
		w := (d4 - d3) / ((d4 - d3) + (d5 - d6))
		return [3]float64{0, 1 - w, w}
	}
	s := 1 / (va + vb + vc)
	return [3]float64{va * s, vb * s, vc * s}
}

// onEdges returns how far along p0–p1 and q0–q1 the two segments come nearest
// (C. Ericson, Real-Time Collision Detection, 2005, §5.1.9).
func onEdges(p0, p1, q0, q1 r3.Vec) (s, t float64) {
	d1, d2, r := r3.Sub(p1, p0), r3.Sub(q1, q0), r3.Sub(p0, q0)
	a, e, f := r3.Norm2(d1), r3.Norm2(d2), r3.Dot(d2, r)
	if a == 0 || e == 0 {
		return 0, 0
	}
	c, b := r3.Dot(d1, r), r3.Dot(d1, d2)
	if den := a*e - b*b; den > 1e-9*a*e {
		s = unit((b*f - c*e) / den)
	}
	t = (b*s + f) / e
	if t < 0 || t > 1 {
		t = unit(t)
		s = unit((b*t - c) / a)
	}
	return s, t
}

// unit clamps x to 0..1.
func unit(x float64) float64 { return max(0, min(1, x)) }
