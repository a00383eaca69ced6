package sim

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// burden is the part of a hat in a spring: the row sum of its stiffness matrix
// over the stiffness of the spring, for nodes moved as the hats say.
type burden struct {
	hat int32
	row float64
}

// burdens are the parts of a hat in the shear of a cell: by its rise along the
// warp edge and along the weft edge.
type burdens struct {
	hat        int32
	warp, weft float64
}

// rise is how much the hats rise over some nodes taken with factors, as a
// spring between those nodes would stretch.
type rise struct {
	hat []int32
	by  []float64
}

// over returns the rise of the hats over nodes taken with factors.
func (n *level) over(nodes []int32, factor ...float64) rise {
	var r rise
	for j, node := range nodes {
		for k, h := range n.hat[node] {
			if g := factor[j] * n.height[node][k]; g != 0 {
				r.add(h, g)
			}
		}
	}
	return r
}

func (r *rise) add(hat int32, by float64) {
	for k, h := range r.hat {
		if h == hat {
			r.by[k] += by
			return
		}
	}
	r.hat, r.by = append(r.hat, hat), append(r.by, by)
}

// total returns the sum of the sizes of all rises.
func (r rise) total() float64 {
	var t float64
	for _, g := range r.by {
		t += math.Abs(g)
	}
	return t
}

// tie sums for every spring of the cloth what it is to the hats. Lines of the
// level are yarns, so four hats reach a link or a cell.
func (n *level) tie(c *Cloth) {
	n.links, n.cells = make([][4]burden, len(c.links)), make([][4]burdens, len(c.cells))
	for i, l := range c.links {
		r := n.over([]int32{l.a, l.b}, -1, 1)
		t := r.total()
		for k, h := range r.hat {
			n.links[i][k] = burden{h, math.Abs(r.by[k]) * t}
		}
	}
	for _, list := range [2][]stencil{c.bendU, c.bendV} {
		for _, s := range list {
			n.stay(s.k+s.rub, n.over([]int32{s.p, s.o, s.n}, 1, -2, 1))
		}
	}
	for i, q := range c.cells {
		n.stay(q.twist, n.over([]int32{q.o, q.u, q.v, q.d}, 1, -1, -1, 1))
		n.cells[i] = n.shear(q)
	}
}

// stay adds a spring that is as stiff in any direction.
func (n *level) stay(k float64, r rise) {
	t := r.total()
	for j, h := range r.hat {
		n.still[h] += k * t * math.Abs(r.by[j])
	}
}

// shear returns the parts of the hats in the shear of a cell.
func (n *level) shear(q cell) (out [4]burdens) {
	a, b := n.over([]int32{q.o, q.u}, -1, 1), n.over([]int32{q.o, q.v}, -1, 1)
	t := a.total() + b.total()
	for k, h := range n.hat[q.o] {
		out[k].hat = h
		for j, m := range a.hat {
			if m == h {
				out[k].warp = t * math.Abs(a.by[j])
			}
		}
		for j, m := range b.hat {
			if m == h {
				out[k].weft = t * math.Abs(b.by[j])
			}
		}
	}
	return out
}

// reshape sets the masses of the hats for the cloth at x, as Cloth.reshape does
// those of the nodes: row sums of the stiffness matrix, here of 3 × 3 blocks.
func (n *level) reshape(c *Cloth, x []r3.Vec) {
	for h, k := range n.still {
		n.mass[h] = symmetric{xx: k, yy: k, zz: k}
	}
	for i := range c.links {
		l := &c.links[i]
		d := r3.Sub(x[l.b], x[l.a])
		s := math.Sqrt(max(r3.Norm2(d), tiny))
		tension := math.Abs(l.k * (1 - c.h/s))
		d = r3.Scale(math.Sqrt(l.k)/s, d)
		for _, p := range n.links[i] {
			n.mass[p.hat].add(p.row, tension, d)
		}
	}
	for i := range c.cells {
		q := &c.cells[i]
		k := math.Sqrt(c.stiffest(q)) / c.h
		u, v := r3.Sub(x[q.u], x[q.o]), r3.Sub(x[q.v], x[q.o])
		u, v = r3.Scale(k/math.Sqrt(max(r3.Norm2(u), tiny)), u), r3.Scale(k/math.Sqrt(max(r3.Norm2(v), tiny)), v)
		for _, p := range n.cells[i] {
			n.mass[p.hat].add(p.warp, 0, v)
			n.mass[p.hat].add(p.weft, 0, u)
		}
	}
	for h := range n.mass {
		n.mass[h].finish()
	}
}

// finish turns row sums into a mass that is nowhere much lighter than along the cloth.
func (s *symmetric) finish() {
	least := leastAcross * (s.xx + s.yy + s.zz) / 2
	*s = symmetric{stable * (s.xx + least), stable * (s.yy + least), stable * (s.zz + least), stable * s.xy,
		stable * s.xz, stable * s.yz}
}
