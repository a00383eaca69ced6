package form

import (
	"math"

	"cowl/mesh/body"
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r3"
)

// standard returns the table of sections before the girths are solved. The
// numbers describe a dress form of bust 88, waist 72, hip 96 cm, chosen by eye
// from memory of such forms, and are scaled by the girth nearest to them; what
// the body measures is solved for afterwards.
func standard(b body.Body, at heights) []level {
	bust, waist, hip := b.Bust/0.88, b.Waist/0.72, b.Hip/0.96
	between := func(lo, hi, t float64) float64 { return lo + t*(hi-lo) }
	// Below the neck points, but under a deep front neck all the same.
	below := func(ofNeck, ofPit float64) float64 {
		return min(between(at.neck, at.underarm, ofNeck), between(at.frontLow, at.underarm, ofPit))
	}
	tip := halfNeck(b) + b.Shoulder*math.Cos(b.ShoulderSlope)
	belly := (hip + waist) / 2
	neck := b.Neck / 0.37
	return []level{
		rowBottom:    {at.hip - 0.10, 0.160 * hip, 0.092 * hip, 0.112 * hip, 0, 2.3, 2.3},
		rowHip:       {at.hip, 0.171 * hip, 0.100 * hip, 0.124 * hip, 0, 2.3, 2.3},
		rowBelly:     {at.hip / 2, 0.150 * belly, 0.104 * belly, 0.104 * belly, 0, 2.3, 2.3},
		rowWaist:     {0, 0.122 * waist, 0.094 * waist, 0.078 * waist, 0, 2.2, 2.3},
		rowUnderbust: {between(0, at.apex, 0.5), 0.131 * bust, 0.090 * bust, 0.084 * bust, 0, 2.2, 2.8},
		rowBust:      {at.apex, 0.143 * bust, 0.086 * bust, 0.096 * bust, 0, 2.2, 3.2},
		rowChest:     {below(0.67, 0.5), tip + 0.010, 0.083 * bust, 0.106 * bust, 0, 2.3, 2.3},
		rowUpper:     {below(0.42, 0.2), tip + 0.060, 0.062 * bust, 0.096 * bust, 0, 2.3, 2.4},
		rowPit:       {at.frontLow, tip + 0.100, 0.045 * neck, 0.074 * bust, 0, 2.2, 2.2},
		rowNeck:      {at.neck, tip + 0.130, 0.050 * neck, 0.051 * neck, 0, 2, 2},
		rowTop:       {at.top + 0.01, tip + 0.150, 0.047 * neck, 0.047 * neck, 0.012, 2, 2},
	}
}

// standardMound returns the mounds before their centres are solved: they stand
// 4 cm out of a rib cage of bust 88 cm and meet in a shallow valley, as on a
// padded dress form. Chosen by eye against side and three-quarter views.
func standardMound(b body.Body, at heights) mound {
	return mound{
		x: b.BustSpan / 2, y: at.apex,
		height: 0.048 * b.Bust, wide: 0.37 * b.BustSpan, tall: 0.085 * b.Bust,
	}
}

// halfNeck is the distance of a shoulder neck point from the middle plane: a
// fifth of the neck less 7 mm, the front neck width of the flat block (common
// practice in metric pattern cutting).
func halfNeck(b body.Body) float64 { return b.Neck/5 - 0.007 }

// neckFlare is how far the neck narrows from the neck points to its asymptote.
const neckFlare = 0.010

// setRidge solves for the ridge so that its point at the shoulder length lies at
// the given slope (rad) under the neck point.
func (s *shape) setRidge(b body.Body, slope float64) error {
	const bend = 0.014 // m, how softly the neck turns into the shoulder; by eye
	xn := halfNeck(b)
	s.ridge = ridge{neckHalf: xn - neckFlare, foot: xn - bend*bend/neckFlare, bend: bend, y0: s.at.neck}
	lo, hi := 0.0, 20.0
	for range 60 {
		s.ridge.cot = (lo + hi) / 2
		x, y := s.ridge.walk(b.Shoulder)
		if math.Atan2(s.at.neck-y, x-xn) > slope {
			lo = s.ridge.cot
		} else {
			hi = s.ridge.cot
		}
	}
	if hi > 19.9 {
		return limit.Errorf("shoulder slope", "shoulder slope %v, want a steeper one for a shoulder of %v",
			limit.Of(b.ShoulderSlope, limit.Angle), limit.Metres(b.Shoulder))
	}
	s.tip.X, s.tip.Y = s.ridge.walk(b.Shoulder)
	return nil
}

// setShoulder sets ridge and plate so that the shoulder has its slope on the
// finished surface, where the rounding of the plate lowers the tip a little.
func (s *shape) setShoulder(b body.Body) error {
	slope := b.ShoulderSlope
	for range 4 {
		if err := s.setRidge(b, slope); err != nil {
			return err
		}
		s.setPlate()
		l := s.shoulderLine(b.Shoulder).pts
		fall := r3.Sub(l[0], l[len(l)-1])
		slope += b.ShoulderSlope - math.Atan2(fall.Y, -fall.X)
	}
	return nil
}

// walk returns the point at arc length l along the ridge from the neck point,
// in 400 midpoint steps along its tangent.
func (r ridge) walk(l float64) (x, y float64) {
	const n = 400
	x, y = r.half(r.y0), r.y0
	h := l / n
	for range n {
		ym := y - h/2/math.Hypot(1, r.run(y))
		c := r.run(ym)
		f := h / math.Hypot(1, c)
		y -= f
		x = r.half(y)
	}
	return x, y
}

// run is the growth of the half width per metre of fall.
func (r ridge) run(y float64) float64 {
	d := r.foot + (r.y0-y)*r.cot - r.neckHalf
	return r.cot / 2 * (1 + d/2/math.Hypot(d/2, r.bend))
}

// plateOver is how far beyond the shoulder tip the plane of the plate stands,
// m; its rounding begins before the tip.
const plateOver = 0.008

// plateFoot is how far over the underarm the shoulder plate runs out into the
// side, m.
const plateFoot = 0.015

// setPlate lays the shoulder plate from just outside the tip to the side over
// the underarm.
func (s *shape) setPlate() {
	y := s.at.underarm + plateFoot
	foot := s.contour(y).half
	top := s.tip.X + plateOver
	s.plate = plate{x: foot, y: y, slope: (top - foot) / (s.tip.Y - y)}
}
