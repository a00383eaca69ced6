package form

import "gonum.org/v1/gonum/spatial/r3"

// flip mirrors p for the wearer's right side (side < 0).
func flip(p r3.Vec, side float64) r3.Vec {
	if side < 0 {
		p.X = -p.X
	}
	return p
}

// flipAll returns a copy of pts on the given side.
func flipAll(pts []r3.Vec, side float64) []r3.Vec {
	out := make([]r3.Vec, len(pts))
	for i, p := range pts {
		out[i] = flip(p, side)
	}
	return out
}

// NeckPoint returns the shoulder neck point, m; side is +1 for the wearer's
// left and −1 for the right, here and in the other methods.
func (f *Form) NeckPoint(side float64) r3.Vec { return flip(f.seams.shoulder.pts[0], side) }

// ShoulderPoint returns the point on the shoulder seam at arc length s (m)
// from the neck point, held to the ends of the seam.
func (f *Form) ShoulderPoint(side, s float64) r3.Vec { return flip(f.seams.shoulder.at(s), side) }

// Shoulder returns the shoulder seam from the neck point to the tip, m.
func (f *Form) Shoulder(side float64) []r3.Vec { return flipAll(f.seams.shoulder.pts, side) }

// SideSeam returns the side seam from the underarm by the waist to the hip, m.
func (f *Form) SideSeam(side float64) []r3.Vec { return flipAll(f.seams.side.pts, side) }

// SidePoint returns the point on the side seam at arc length s (m) below the
// underarm, held to the ends of the seam.
func (f *Form) SidePoint(side, s float64) r3.Vec { return flip(f.seams.side.at(s), side) }

// SideLength returns the length of the side seam, underarm to hip, m.
func (f *Form) SideLength() float64 { return f.seams.side.total() }

// WaistPoint returns the point of the waist line on the front half at the arc
// fraction t: 0 at CF, 1 at the side seam.
func (f *Form) WaistPoint(side, t float64) r3.Vec {
	return flip(f.seams.waist.at(t*f.seams.waist.total()), side)
}

// WaistQuarter returns the length of the waist line from CF to the side seam,
// m.
func (f *Form) WaistQuarter() float64 { return f.seams.waist.total() }

// FrontNeck returns the front neck point, on X = 0.
func (f *Form) FrontNeck() r3.Vec { return f.seams.cf.pts[0] }

// NeckLine returns the closed neck line, m, from CB round the wearer's left to
// CF and back round the right; the first point is repeated at the end. It is
// longer than the neck measurement, which the horizontal section at the neck
// points carries: about 40 cm for a neck of 37 cm, because it dips to the front
// neck point and rises to the nape.
func (f *Form) NeckLine() []r3.Vec {
	left := f.seams.neck.pts
	out := flipAll(left, 1)
	for i := len(left) - 2; i >= 0; i-- {
		out = append(out, flip(left[i], -1))
	}
	return out
}

// CF returns the centre front from the front neck point down to the hip, m.
func (f *Form) CF() []r3.Vec { return flipAll(f.seams.cf.pts, 1) }

// Apex returns the apex of a bust mound: the foremost point of the mound, unless
// the bust span is wide for the bust, when that lies nearer to CF. The tape
// lengths of the block are measured to it. Of a form that is Turned it is the point of
// the back dart.
func (f *Form) Apex(side float64) r3.Vec {
	if f.turned {
		p := f.blade()
		return flip(r3.Vec{X: p.X, Y: p.Y, Z: -p.Z}, side)
	}
	x, y := f.body.BustSpan/2, f.shape.at.apex
	return flip(r3.Vec{X: x, Y: y, Z: f.shape.frontZ(x, y)}, side)
}

// SeamLines returns all seam lines for drawing, m: neck line, shoulder and side
// seams, centre front and back, waist, and the rims of the shoulder plates. They
// lie 0.3 mm outside the triangles.
func (f *Form) SeamLines() [][]r3.Vec {
	s := &f.seams
	lines := [][]r3.Vec{f.NeckLine(), f.CF(), flipAll(s.cb.pts, 1)}
	for _, side := range []float64{1, -1} {
		for _, l := range []line{s.shoulder, s.side, s.waist, s.waistRim, s.plate} {
			lines = append(lines, flipAll(l.pts, side))
		}
	}
	for _, l := range lines {
		for i, p := range l {
			l[i] = f.lift(p, 0.0003)
		}
	}
	return lines
}

// lift moves a point near the surface to the distance h from it, m.
func (f *Form) lift(p r3.Vec, h float64) r3.Vec {
	for range 4 {
		d, g := f.Distance(p)
		p = r3.Add(p, r3.Scale((h-d)/max(r3.Norm2(g), 0.5), g))
	}
	return p
}
