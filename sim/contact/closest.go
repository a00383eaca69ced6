package contact

import "gonum.org/v1/gonum/spatial/r3"

// onTriangle returns the weights of b and c at the point of triangle a, b, c
// nearest to p; that of a is what is left of 1 (C. Ericson, Real-Time Collision
// Detection, 2005, §5.1.5).
func onTriangle(p, a, b, c *r3.Vec) (v, w float64) {
	abx, aby, abz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	acx, acy, acz := c.X-a.X, c.Y-a.Y, c.Z-a.Z
	x, y, z := p.X-a.X, p.Y-a.Y, p.Z-a.Z
	d1, d2 := abx*x+aby*y+abz*z, acx*x+acy*y+acz*z
	if d1 <= 0 && d2 <= 0 {
		return 0, 0
	}
	bb, bc, cc := abx*abx+aby*aby+abz*abz, abx*acx+aby*acy+abz*acz, acx*acx+acy*acy+acz*acz
	d3, d4 := d1-bb, d2-bc
	if d3 >= 0 && d4 <= d3 {
		return 1, 0
	}
	vc := d1*d4 - d3*d2
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		return d1 / bb, 0
	}
	d5, d6 := d1-bc, d2-cc
	if d6 >= 0 && d5 <= d6 {
		return 0, 1
	}
	vb := d5*d2 - d1*d6
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		return 0, d2 / cc
	}
	va := d3*d6 - d5*d4
	if va <= 0 && d4-d3 >= 0 && d5-d6 >= 0 {
		w := (d4 - d3) / ((d4 - d3) + (d5 - d6))
		return 1 - w, w
	}
	s := 1 / (va + vb + vc)
	return vb * s, vc * s
}

// onEdges returns the shares along p0p1 and q0q1 of their nearest points
// (Ericson, §5.1.9) and the square of the sine of the angle between them. Where
// edges are parallel, one of many.
func onEdges(p0, p1, q0, q1 *r3.Vec) (s, t, slant float64) {
	ux, uy, uz := p1.X-p0.X, p1.Y-p0.Y, p1.Z-p0.Z
	vx, vy, vz := q1.X-q0.X, q1.Y-q0.Y, q1.Z-q0.Z
	rx, ry, rz := p0.X-q0.X, p0.Y-q0.Y, p0.Z-q0.Z
	a, e, f := ux*ux+uy*uy+uz*uz, vx*vx+vy*vy+vz*vz, vx*rx+vy*ry+vz*rz
	if a == 0 || e == 0 {
		return 0, 0, 0
	}
	c, b := ux*rx+uy*ry+uz*rz, ux*vx+uy*vy+uz*vz
	den := a*e - b*b // of Lagrange: |u × v|²
	if slant = den / (a * e); slant > 1e-9 {
		s = unit((b*f - c*e) / den)
	}
	t = (b*s + f) / e
	if t < 0 || t > 1 {
		t = unit(t)
		s = unit((b*t - c) / a)
	}
	return s, t, max(0, slant)
}

// beyond reports whether p and triangle a, b, c are surely farther apart than reach (m): they
// are so on the line from p to its middle.
func beyond(reach float64, p, a, b, c *r3.Vec) bool {
	x, y, z := (a.X+b.X+c.X)/3-p.X, (a.Y+b.Y+c.Y)/3-p.Y, (a.Z+b.Z+c.Z)/3-p.Z
	on := func(q *r3.Vec) float64 { return (q.X-p.X)*x + (q.Y-p.Y)*y + (q.Z-p.Z)*z }
	between := min(on(a), on(b), on(c)) // times the length of that line
	return between > 0 && between*between > reach*reach*(x*x+y*y+z*z)
}

// unit clamps to 0..1.
func unit(x float64) float64 {
	if x < 0 {
		return 0
	}
	if x > 1 {
		return 1
	}
	return x
}
