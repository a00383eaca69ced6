package form

import (
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// meshShare is the spacing of the grid from which the surface is taken as a
// share of the hip girth, so that all sizes have about as many triangles.
const meshShare = 0.0104

// net is the wearer's left half of a surface net: one vertex in each grid cell
// that the surface crosses, four of them joined around each crossed grid edge
// (S. F. F. Gibson, Constrained elastic surface nets, MICCAI 1998). Cell layer
// 0 straddles X = 0, so its vertices lie in the middle plane and the other
// half is the mirror image.
type net struct {
	shape      *shape
	h          float64 // m, spacing
	nx, ny, nz int     // nodes
	y0, z0     float64
	val        []float64 // value at the nodes, x slowest, z fastest
	cell       []int32   // vertex of each cell or −1, same indexing
	pos        []r3.Vec
	quads      [][4]int32
}

// extract returns the surface of s, a form of the given hip girth.
func extract(s *shape, hip float64) mesh.Surface {
	n := newNet(s, hip)
	n.sample()
	n.place()
	n.join()
	n.relax()
	return n.close()
}

// newNet sizes a grid that holds the form with a margin of two cells.
func newNet(s *shape, hip float64) *net {
	var half, front, back float64
	for _, l := range s.table {
		front, back = max(front, l.front+s.mound.height), max(back, l.back)
		if l.y < s.at.underarm {
			half = max(half, l.half)
		}
	}
	half = max(half, s.tip.X+plateRound)
	h := meshShare * hip
	n := &net{shape: s, h: h, y0: s.at.bottom - 2*h, z0: -back - 2*h}
	n.nx = int(half/h) + 4
	n.ny = int((s.at.top-s.at.bottom)/h) + 5
	n.nz = int((front+back)/h) + 5
	n.val = make([]float64, n.nx*n.ny*n.nz)
	n.cell = make([]int32, len(n.val))
	return n
}

func (n *net) index(i, j, k int) int { return (i*n.ny+j)*n.nz + k }

func (n *net) node(i, j, k int) r3.Vec {
	return r3.Vec{X: (float64(i) - 0.5) * n.h, Y: n.y0 + float64(j)*n.h, Z: n.z0 + float64(k)*n.h}
}

// sample evaluates the shape at the nodes. Far from the surface only the sign
// matters, and the cheap section function has it.
func (n *net) sample() {
	for j := 0; j < n.ny; j++ {
		y := n.node(0, j, 0).Y
		c := n.shape.contour(y)
		for i := 0; i < n.nx; i++ {
			for k := 0; k < n.nz; k++ {
				p := n.node(i, j, k)
				v := n.shape.raw(p.X, y, p.Z, c)
				if v < 0.5 {
					v = n.shape.value(p)
				}
				n.val[n.index(i, j, k)] = v
			}
		}
	}
}

// place puts a vertex into each crossed cell: the mean of the crossings on the
// cell's edges, then moved onto the surface.
func (n *net) place() {
	for i := range n.cell {
		n.cell[i] = -1
	}
	for i := 0; i+1 < n.nx; i++ {
		for j := 0; j+1 < n.ny; j++ {
			for k := 0; k+1 < n.nz; k++ {
				if p, ok := n.crossing(i, j, k); ok {
					if i == 0 {
						p.X = 0
					}
					n.cell[n.index(i, j, k)] = int32(len(n.pos))
					n.pos = append(n.pos, n.shape.settle(p))
				}
			}
		}
	}
}

// crossing returns the mean of the edge crossings of a cell.
func (n *net) crossing(i, j, k int) (r3.Vec, bool) {
	var sum r3.Vec
	var count float64
	for a := 0; a < 8; a++ {
		for _, bit := range []int{1, 2, 4} {
			if a&bit != 0 {
				continue
			}
			b := a | bit
			va := n.val[n.index(i+a&1, j+a>>1&1, k+a>>2&1)]
			vb := n.val[n.index(i+b&1, j+b>>1&1, k+b>>2&1)]
			if (va < 0) == (vb < 0) {
				continue
			}
			pa, pb := n.node(i+a&1, j+a>>1&1, k+a>>2&1), n.node(i+b&1, j+b>>1&1, k+b>>2&1)
			sum = r3.Add(sum, r3.Add(pa, r3.Scale(va/(va-vb), r3.Sub(pb, pa))))
			count++
		}
	}
	return r3.Scale(1/max(count, 1), sum), count > 0
}

// join makes a quad around each crossed grid edge, counter-clockwise seen from
// outside.
func (n *net) join() {
	for i := 1; i < n.nx; i++ {
		for j := 1; j < n.ny; j++ {
			for k := 1; k < n.nz; k++ {
				n.edge([3]int{i, j, k}, 0)
				n.edge([3]int{i, j, k}, 1)
				n.edge([3]int{i, j, k}, 2)
			}
		}
	}
}

// edge joins the four cells around the grid edge that leaves node p along
// axis.
func (n *net) edge(p [3]int, axis int) {
	q := p
	q[axis]++
	if q[0] >= n.nx || q[1] >= n.ny || q[2] >= n.nz {
		return
	}
	in := n.val[n.index(p[0], p[1], p[2])] < 0
	if in == (n.val[n.index(q[0], q[1], q[2])] < 0) {
		return
	}
	b, c := (axis+1)%3, (axis+2)%3
	var quad [4]int32
	for m, o := range [4][2]int{{1, 1}, {0, 1}, {0, 0}, {1, 0}} {
		r := p
		r[b] -= o[0]
		r[c] -= o[1]
		quad[m] = n.cell[n.index(r[0], r[1], r[2])]
	}
	if !in {
		quad[1], quad[3] = quad[3], quad[1]
	}
	n.quads = append(n.quads, quad)
}

// relax evens the vertices out along the surface: twice towards the mean of
// the neighbours, each time back onto the surface.
func (n *net) relax() {
	for range 2 {
		sum := make([]r3.Vec, len(n.pos))
		count := make([]float64, len(n.pos))
		for _, q := range n.quads {
			for m, v := range q {
				for _, w := range []int32{q[(m+1)%4], q[(m+3)%4]} {
					sum[v] = r3.Add(sum[v], n.pos[w])
					count[v]++
				}
			}
		}
		for v, p := range n.pos {
			q := r3.Scale(0.5, r3.Add(p, r3.Scale(1/count[v], sum[v])))
			if p.X == 0 {
				q.X = 0
			}
			n.pos[v] = n.shape.settle(q)
		}
	}
}

// close splits the quads along the shorter diagonal, sets the normals and adds
// the mirror half.
func (n *net) close() mesh.Surface {
	s := mesh.Surface{Pos: append([]r3.Vec(nil), n.pos...)}
	for _, q := range n.quads {
		if r3.Norm2(r3.Sub(n.pos[q[0]], n.pos[q[2]])) > r3.Norm2(r3.Sub(n.pos[q[1]], n.pos[q[3]])) {
			q = [4]int32{q[1], q[2], q[3], q[0]}
		}
		s.Tris = append(s.Tris, [3]int32{q[0], q[1], q[2]}, [3]int32{q[0], q[2], q[3]})
	}
	s.Normal = n.normals()
	twin := make([]int32, len(n.pos))
	for v, p := range n.pos {
		twin[v] = int32(v)
		if p.X != 0 {
			twin[v] = int32(len(s.Pos))
			s.Pos = append(s.Pos, flip(p, -1))
			s.Normal = append(s.Normal, flip(s.Normal[v], -1))
		}
	}
	for _, t := range s.Tris[:len(s.Tris):len(s.Tris)] {
		s.Tris = append(s.Tris, [3]int32{twin[t[0]], twin[t[2]], twin[t[1]]})
	}
	return s
}

// normals returns the unit gradients at the vertices; on the middle plane they
// have no X by symmetry.
func (n *net) normals() []r3.Vec {
	out := make([]r3.Vec, len(n.pos))
	for v, p := range n.pos {
		g := n.shape.gradient(p)
		if p.X == 0 {
			g.X = 0
		}
		out[v] = r3.Unit(g)
	}
	return out
}
