package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// curve is a cubic B-spline with even knots, fitted to places by least squares
// (C. de Boor, "A Practical Guide to Splines", 1978, ch. XIV).
type curve struct {
	step  float64 // m, between knots
	spans int
	ctrl  []r3.Vec     // m, len = spans + 3
	band  [][4]float64 // len = spans + 3; the matrix from its diagonal to the right
}

// even keeps a stretch without places from bending: it is what second
// differences of control points cost, in places that are worth a knot's length.
const even = 1e-3

// newCurve prepares a curve as long as length (m) with knots about every step (m).
func newCurve(length, step float64) *curve {
	n := max(1, int(math.Round(length/step)))
	c := &curve{step: length / float64(n), spans: n, ctrl: make([]r3.Vec, n+3), band: make([][4]float64, n+3)}
	for k := range n + 1 {
		for i, x := range [3]float64{1, -2, 1} {
			for j, y := range [3]float64{1, -2, 1} {
				if j >= i {
					c.band[k+i][j-i] += even * step * x * y
				}
			}
		}
	}
	return c
}

// basis returns the first of the four control points that count at s (m), and
// what they count.
func (c *curve) basis(s float64) (int, [4]float64) {
	x := s / c.step
	k := min(max(int(x), 0), c.spans-1)
	t := x - float64(k)
	u := 1 - t
	return k, [4]float64{u * u * u / 6, (3*t*t*t - 6*t*t + 4) / 6, (3*u*u*u - 6*u*u + 4) / 6, t * t * t / 6}
}

// add takes in a place p (m) at s (m).
func (c *curve) add(s float64, p r3.Vec, weight float64) {
	k, w := c.basis(s)
	for i := range 4 {
		for j := i; j < 4; j++ {
			c.band[k+i][j-i] += weight * w[i] * w[j]
		}
		c.ctrl[k+i] = r3.Add(c.ctrl[k+i], r3.Scale(weight*w[i], p))
	}
}

// solve finds the control points, by Gauss's elimination within the band.
func (c *curve) solve() {
	n := len(c.ctrl)
	for k := range n {
		for i := 1; i < 4 && k+i < n; i++ {
			m := c.band[k][i] / c.band[k][0]
			for j := i; j < 4; j++ {
				c.band[k+i][j-i] -= m * c.band[k][j]
			}
			c.ctrl[k+i] = r3.Sub(c.ctrl[k+i], r3.Scale(m, c.ctrl[k]))
		}
	}
	for k := n - 1; k >= 0; k-- {
		for j := 1; j < 4 && k+j < n; j++ {
			c.ctrl[k] = r3.Sub(c.ctrl[k], r3.Scale(c.band[k][j], c.ctrl[k+j]))
		}
		c.ctrl[k] = r3.Scale(1/c.band[k][0], c.ctrl[k])
	}
}

// at returns the place at s, m.
func (c *curve) at(s float64) r3.Vec {
	k, w := c.basis(s)
	var p r3.Vec
	for i := range 4 {
		p = r3.Add(p, r3.Scale(w[i], c.ctrl[k+i]))
	}
	return p
}

// slope returns how the place changes at s for each metre along the curve.
func (c *curve) slope(s float64) r3.Vec {
	const d = 1e-3
	lo, hi := max(s/c.step-d, 0), min(s/c.step+d, float64(c.spans))
	return r3.Scale(1/((hi-lo)*c.step), r3.Sub(c.at(hi*c.step), c.at(lo*c.step)))
}
