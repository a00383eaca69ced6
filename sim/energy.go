package sim

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// Energy is the energy stored in cloth and tapes by kind, J.
type Energy struct {
	Tensile float64 // along the yarns
	Shear   float64 // in the angle between the yarns
	Bend    float64 // along the yarns and in twist
	Tape    float64 // in stay tapes
}

// Total returns the sum of the stored energies, J.
func (e Energy) Total() float64 { return e.Tensile + e.Shear + e.Bend + e.Tape }

// Stored returns the elastic energy of cloth and tapes with the nodes at x (m,
// len = nodes).
func (s *System) Stored(x []r3.Vec) Energy {
	e := s.Cloth.Stored(x)
	for k := range s.Ties {
		e.Tape += s.Ties[k].energy(x)
	}
	return e
}

// Stored returns the elastic energy of the cloth with its nodes at x (m, len =
// nodes). It follows the energies of Cloth one by one and shares nothing with
// the forces, which tests hold against it.
func (c *Cloth) Stored(x []r3.Vec) Energy {
	var e Energy
	for _, l := range c.links {
		s := r3.Norm(r3.Sub(x[l.b], x[l.a])) - c.h
		e.Tensile += l.k * s * s / 2
	}
	for _, list := range [2][]stencil{c.bendU, c.bendV} {
		for _, s := range list {
			d := r3.Norm(r3.Sub(r3.Add(x[s.p], x[s.n]), r3.Scale(2, x[s.o])))
			e.Bend += s.k * d * d * softened(c.soft*d/(c.h*c.h)) / 2
		}
	}
	for _, q := range c.cells {
		g := c.angle(&q, x)
		e.Shear += q.shear * (g*g/2 + jamEnergy(g, c.lock))
		e.Bend += q.twist * r3.Norm2(r3.Sub(r3.Add(x[q.o], x[q.d]), r3.Add(x[q.u], x[q.v]))) / 2
	}
	return e
}

// angle returns the shear angle of the cell at the middle of its cloth, rad, the
// bend of its yarns taken into account (see shearAndTwist).
func (c *Cloth) angle(q *cell, x []r3.Vec) float64 {
	mean := func(a, b, c, d int32, t float64) r3.Vec {
		return r3.Add(r3.Scale(1-t, r3.Sub(x[b], x[a])), r3.Scale(t, r3.Sub(x[d], x[c])))
	}
	a, b := mean(q.o, q.u, q.v, q.d, q.midV), mean(q.o, q.v, q.u, q.d, q.midU)
	t := r3.Sub(r3.Add(x[q.o], x[q.d]), r3.Add(x[q.u], x[q.v]))
	n := r3.Cross(a, b)
	known, _ := c.known(r3.Norm2(n))
	twist, bend := r3.Dot(t, n), r3.Dot(c.curlOf(q, x), n)
	s := (r3.Dot(a, b) + known*twist*(bend/8-q.off*twist)) / (r3.Norm(a) * r3.Norm(b))
	return math.Asin(math.Max(-1, math.Min(1, s)))
}

// curlOf returns the curls of both yarns in the middle of a cell together, m.
func (c *Cloth) curlOf(q *cell, x []r3.Vec) r3.Vec {
	var s r3.Vec
	for dir, t := range q.tells() {
		for j, n := range q.corners() {
			near := c.stiffness[n].near[2*dir:]
			s = r3.Add(s, r3.Scale(t[j], r3.Sub(r3.Add(x[near[0]], x[near[1]]), r3.Scale(2, x[n]))))
		}
	}
	return s
}

// MaxStrain returns the largest absolute yarn strain over links that carry at
// least a quarter of a cell of cloth.
func (c *Cloth) MaxStrain(x []r3.Vec) float64 {
	var m float64
	c.strains(x, func(_, _ int32, strain float64) { m = math.Max(m, math.Abs(strain)) })
	return m
}

// Overstrained returns the ends of the links, of those that MaxStrain looks at,
// whose absolute strain is above a limit.
func (c *Cloth) Overstrained(x []r3.Vec, limit float64) [][2]int32 {
	var out [][2]int32
	c.strains(x, func(a, b int32, strain float64) {
		if math.Abs(strain) > limit {
			out = append(out, [2]int32{a, b})
		}
	})
	return out
}

// strains calls f with the ends and the strain of every link that carries at
// least a quarter of a cell of cloth.
func (c *Cloth) strains(x []r3.Vec, f func(a, b int32, strain float64)) {
	for i := range x {
		for _, a := range [2]lattice.Axis{c.Lattice.U[i], c.Lattice.V[i]} {
			if a.Next != lattice.None && a.Link >= 0.25*c.h*c.h {
				f(int32(i), a.Next, r3.Norm(r3.Sub(x[a.Next], x[i]))/c.h-1)
			}
		}
	}
}
