package contact

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// Self keeps layers of one piece of cloth a gap apart: every crossing against
// every triangle and every edge against every edge of the cloth that lies
// farther off in the flat than in space. Crossing against crossing alone would
// let the facing through the front wherever the bias has sheared the cells.
type Self struct {
	Gap   float64 // m, distance kept between middle surfaces
	Stiff float64 // N/m, penalty stiffness of a pair

	tris  [][3]int32
	edges [][2]int32
	far   func(a, b int32) bool // whether two nodes are apart in the flat
	skin  float64               // m, how far beyond the gap pairs are listed
	built float64               // m, travel when the pairs were listed
	pairs []pair
	grid  grid
}

// pair is two parts of cloth that may meet: four nodes, a vertex against a
// triangle or two edges.
type pair struct {
	node  [4]int32
	edges bool
	due   float64 // m, travel before which the two cannot come within the gap
}

// apart is how many spacings two parts must lie apart in the flat to be kept
// apart in space; nearer ones are one fold, held open by its bending.
const apart = 2.2

// NewSelf prepares self-contact of the cloth on a lattice. Stiff is the penalty
// stiffness of a pair, N/m.
func NewSelf(l *lattice.Lattice, gap, stiff float64) *Self {
	s := &Self{Gap: gap, Stiff: stiff, skin: l.Spacing / 2, built: math.Inf(-1)}
	near := apart * l.Spacing
	s.far = func(a, b int32) bool {
		p, q := l.Rest[a], l.Rest[b]
		return math.Hypot(p.X-q.X, p.Y-q.Y) > near
	}
	for i := range l.Cell {
		if u := l.U[i].Next; u != lattice.None {
			s.edges = append(s.edges, [2]int32{int32(i), u})
		}
		if v := l.V[i].Next; v != lattice.None {
			s.edges = append(s.edges, [2]int32{int32(i), v})
		}
		if q := l.Cell[i].Corner; q[0] != lattice.None {
			s.edges = append(s.edges, [2]int32{q[0], q[3]})
			s.tris = append(s.tris, [3]int32{q[0], q[1], q[3]}, [3]int32{q[0], q[3], q[2]})
		}
	}
	s.grid.size = 1.5 * l.Spacing
	return s
}

// Add adds the forces between layers at x (N) to force and their stiffness to
// mass (kg, for a unit step). Travel is the sum of the largest moves of all
// steps so far, m.
func (s *Self) Add(x, force []r3.Vec, mass []float64, travel float64) {
	if travel-s.built > s.skin/2 {
		s.list(x)
		s.built = travel
	}
	for k := range s.pairs {
		if p := &s.pairs[k]; travel >= p.due {
			s.push(p, x, force, mass, travel)
		}
	}
}

// push adds the force of one pair, or sets when to look at it again.
func (s *Self) push(p *pair, x, force []r3.Vec, mass []float64, travel float64) {
	w := p.weights(x)
	var d r3.Vec
	for k, n := range p.node {
		d = r3.Vec{X: d.X + w[k]*x[n].X, Y: d.Y + w[k]*x[n].Y, Z: d.Z + w[k]*x[n].Z}
	}
	l := r3.Norm(d)
	if l >= s.Gap {
		p.due = travel + (l-s.Gap)/2
		return
	}
	if l == 0 {
		return
	}
	f := s.Stiff * (s.Gap - l) / l
	for k, n := range p.node {
		force[n] = r3.Add(force[n], r3.Scale(f*w[k], d))
		mass[n] += 0.55 * 2 * s.Stiff * math.Abs(w[k])
	}
}

// weights returns the signed weights of the four nodes for which their sum is
// the shortest vector between the two parts.
func (p *pair) weights(x []r3.Vec) [4]float64 {
	a, b, c, d := x[p.node[0]], x[p.node[1]], x[p.node[2]], x[p.node[3]]
	if p.edges {
		s, t := onEdges(a, b, c, d)
		return [4]float64{1 - s, s, t - 1, -t}
	}
	w := onTriangle(a, b, c, d)
	return [4]float64{1, -w[0], -w[1], -w[2]}
}

// list finds all pairs within the gap and the skin.
func (s *Self) list(x []r3.Vec) {
	s.pairs = s.pairs[:0]
	reach := s.Gap + s.skin
	s.grid.clear()
	for k, t := range s.tris {
		s.grid.add(int32(k), reach, x[t[0]], x[t[1]], x[t[2]])
	}
	for i := range x {
		s.grid.visit(x[i], func(k int32) {
			t := s.tris[k]
			if s.far(int32(i), t[0]) && s.far(int32(i), t[1]) && s.far(int32(i), t[2]) {
				s.keep(pair{node: [4]int32{int32(i), t[0], t[1], t[2]}}, x, reach)
			}
		})
	}
	s.grid.clear()
	for k, e := range s.edges {
		s.grid.add(int32(k), reach/2, x[e[0]], x[e[1]])
	}
	s.grid.pairs(func(j, k int32) {
		a, b := s.edges[j], s.edges[k]
		if s.far(a[0], b[0]) && s.far(a[0], b[1]) && s.far(a[1], b[0]) && s.far(a[1], b[1]) {
			s.keep(pair{node: [4]int32{a[0], a[1], b[0], b[1]}, edges: true}, x, reach)
		}
	})
}

// keep lists a pair that lies within reach.
func (s *Self) keep(p pair, x []r3.Vec, reach float64) {
	w := p.weights(x)
	var d r3.Vec
	for k, n := range p.node {
		d = r3.Add(d, r3.Scale(w[k], x[n]))
	}
	if r3.Norm2(d) <= reach*reach {
		s.pairs = append(s.pairs, p)
	}
}
