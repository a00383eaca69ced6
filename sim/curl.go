package sim

import (
	"math"
	"sort"

	"cowl/sim/contact"
	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r3"
)

// curls is how the yarns bend at the nodes of one half of the cloth: their second differences
// p − 2o + n. The cells ask for them and pull at them, so both are kept until the
// forces are laid on the nodes.
type curls struct {
	of     [2][]r3.Vec // m, by warp and weft; len = nodes
	pull   [2][]r3.Vec // N, of the cells
	normal []r3.Vec    // unit, len = nodes; of what rubs
}

// newCurls returns room for n nodes.
func newCurls(n int) *curls {
	k := &curls{normal: make([]r3.Vec, n)}
	for dir := range k.of {
		k.of[dir], k.pull[dir] = make([]r3.Vec, n), make([]r3.Vec, n)
	}
	return k
}

// in returns the curls of both yarns in the middle of a cell together, m.
func (k *curls) in(q *cell) r3.Vec {
	u, v := k.of[0], k.of[1]
	a, b, c, d := &u[q.o], &u[q.u], &u[q.v], &u[q.d]
	e, f, g, h := &v[q.o], &v[q.u], &v[q.v], &v[q.d]
	if q.rim == nil {
		return r3.Vec{
			X: 0.25 * (a.X + b.X + c.X + d.X + e.X + f.X + g.X + h.X),
			Y: 0.25 * (a.Y + b.Y + c.Y + d.Y + e.Y + f.Y + g.Y + h.Y),
			Z: 0.25 * (a.Z + b.Z + c.Z + d.Z + e.Z + f.Z + g.Z + h.Z),
		}
	}
	var s r3.Vec
	for dir, t := range q.rim {
		for j, n := range q.corners() {
			s = r3.Add(s, r3.Scale(t[j], k.of[dir][n]))
		}
	}
	return s
}

// pullOn pulls with force f on what in returns.
func (k *curls) pullOn(q *cell, f r3.Vec) {
	if q.rim == nil {
		x, y, z := 0.25*f.X, 0.25*f.Y, 0.25*f.Z
		for dir := range k.pull {
			p := k.pull[dir]
			add(&p[q.o], x, y, z)
			add(&p[q.u], x, y, z)
			add(&p[q.v], x, y, z)
			add(&p[q.d], x, y, z)
		}
		return
	}
	for dir, t := range q.rim {
		for j, n := range q.corners() {
			add(&k.pull[dir][n], t[j]*f.X, t[j]*f.Y, t[j]*f.Z)
		}
	}
}

// span is a run, from first to before last.
type span struct{ first, last int }

// spans returns for each half the stencils at the nodes that its cells touch, and its own, of a
// list in the order of its nodes.
func spans(list []stencil, cells []cell) [2]span {
	var out [2]span
	for half := range out {
		lo, hi := forkjoin.Half(len(list), half)
		for _, q := range part(cells, half) {
			n := q.corners()
			least, most := min(n[0], n[1], n[2], n[3]), max(n[0], n[1], n[2], n[3])
			lo = min(lo, sort.Search(len(list), func(i int) bool { return list[i].o >= least }))
			hi = max(hi, sort.Search(len(list), func(i int) bool { return list[i].o > most }))
		}
		out[half] = span{lo, hi}
	}
	return out
}

// curl reads the curls that one half asks for off the nodes at x.
func (c *Cloth) curl(half int, x []r3.Vec, k *curls) {
	for dir, list := range [2][]stencil{c.bendU, c.bendV} {
		r, of, pull := c.spans[dir][half], k.of[dir], k.pull[dir]
		for i := r.first; i < r.last; i++ {
			s := &list[i]
			of[s.o], pull[s.o] = s.curl(x), r3.Vec{}
		}
	}
}

// curl returns p − 2o + n, m.
func (s *stencil) curl(x []r3.Vec) r3.Vec {
	p, o, n := &x[s.p], &x[s.o], &x[s.n]
	return r3.Vec{X: p.X - 2*o.X + n.X, Y: p.Y - 2*o.Y + n.Y, Z: p.Z - 2*o.Z + n.Z}
}

// straighten adds to out what the cells of one half pull at the curls, and for its own the
// forces of ½k|p − 2o + n|², less where it softens.
func (c *Cloth) straighten(half int, k *curls, out []contact.Sum) {
	for dir, list := range [2][]stencil{c.bendU, c.bendV} {
		r, of, pull := c.spans[dir][half], k.of[dir], k.pull[dir]
		lo, hi := forkjoin.Half(len(list), half)
		for i := r.first; i < r.last; i++ {
			s := &list[i]
			f := pull[s.o]
			if lo <= i && i < hi {
				f = r3.Sub(f, r3.Scale(c.stiff(s, of[s.o]), of[s.o]))
			}
			s.pull(f, out)
		}
	}
}

// stiff returns the stiffness of a stencil with curl d (m), N/m.
func (c *Cloth) stiff(s *stencil, d r3.Vec) float64 {
	if c.soft == 0 {
		return s.k
	}
	return s.k * secant(c.soft*math.Sqrt(d.X*d.X+d.Y*d.Y+d.Z*d.Z)/(c.h*c.h))
}

// pull lays a force on the curl onto the three nodes.
func (s *stencil) pull(f r3.Vec, out []contact.Sum) {
	add(&out[s.p].Force, f.X, f.Y, f.Z)
	add(&out[s.o].Force, -2*f.X, -2*f.Y, -2*f.Z)
	add(&out[s.n].Force, f.X, f.Y, f.Z)
}
