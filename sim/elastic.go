package sim

import (
	"math"

	"cowl/sim/contact"
	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r3"
)

// link is a yarn between two crossings.
type link struct {
	a, b int32
	k    float64 // N/m
}

// stencil is three crossings in a row that oppose being bent.
type stencil struct {
	p, o, n int32
	k       float64 // N/m, coefficient of the second difference p − 2o + n
	rub     float64 // N/m, the same of the friction of bending
}

// part returns one half of a list.
func part[T any](list []T, half int) []T {
	lo, hi := forkjoin.Half(len(list), half)
	return list[lo:hi]
}

// elastic adds the elastic forces of one half of the cloth to out (len = nodes),
// with the nodes at x. Sets of friction that slip move; the curls are those of the half.
func (c *Cloth) elastic(half int, x []r3.Vec, set Slip, k *curls, out []contact.Sum) {
	c.curl(half, x, k)
	c.tension(part(c.links, half), x, out)
	c.shearAndTwist(part(c.cells, half), x, set.Shear, k, out)
	if c.rubs {
		u, v := part(c.bendU, half), part(c.bendV, half)
		c.face(u, v, x, k.normal)
		c.rub(u, set.U, k.of[0], k.normal, out)
		c.rub(v, set.V, k.of[1], k.normal, out)
	}
	c.straighten(half, k, out)
}

// tension adds the pull of yarns: k times the change of length, along the yarn.
func (c *Cloth) tension(links []link, x []r3.Vec, out []contact.Sum) {
	for i := range links {
		l := &links[i]
		a, b := &x[l.a], &x[l.b]
		dx, dy, dz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
		s := l.k * (1 - c.h/math.Sqrt(max(dx*dx+dy*dy+dz*dz, tiny)))
		dx, dy, dz = s*dx, s*dy, s*dz
		add(&out[l.a].Force, dx, dy, dz)
		add(&out[l.b].Force, -dx, -dy, -dz)
	}
}

// tiny is the square of a length no yarn shrinks to, m²; it keeps crossings
// that fall together from dividing by nothing.
const tiny = 1e-24

// add adds to a force, N.
func add(f *r3.Vec, x, y, z float64) { f.X, f.Y, f.Z = f.X+x, f.Y+y, f.Z+z }
