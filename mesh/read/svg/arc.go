package svg

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// arc draws an elliptic arc to end: its centre after SVG 1.1, appendix F.6.5.
func (p *pen) arc(rx, ry, turn float64, large, sweep bool, end vec) {
	start := p.at
	rx, ry = math.Abs(rx), math.Abs(ry)
	if rx == 0 || ry == 0 || start == end {
		p.to(end)
		return
	}
	phi := turn * math.Pi / 180
	// In the frame of the ellipse, about the middle of the chord.
	q := r2.Rotate(r2.Scale(0.5, r2.Sub(start, end)), -phi, vec{})
	if out := q.X*q.X/(rx*rx) + q.Y*q.Y/(ry*ry); out > 1 { // too small to reach: F.6.6
		rx, ry = rx*math.Sqrt(out), ry*math.Sqrt(out)
	}
	d := rx*rx*q.Y*q.Y + ry*ry*q.X*q.X
	s := math.Sqrt(math.Max(0, (rx*rx*ry*ry-d)/d))
	if large == sweep {
		s = -s
	}
	c := vec{X: s * rx * q.Y / ry, Y: -s * ry * q.X / rx}
	from := math.Atan2((q.Y-c.Y)/ry, (q.X-c.X)/rx)
	by := math.Atan2((-q.Y-c.Y)/ry, (-q.X-c.X)/rx) - from
	switch {
	case sweep && by < 0:
		by += 2 * math.Pi
	case !sweep && by > 0:
		by -= 2 * math.Pi
	}
	middle := r2.Scale(0.5, r2.Add(start, end))
	for i := 1; i < chordsOf; i++ {
		sin, cos := math.Sincos(from + by*float64(i)/chordsOf)
		v := r2.Rotate(r2.Add(c, vec{X: rx * cos, Y: ry * sin}), phi, vec{})
		p.to(r2.Add(middle, v))
	}
	p.to(end)
}
