package contact

import (
	"math"

	"cowl/mesh/lattice"
	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// primitive is what a node brings to contact: itself, the edges that begin at it
// along warp, weft and diagonal, and the two triangles of its cell. Without the
// diagonals cells turn inside out in tight folds.
type primitive struct {
	end  [3]int32   // far ends of warp, weft and diagonal, lattice.None where missing
	side [2]int32   // corners of the cell beside the node; at the tip of a slit a yarn may leave for another
	node float64    // 0..1, share of a cell of cloth that the node carries
	edge [3]float64 // 0..1, the same of the edges
	cell float64    // 0..1, the same of the cell
}

// primitivesOf sorts the parts of a lattice by the node that owns them.
func primitivesOf(l *lattice.Lattice) []primitive {
	cell := l.Spacing * l.Spacing
	out := make([]primitive, len(l.Rest))
	for i := range out {
		b := primitive{end: [3]int32{l.U[i].Next, l.V[i].Next, lattice.None}, side: [2]int32{lattice.None, lattice.None},
			node: l.Area[i] / cell}
		b.edge[0], b.edge[1] = l.U[i].Link/cell, l.V[i].Link/cell
		if q := l.Cell[i].Corner; q[0] != lattice.None {
			b.side = [2]int32{q[1], q[2]}
			b.end[2], b.edge[2], b.cell = q[3], l.Cell[i].Area/cell, l.Cell[i].Area/cell
		}
		out[i] = b
	}
	return out
}

// ball is a sphere that holds a part of the cloth.
type ball struct {
	at r3.Vec  // m
	r  float64 // m
}

// near reports whether two parts may lie within reach (m).
func (a *ball) near(b *ball, reach float64) bool {
	x, y, z, r := a.at.X-b.at.X, a.at.Y-b.at.Y, a.at.Z-b.at.Z, reach+a.r+b.r
	return x*x+y*y+z*z < r*r
}

// rod is an edge.
type rod struct {
	mid, way r3.Vec  // m, its middle, and from its beginning to its end
	half     float64 // m, of its length
}

// near reports whether two edges may lie within reach (m): not if the balls round them are
// farther apart, nor if they are so on the line between their middles. That is quicker to
// see than where they are nearest, and most pairs are told by it.
func (a *rod) near(b *rod, reach float64) bool {
	x, y, z := b.mid.X-a.mid.X, b.mid.Y-a.mid.Y, b.mid.Z-a.mid.Z
	apart, r := x*x+y*y+z*z, reach+a.half+b.half
	if apart >= r*r {
		return false
	}
	u, v := a.way.X*x+a.way.Y*y+a.way.Z*z, b.way.X*x+b.way.Y*y+b.way.Z*z
	between := apart - (math.Abs(u)+math.Abs(v))/2 // on that line, times the way between the middles
	return between <= 0 || between*between <= reach*reach*apart
}

// bounds hold a primitive: all of it, its node, its edges.
type bounds struct {
	all, node ball
	edge      [3]rod
}

// hold sets the bounds of the primitives lo to hi at x and returns the largest
// radius, m.
func (s *Self) hold(lo, hi int, x []r3.Vec) float64 {
	var most float64
	for i := lo; i < hi; i++ {
		b := &s.bounds[i]
		b.node.at = x[i]
		sum, n := x[i], 1.0
		for k, e := range s.primitives[i].end {
			if e == lattice.None {
				continue
			}
			way := r3.Sub(x[e], x[i])
			b.edge[k] = rod{r3.Scale(0.5, r3.Add(x[i], x[e])), way, math.Sqrt(r3.Norm2(way)) / 2}
			sum, n = r3.Add(sum, x[e]), n+1
		}
		at := r3.Scale(1/n, sum)
		r := r3.Norm2(r3.Sub(x[i], at))
		for _, e := range s.primitives[i].end {
			if e != lattice.None {
				r = math.Max(r, r3.Norm2(r3.Sub(x[e], at)))
			}
		}
		for _, e := range s.primitives[i].side {
			if e != lattice.None {
				r = math.Max(r, r3.Norm2(r3.Sub(x[e], at)))
			}
		}
		b.all, s.mids[i] = ball{at, math.Sqrt(r)}, at
		most = math.Max(most, b.all.r)
	}
	return most
}

// listed is what a batch of nodes found: crossings against triangles and
// edges against edges, apart so that like is looked at after like.
type listed struct{ corners, edges []found }

// batches is in how many the nodes are looked round for pairs. A node looks only at those
// behind it, so halves would be work for one core; batches are taken as cores come free,
// and their pairs strung together in the order of the nodes.
const batches = 32

// found is a pair to be listed, and how much farther than the gap it is, m; 0: it
// is near, and its check is due at once.
type found struct {
	pair
	left float64
}

// list collects every pair that lies within reach and is not one fold, in the
// order of the nodes that own them.
func (s *Self) list(x []r3.Vec, motion float64, c *forkjoin.Pair) {
	var most [2]float64
	c.Both(func(half int) {
		lo, hi := forkjoin.Half(len(x), half)
		most[half] = s.hold(lo, hi, x)
	})
	s.bins.fill(s.mids, s.reach+2*max(most[0], most[1]))
	s.batch.Store(0)
	c.Both(func(int) {
		for b := int(s.batch.Add(1)) - 1; b < batches; b = int(s.batch.Add(1)) - 1 {
			h := &s.found[b]
			h.corners, h.edges = h.corners[:0], h.edges[:0]
			for i := b * len(x) / batches; i < (b+1)*len(x)/batches; i++ {
				s.around(int32(i), x, h)
			}
		}
	})
	if s.Friction > 0 {
		s.stow()
	}
	s.watchAll(motion)
	if s.Friction > 0 {
		s.take()
	}
}

// around lists the pairs of primitive i and all primitives behind it.
func (s *Self) around(i int32, x []r3.Vec, out *listed) {
	o := &s.bounds[i].all
	s.bins.visit(o.at, func(ids []int32) {
		for _, j := range ids {
			if j > i && o.near(&s.bounds[j].all, s.reach) {
				s.cross(i, j, x, out)
			}
		}
	})
}

// cross lists the pairs between two primitives.
func (s *Self) cross(i, j int32, x []r3.Vec, out *listed) {
	a, b := &s.primitives[i], &s.primitives[j]
	// Bundles this far apart in the flat share no fold, whichever their nodes.
	clear := s.near + 2*math.Sqrt2*s.spacing
	sure := r2.Norm2(r2.Sub(s.flat[i], s.flat[j])) > clear*clear && !(s.sewn(i) && s.sewn(j))
	s.onto(i, j, sure, x, out)
	s.onto(j, i, sure, x, out)
	for k, e := range a.end {
		if e == lattice.None {
			continue
		}
		for l, f := range b.end {
			if f == lattice.None || !s.bounds[i].edge[k].near(&s.bounds[j].edge[l], s.reach) {
				continue
			}
			if sure || (s.far(i, j) && s.far(i, f) && s.far(e, j) && s.far(e, f)) {
				s.keep(pair{node: [4]int32{i, e, j, f}, edges: true, stiff: s.Stiff * min(a.edge[k], b.edge[l])}, x, out)
			}
		}
	}
}

// onto lists node i against the triangles of primitive j.
func (s *Self) onto(i, j int32, sure bool, x []r3.Vec, out *listed) {
	b := &s.primitives[j]
	u, v, d := b.side[0], b.side[1], b.end[2]
	if d == lattice.None || !s.bounds[i].node.near(&s.bounds[j].all, s.reach) || !(sure || (s.far(i, j) && s.far(i, d))) {
		return
	}
	stiff := s.Stiff * min(s.primitives[i].node, b.cell)
	if (sure || s.far(i, u)) && !beyond(s.reach, &x[i], &x[j], &x[u], &x[d]) {
		s.keep(pair{node: [4]int32{i, j, u, d}, stiff: stiff}, x, out)
	}
	if (sure || s.far(i, v)) && !beyond(s.reach, &x[i], &x[j], &x[d], &x[v]) {
		s.keep(pair{node: [4]int32{i, j, d, v}, stiff: stiff}, x, out)
	}
}

// far reports whether two nodes are far enough apart in the flat to be two layers.
func (s *Self) far(a, b int32) bool {
	return s.parted(s.flat[a], s.flat[b]) &&
		(s.closed == nil || s.parted(s.closed[a], s.flat[b]) && s.parted(s.flat[a], s.closed[b]))
}

// parted reports whether two flat places lie too far apart for one fold.
func (s *Self) parted(p, q r2.Vec) bool { return r2.Norm2(r2.Sub(p, q)) > s.near*s.near }

// sewn reports whether a node lies beside a sewn dart.
func (s *Self) sewn(i int32) bool { return s.closed != nil && !math.IsInf(s.closed[i].X, 1) }

// keep lists a pair if it lies within reach.
func (s *Self) keep(p pair, x []r3.Vec, out *listed) {
	at, _ := p.meet(x)
	d := p.apart(p.weights(at), x)
	l2 := d.X*d.X + d.Y*d.Y + d.Z*d.Z
	if l2 > s.reach*s.reach {
		return
	}
	f := found{pair: p}
	if l := math.Sqrt(l2); l > s.Gap+soonSelf {
		f.left = l - s.Gap
	}
	if p.edges {
		out.edges = append(out.edges, f)
	} else {
		out.corners = append(out.corners, f)
	}
}
