package form

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// shape is the implicit form: value is < 0 inside and, near the surface, close
// to the distance in metres.
type shape struct {
	at    heights
	prof  *profile
	ridge ridge
	mound mound
	plate plate
	table []level
	tip   r2.Vec // m, shoulder tip in the plane Z = 0
}

// mound is the pair of bust mounds, added to the front depth as a bell whose
// upper slope is longer than its lower one.
type mound struct {
	x, y   float64 // m, centre of the wearer's left mound
	height float64 // m
	wide   float64 // m, half width of the bell across
	tall   float64 // m, half height of the bell
}

// lean makes a bell up to 1+lean times as tall above its centre and 1−lean
// times below it.
const lean = 0.25

// at returns the added front depth at (|x|, y), both mounds together, so that
// it is smooth across X = 0.
func (m mound) at(x, y float64) float64 {
	t := y - m.y
	v := t / (m.tall * (1 + lean*t/math.Sqrt(t*t+m.tall*m.tall)))
	u, w := (x-m.x)/m.wide, (x+m.x)/m.wide
	return m.height * (math.Exp(-u*u-v*v) + math.Exp(-w*w-v*v))
}

// plate is the flat end of the shoulder: it runs straight from the shoulder
// tip to the underarm and turns away from the form below it.
type plate struct {
	x, y  float64 // m, at the underarm
	slope float64 // dx/dy, outward going up
}

// at returns the distance from the plate, > 0 outside of it.
func (p plate) at(x, y float64) float64 {
	edge, slope := p.x+p.slope*(y-p.y), p.slope
	if t := p.y - y; t > 0 {
		edge += t * t * t / (plateTurn * plateTurn)
		slope -= 3 * t * t / (plateTurn * plateTurn)
	}
	return (x - edge) / math.Sqrt(1+slope*slope)
}

// plateTurn is the depth below its foot at which the plate stands off by as much,
// m.
const plateTurn = 0.07

// Radii over which the ends are rounded, m.
const (
	plateRound  = 0.030
	capRound    = 0.024
	bottomRound = 0.035
)

// raw is the section function: 0 on the surface without its ends, −1 at the
// centre of the section, without unit.
func (s *shape) raw(x, y, z float64, c contour) float64 {
	x = math.Abs(x)
	if z <= c.centre {
		u, v := x/c.half, (c.centre-z)/c.back
		return math.Pow(math.Pow(u, c.n)+math.Pow(v, c.n), 1/c.n) - 1
	}
	un := math.Pow(x/c.half, c.nFront)
	v := (z - c.centre) / s.depth(x, y, un, c)
	return math.Pow(un+math.Pow(v, c.nFront), 1/c.nFront) - 1
}

// depth returns the front depth at (x, y) with the mound on it; un is
// (x/half)^n. The factor keeps the mound from shrinking with the section: it
// follows 1/(1−un)^(1/n) up to the flank, but stays bounded at the side.
func (s *shape) depth(x, y, un float64, c contour) float64 {
	return c.front + s.mound.at(x, y)*(1+0.5*math.Min(un, 1))
}

// value returns the implicit function at p.
func (s *shape) value(p r3.Vec) float64 {
	const e = 1e-5 // m, step of the differences that scale raw to metres
	c, cy := s.contour(p.Y), s.contour(p.Y+e)
	g := s.raw(p.X, p.Y, p.Z, c)
	gx := s.raw(math.Abs(p.X)+e, p.Y, p.Z, c) - g
	gy := s.raw(p.X, p.Y+e, p.Z, cy) - g
	gz := s.raw(p.X, p.Y, p.Z+e, c) - g
	d := g * e / math.Sqrt(gx*gx+gy*gy+gz*gz+1e-18)
	d = smoothMax(d, s.plate.at(math.Abs(p.X), p.Y), plateRound)
	d = smoothMax(d, p.Y-s.at.top, capRound)
	return smoothMax(d, s.at.bottom-p.Y, bottomRound)
}

// gradient returns the gradient of value by central differences.
func (s *shape) gradient(p r3.Vec) r3.Vec {
	const e = 1e-4
	d := func(q r3.Vec) float64 { return (s.value(r3.Add(p, q)) - s.value(r3.Sub(p, q))) / (2 * e) }
	return r3.Vec{X: d(r3.Vec{X: e}), Y: d(r3.Vec{Y: e}), Z: d(r3.Vec{Z: e})}
}

// settle moves p, which is near the surface, onto it by Newton's method with
// one-sided slopes, which cost half of central ones.
func (s *shape) settle(p r3.Vec) r3.Vec {
	const e = 1e-6
	for range 6 {
		v := s.value(p)
		if math.Abs(v) < 1e-7 {
			break
		}
		g := r3.Scale(1/e, r3.Vec{
			X: s.value(r3.Vec{X: p.X + e, Y: p.Y, Z: p.Z}) - v,
			Y: s.value(r3.Vec{X: p.X, Y: p.Y + e, Z: p.Z}) - v,
			Z: s.value(r3.Vec{X: p.X, Y: p.Y, Z: p.Z + e}) - v,
		})
		if p.X == 0 {
			g.X = 0 // stay in the middle plane
		}
		p = r3.Sub(p, r3.Scale(v/max(r3.Norm2(g), 0.1), g))
	}
	return p
}

// frontZ returns the front surface at (x, y) away from the ends.
func (s *shape) frontZ(x, y float64) float64 {
	c := s.contour(y)
	x = math.Abs(x)
	un := math.Min(math.Pow(x/c.half, c.nFront), 1)
	return c.centre + s.depth(x, y, un, c)*math.Pow(1-un, 1/c.nFront)
}

// backZ returns the back surface at (x, y) away from the ends.
func (s *shape) backZ(x, y float64) float64 {
	c := s.contour(y)
	u := math.Min(math.Abs(x)/c.half, 1)
	return c.centre - c.back*math.Pow(1-math.Pow(u, c.n), 1/c.n)
}

// hit returns how far along the unit direction dir from p, which lies inside,
// the surface is met, at most far. It bisects: 40 halvings reach 1e-13 m.
func (s *shape) hit(p, dir r3.Vec, far float64) float64 {
	lo, hi := 0.0, far
	for range 40 {
		mid := (lo + hi) / 2
		if s.value(r3.Add(p, r3.Scale(mid, dir))) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
