package form

import (
	"math"

	"gonum.org/v1/gonum/interp"
)

// contour is one horizontal section of the form: a superellipse
// |x/half|^n + |(z−centre)/depth|^n = 1 with its own depth in front and behind.
type contour struct {
	half        float64 // m, half width at z = centre
	front, back float64 // m, depth before and behind the centre
	centre      float64 // m, z of the widest place
	n           float64 // exponent behind the centre, 2 = ellipse
	nFront      float64 // exponent before it
}

// level is one row of the table from which the sections are splined.
type level struct {
	y                 float64 // m over the waist
	half, front, back float64 // m
	centre            float64 // m
	n, nFront         float64
}

// heights are those of the landmarks over the waist, m, on the finished form; see
// heightsOver.
type heights struct {
	neck     float64 // shoulder neck points
	nape     float64
	frontLow float64 // front neck point
	underarm float64
	apex     float64
	hip      float64
	bottom   float64
	top      float64 // neck cap
}

// profile holds the splines over height.
type profile struct {
	half, front, back, centre, n, nFront interp.NaturalCubic
}

// profileOf splines the table, whose rows rise in y.
func profileOf(t []level) (*profile, error) {
	pick := func(get func(level) float64) []float64 {
		v := make([]float64, len(t))
		for i, l := range t {
			v[i] = get(l)
		}
		return v
	}
	ys := pick(func(l level) float64 { return l.y })
	p := &profile{}
	for _, c := range []struct {
		dst *interp.NaturalCubic
		get func(level) float64
	}{
		{&p.half, func(l level) float64 { return l.half }},
		{&p.front, func(l level) float64 { return l.front }},
		{&p.back, func(l level) float64 { return l.back }},
		{&p.centre, func(l level) float64 { return l.centre }},
		{&p.n, func(l level) float64 { return l.n }},
		{&p.nFront, func(l level) float64 { return l.nFront }},
	} {
		if err := c.dst.Fit(ys, pick(c.get)); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// ridge is the outline of neck and shoulder in the plane Z = 0: a hyperbola
// with one branch along the neck and the other along the shoulder, through the
// shoulder neck point.
type ridge struct {
	neckHalf float64 // m, x of the neck asymptote
	foot     float64 // m, x of the shoulder asymptote at neck-point level
	cot      float64 // run over fall of the shoulder asymptote
	bend     float64 // m, half axis of the hyperbola
	y0       float64 // m, neck-point level
}

// half returns the half width of the ridge at height y.
func (r ridge) half(y float64) float64 {
	s := r.foot + (r.y0-y)*r.cot
	m, h := (s+r.neckHalf)/2, (s-r.neckHalf)/2
	return m + math.Sqrt(h*h+r.bend*r.bend)
}

// ridgeRound is the width over which the ridge turns into the side, m. The side
// row of the table passes the tip by more, so the shoulder line keeps clear.
const ridgeRound = 0.07

// contour evaluates the splines and the ridge at height y.
func (s *shape) contour(y float64) contour {
	side := s.prof.half.Predict(y)
	return contour{
		half:   smoothMin(side, s.ridge.half(y), ridgeRound),
		front:  s.prof.front.Predict(y),
		back:   s.prof.back.Predict(y),
		centre: s.prof.centre.Predict(y),
		n:      s.prof.n.Predict(y),
		nFront: s.prof.nFront.Predict(y),
	}
}

// smoothMin is min(a, b) rounded over a width k; it differs from min by at
// most k/6 and is twice differentiable.
func smoothMin(a, b, k float64) float64 {
	h := math.Max(k-math.Abs(a-b), 0) / k
	return math.Min(a, b) - h*h*h*k/6
}

// smoothMax is max(a, b) rounded over a width k.
func smoothMax(a, b, k float64) float64 { return -smoothMin(-a, -b, k) }
