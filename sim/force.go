package sim

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// Energy is the energy stored in the cloth by kind, J.
type Energy struct {
	Pull  float64 // along the yarns
	Shear float64 // in the angle between the yarns
	Bend  float64 // along the yarns and in twist
}

// Total returns the sum of the stored energies, J.
func (e Energy) Total() float64 { return e.Pull + e.Shear + e.Bend }

// owned holds the forces (N) that a node owns as the low end of its links, the
// centre of its bending stencils and the low corner of its cell.
type owned struct {
	u, v   r3.Vec // pull on the low end of the link
	sa, sb r3.Vec // shear force on the mean warp edge and the mean weft edge of the cell
	bu, bv r3.Vec // coefficient × second difference
	t      r3.Vec // coefficient × (x00 − x10 − x01 + x11)
}

// around holds the neighbours that a node reads; a missing one is the spare
// entry behind the last node, which owns no force.
type around struct{ up, un, vp, vn, diag int32 }

// neighbours lists what each node of the lattice reads.
func neighbours(l *lattice.Lattice) []around {
	spare := int32(len(l.Rest))
	or := func(n int32) int32 {
		if n == lattice.None {
			return spare
		}
		return n
	}
	out := make([]around, len(l.Rest))
	for i := range out {
		out[i] = around{or(l.U[i].Prev), or(l.U[i].Next), or(l.V[i].Prev), or(l.V[i].Next), spare}
	}
	for i := range l.Cell {
		if q := l.Cell[i].Corner; q[0] != lattice.None {
			out[q[3]].diag = int32(i)
		}
	}
	return out
}

// own computes what every node owns when the nodes lie at x.
func (c *Cloth) own(x []r3.Vec, f []owned) {
	l := c.Lattice
	for i := range x {
		u, v, q, o := &l.U[i], &l.V[i], &l.Cell[i].Corner, &f[i]
		if u.Next != lattice.None {
			o.u = spring(&x[i], &x[u.Next], c.pullU[i], c.h)
		}
		if v.Next != lattice.None {
			o.v = spring(&x[i], &x[v.Next], c.pullV[i], c.h)
		}
		if c.bendU[i] != 0 {
			o.bu = bend(&x[u.Prev], &x[i], &x[u.Next], c.bendU[i])
		}
		if c.bendV[i] != 0 {
			o.bv = bend(&x[v.Prev], &x[i], &x[v.Next], c.bendV[i])
		}
		if q[0] != lattice.None {
			a, b := c.edges(i, x)
			o.sa, o.sb = c.sheared(a, b, c.shear[i])
			o.t = saddle(&x[q[0]], &x[q[1]], &x[q[2]], &x[q[3]], c.twist[i])
		}
	}
}

// spring returns the pull on a towards b of a spring of stiffness k and rest length l0.
func spring(a, b *r3.Vec, k, l0 float64) r3.Vec {
	x, y, z := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	l := math.Sqrt(x*x + y*y + z*z)
	if l == 0 {
		return r3.Vec{}
	}
	s := k * (l - l0) / l
	return r3.Vec{X: s * x, Y: s * y, Z: s * z}
}

// bend returns b times the second difference p − 2o + n.
func bend(p, o, n *r3.Vec, b float64) r3.Vec {
	return r3.Vec{X: b * (p.X - 2*o.X + n.X), Y: b * (p.Y - 2*o.Y + n.Y), Z: b * (p.Z - 2*o.Z + n.Z)}
}

// saddle returns t times the mixed difference of the corners of a cell.
func saddle(a, b, c, d *r3.Vec, t float64) r3.Vec {
	return r3.Vec{X: t * (a.X - b.X - c.X + d.X), Y: t * (a.Y - b.Y - c.Y + d.Y), Z: t * (a.Z - b.Z - c.Z + d.Z)}
}

// edges returns the mean warp and weft edge of cell i at the middle of its cloth.
func (c *Cloth) edges(i int, x []r3.Vec) (a, b r3.Vec) {
	q, m := &c.Lattice.Cell[i].Corner, c.Lattice.Cell[i].Mid
	o, u, v, d := &x[q[0]], &x[q[1]], &x[q[2]], &x[q[3]]
	p, r := 1-m.Y, 1-m.X
	a = r3.Vec{X: p*(u.X-o.X) + m.Y*(d.X-v.X), Y: p*(u.Y-o.Y) + m.Y*(d.Y-v.Y), Z: p*(u.Z-o.Z) + m.Y*(d.Z-v.Z)}
	b = r3.Vec{X: r*(v.X-o.X) + m.X*(d.X-u.X), Y: r*(v.Y-o.Y) + m.X*(d.Y-u.Y), Z: r*(v.Z-o.Z) + m.X*(d.Z-u.Z)}
	return a, b
}

// flattest is the smallest cosine of the shear angle that the shear force is
// divided by; beyond 78° of shear the cloth is a bundle of yarns.
const flattest = 0.2

// sheared returns the forces −∂E/∂a and −∂E/∂b of a cell, where E = ½gγ² plus
// what jams (see jam) for the departure γ from a right angle between a and b.
func (c *Cloth) sheared(a, b r3.Vec, g float64) (fa, fb r3.Vec) {
	la, lb := math.Sqrt(a.X*a.X+a.Y*a.Y+a.Z*a.Z), math.Sqrt(b.X*b.X+b.Y*b.Y+b.Z*b.Z)
	if la == 0 || lb == 0 {
		return r3.Vec{}, r3.Vec{}
	}
	s := (a.X*b.X + a.Y*b.Y + a.Z*b.Z) / (la * lb)
	s = max(-1, min(1, s))
	angle := math.Asin(s)
	k := -g * (angle + jam(angle, c.lock)) / max(flattest, math.Sqrt(1-s*s))
	p, qa, qb := k/(la*lb), k*s/(la*la), k*s/(lb*lb)
	fa = r3.Vec{X: p*b.X - qa*a.X, Y: p*b.Y - qa*a.Y, Z: p*b.Z - qa*a.Z}
	fb = r3.Vec{X: p*a.X - qb*b.X, Y: p*a.Y - qb*b.Y, Z: p*a.Z - qb*b.Z}
	return fa, fb
}

// knee is the shear beyond the locking angle at which the slope of the shear
// force has grown elevenfold, rad. Locking angles depend on the rig that
// measured them and no slope is published with them (P. Boisse et al., "The
// bias-extension test for the analysis of in-plane shear properties", 2016), so
// it only has to be steep and smooth.
const knee = 0.1

// jam returns the shear stress over G that jammed yarns add beyond the locking
// angle: 5·x²/knee for the excess x, with a continuous slope.
func jam(angle, lock float64) float64 {
	x := math.Abs(angle) - lock
	if lock == 0 || x <= 0 {
		return 0
	}
	return math.Copysign(5*x*x/knee, angle)
}

// jamEnergy is the integral of jam over the angle.
func jamEnergy(angle, lock float64) float64 {
	x := math.Abs(angle) - lock
	if lock == 0 || x <= 0 {
		return 0
	}
	return 5 * x * x * x / (3 * knee)
}

// gather sets force to weight plus elastic force on every node. A node reads
// what its neighbours own in a fixed order, so the sums do not depend on how
// the work is shared out.
func (c *Cloth) gather(f []owned, force []r3.Vec) {
	cell := c.mid
	for i := range force {
		n, o := &c.near[i], &f[i]
		up, un, vp, vn, dg := &f[n.up], &f[n.un], &f[n.vp], &f[n.vn], &f[n.diag]
		m0, m1, m2, m3 := cell[i], cell[n.up], cell[n.vp], cell[n.diag]
		a0, b0, b1, a2 := 1-m0.Y, 1-m0.X, 1-m1.Y, 1-m2.X
		force[i] = r3.Vec{
			X: o.u.X + o.v.X + 2*(o.bu.X+o.bv.X) - up.u.X - up.bu.X - vp.v.X - vp.bv.X - un.bu.X - vn.bv.X +
				(up.t.X + vp.t.X - o.t.X - dg.t.X) - a0*o.sa.X - b0*o.sb.X + b1*up.sa.X - m1.X*up.sb.X - m2.Y*vp.sa.X + a2*vp.sb.X + m3.Y*dg.sa.X + m3.X*dg.sb.X,
			Y: o.u.Y + o.v.Y + 2*(o.bu.Y+o.bv.Y) - up.u.Y - up.bu.Y - vp.v.Y - vp.bv.Y - un.bu.Y - vn.bv.Y +
				(up.t.Y + vp.t.Y - o.t.Y - dg.t.Y) - a0*o.sa.Y - b0*o.sb.Y + b1*up.sa.Y - m1.X*up.sb.Y - m2.Y*vp.sa.Y + a2*vp.sb.Y + m3.Y*dg.sa.Y + m3.X*dg.sb.Y - c.Load[i],
			Z: o.u.Z + o.v.Z + 2*(o.bu.Z+o.bv.Z) - up.u.Z - up.bu.Z - vp.v.Z - vp.bv.Z - un.bu.Z - vn.bv.Z +
				(up.t.Z + vp.t.Z - o.t.Z - dg.t.Z) - a0*o.sa.Z - b0*o.sb.Z + b1*up.sa.Z - m1.X*up.sb.Z - m2.Y*vp.sa.Z + a2*vp.sb.Z + m3.Y*dg.sa.Z + m3.X*dg.sb.Z,
		}
	}
}

// Stored returns the elastic energy of the cloth with its nodes at x.
func (c *Cloth) Stored(x []r3.Vec) Energy {
	var e Energy
	half := func(f r3.Vec, k float64) float64 {
		if k == 0 {
			return 0
		}
		return r3.Norm2(f) / (2 * k)
	}
	f := make([]owned, len(x)+1)
	c.own(x, f)
	for i := range x {
		o := &f[i]
		e.Pull += half(o.u, c.pullU[i]) + half(o.v, c.pullV[i])
		if c.shear[i] != 0 {
			g := c.angle(i, x)
			e.Shear += c.shear[i] * (g*g/2 + jamEnergy(g, c.lock))
		}
		e.Bend += half(o.bu, c.bendU[i]) + half(o.bv, c.bendV[i]) + half(o.t, c.twist[i])
	}
	return e
}

// angle returns the shear angle of cell i, rad.
func (c *Cloth) angle(i int, x []r3.Vec) float64 {
	a, b := c.edges(i, x)
	return math.Asin(math.Max(-1, math.Min(1, r3.Cos(a, b))))
}

// MaxStrain returns the largest absolute yarn strain over links that carry at
// least a quarter of a cell of cloth.
func (c *Cloth) MaxStrain(x []r3.Vec) float64 {
	var m float64
	for i := range x {
		for _, a := range [2]lattice.Axis{c.Lattice.U[i], c.Lattice.V[i]} {
			if a.Next != lattice.None && a.Link >= 0.25*c.h*c.h {
				m = math.Max(m, math.Abs(r3.Norm(r3.Sub(x[a.Next], x[i]))/c.h-1))
			}
		}
	}
	return m
}
