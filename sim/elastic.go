package sim

import (
	"math"

	"cowl/sim/contact"
	"cowl/sim/crew"

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

// cell is a square of four crossings 00, 10, 01, 11 along warp and weft.
type cell struct {
	o, u, v, d int32
	shear      float64 // J, shear stiffness × cloth
	rub        float64 // J, the same of the friction of shear
	twist      float64 // N/m, coefficient of the mixed difference o − u − v + d
	midU, midV float64 // 0..1, middle of the cloth in the cell
}

// part returns one half of a list.
func part[T any](list []T, half int) []T {
	lo, hi := crew.Half(len(list), half)
	return list[lo:hi]
}

// elastic adds the elastic forces of one half of the cloth to out (len = nodes),
// with the nodes at x. Sets of friction that slip move.
func (c *Cloth) elastic(half int, x []r3.Vec, set Set, out []contact.Sum) {
	c.pull(part(c.links, half), x, out)
	c.shearAndTwist(part(c.cells, half), x, set.Shear, out)
	if c.rubs {
		c.rub(part(c.bendU, half), x, set.U, out)
		c.rub(part(c.bendV, half), x, set.V, out)
	}
	c.bend(part(c.bendU, half), x, out)
	c.bend(part(c.bendV, half), x, out)
}

// pull adds the pull of yarns: k times the change of length, along the yarn.
func (c *Cloth) pull(links []link, x []r3.Vec, out []contact.Sum) {
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

// bend adds the forces of ½k|p − 2o + n|², less where it softens.
func (c *Cloth) bend(list []stencil, x []r3.Vec, out []contact.Sum) {
	for i := range list {
		s := &list[i]
		p, o, n := &x[s.p], &x[s.o], &x[s.n]
		dx, dy, dz := p.X-2*o.X+n.X, p.Y-2*o.Y+n.Y, p.Z-2*o.Z+n.Z
		k := s.k
		if c.soft > 0 {
			k *= secant(c.soft * math.Sqrt(dx*dx+dy*dy+dz*dz) / (c.h * c.h))
		}
		dx, dy, dz = k*dx, k*dy, k*dz
		add(&out[s.p].Force, -dx, -dy, -dz)
		add(&out[s.o].Force, 2*dx, 2*dy, 2*dz)
		add(&out[s.n].Force, -dx, -dy, -dz)
	}
}

// shearAndTwist adds the forces of ½Gγ² (and what jams, see jam) for the
// departure γ from a right angle between the mean warp edge a and the mean weft
// edge b of a cell, of its friction, whose sets move where it slips, and of twist
// ½t|o − u − v + d|².
func (c *Cloth) shearAndTwist(cells []cell, x []r3.Vec, set []float64, out []contact.Sum) {
	for i := range cells {
		q := &cells[i]
		o, u, v, d := &x[q.o], &x[q.u], &x[q.v], &x[q.d]
		// t is the mixed difference; a = u − o + midV·t and b = v − o + midU·t.
		tx, ty, tz := o.X-u.X-v.X+d.X, o.Y-u.Y-v.Y+d.Y, o.Z-u.Z-v.Z+d.Z
		ax, ay, az := u.X-o.X+q.midV*tx, u.Y-o.Y+q.midV*ty, u.Z-o.Z+q.midV*tz
		bx, by, bz := v.X-o.X+q.midU*tx, v.Y-o.Y+q.midU*ty, v.Z-o.Z+q.midU*tz
		aa, bb, ab := max(ax*ax+ay*ay+az*az, tiny), max(bx*bx+by*by+bz*bz, tiny), ax*bx+ay*by+az*bz
		p := 1 / (aa * bb)
		k := -q.shear * c.steep(ab*ab*p) * ab * p // dE/ds·s/(|a||b|) for the sine s
		if c.slides {
			k -= q.slide(&set[q.o], ab, p)
		}
		qa, qb := k*ab*p*bb, k*ab*p*aa
		fax, fay, faz := k*bx-qa*ax, k*by-qa*ay, k*bz-qa*az
		fbx, fby, fbz := k*ax-qb*bx, k*ay-qb*by, k*az-qb*bz
		// Each mean edge carries its force to t with its share.
		gx, gy, gz := q.midV*fax+q.midU*fbx-q.twist*tx, q.midV*fay+q.midU*fby-q.twist*ty, q.midV*faz+q.midU*fbz-q.twist*tz
		add(&out[q.o].Force, gx-fax-fbx, gy-fay-fby, gz-faz-fbz)
		add(&out[q.u].Force, fax-gx, fay-gy, faz-gz)
		add(&out[q.v].Force, fbx-gx, fby-gy, fbz-gz)
		add(&out[q.d].Force, gx, gy, gz)
	}
}
