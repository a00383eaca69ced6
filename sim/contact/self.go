package contact

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
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
	rest  []r2.Vec // m, flat places
	near2 float64  // m², square of the flat distance within which parts are one fold
	reach float64  // m, how near pairs are listed
	reel  float64  // m, spacing of the lattice
	built []r3.Vec // m, positions when the pairs were listed; nil before the first time
	pairs []pair
	bins  bins
	mids  []r3.Vec
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
const apart = 1.5

// NewSelf prepares self-contact of the cloth on a lattice. Stiff is the penalty
// stiffness of a pair, N/m.
func NewSelf(l *lattice.Lattice, gap, stiff float64) *Self {
	near := apart * l.Spacing
	s := &Self{Gap: gap, Stiff: stiff, rest: l.Rest, near2: near * near, reach: gap + 0.75*l.Spacing, reel: l.Spacing}
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
	return s
}

// Add adds the forces between layers at x (N) to force and their stiffness to
// mass (kg, for a unit step). Travel is the sum of the largest moves of all
// steps so far, m.
func (s *Self) Add(x, force []r3.Vec, mass []float64, travel float64) {
	if s.moved(x) {
		s.list(x)
		s.built = append(s.built[:0], x...)
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
	l := math.Sqrt(r3.Norm2(d))
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

// moved reports whether a node has moved so far since the pairs were listed
// that an unlisted pair could have come within the gap.
func (s *Self) moved(x []r3.Vec) bool {
	if s.built == nil {
		return true
	}
	m := (s.reach - s.Gap) / 2
	far := false
	for i := range x {
		d := r3.Norm2(r3.Sub(x[i], s.built[i]))
		if math.IsNaN(d) {
			return false // diverged; whoever walks will see it
		}
		far = far || d > m*m
	}
	return far
}

// far reports whether two nodes lie apart in the flat.
func (s *Self) far(a, b int32) bool {
	return r2.Norm2(r2.Sub(s.rest[a], s.rest[b])) > s.near2
}

// list finds all pairs within reach: vertices against triangles, then edges
// against edges. The longest half of an edge or spoke of a triangle is taken as
// a cell's diagonal, which leaves room for a tenth of stretch.
func (s *Self) list(x []r3.Vec) {
	s.pairs = s.pairs[:0]
	size := s.reach + 1.1*math.Sqrt2*s.reel
	s.mids = s.mids[:0]
	for _, t := range s.tris {
		s.mids = append(s.mids, r3.Scale(1./3, r3.Add(x[t[0]], r3.Add(x[t[1]], x[t[2]]))))
	}
	s.bins.fill(s.mids, size)
	for i := range x {
		s.bins.near(x[i], func(k int32) {
			if t := s.tris[k]; s.far(int32(i), t[0]) && s.far(int32(i), t[1]) && s.far(int32(i), t[2]) {
				s.keep(pair{node: [4]int32{int32(i), t[0], t[1], t[2]}}, x)
			}
		})
	}
	s.mids = s.mids[:0]
	for _, e := range s.edges {
		s.mids = append(s.mids, r3.Scale(0.5, r3.Add(x[e[0]], x[e[1]])))
	}
	s.bins.fill(s.mids, size)
	for j := range s.edges {
		a := s.edges[j]
		s.bins.near(s.mids[j], func(k int32) {
			b := s.edges[k]
			if int(k) > j && s.far(a[0], b[0]) && s.far(a[0], b[1]) && s.far(a[1], b[0]) && s.far(a[1], b[1]) {
				s.keep(pair{node: [4]int32{a[0], a[1], b[0], b[1]}, edges: true}, x)
			}
		})
	}
}

// keep lists a pair that lies within reach.
func (s *Self) keep(p pair, x []r3.Vec) {
	w := p.weights(x)
	var d r3.Vec
	for k, n := range p.node {
		d = r3.Add(d, r3.Scale(w[k], x[n]))
	}
	if r3.Norm2(d) <= s.reach*s.reach {
		s.pairs = append(s.pairs, p)
	}
}
