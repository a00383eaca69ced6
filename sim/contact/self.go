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
	Stiff float64 // N/m, penalty stiffness of a pair of whole cells

	tris   [][3]int32
	edges  [][2]int32
	nodeOf []float64 // 0..1, len = nodes; share of a cell of cloth
	triOf  []float64 // len = tris
	edgeOf []float64 // len = edges
	half   []float64 // m, len = edges; half the length, with a tenth of stretch
	rest   []r2.Vec  // m, flat places
	near2  float64   // m², square of the flat distance within which parts are one fold
	reach  float64   // m, how near pairs are listed
	reel   float64   // m, spacing of the lattice
	built  []r3.Vec  // m, positions when the pairs were listed; nil before the first time
	pairs  []pair
	bins   bins
	mids   []r3.Vec
}

// pair is two parts of cloth that may meet: four nodes, a vertex against a
// triangle or two edges.
type pair struct {
	node  [4]int32
	edges bool
	stiff float64 // N/m; as much as the cloth of the lesser part carries
	due   float64 // m, travel before which the two cannot come within the gap
}

// Parts of one fold are held open by its bending, so nodes nearer in the flat
// than apart spacings, or twice the gap, are not kept apart. That is just short
// of the next crossing: whatever is left out can pass through.
const apart = 0.9

// NewSelf prepares self-contact of the cloth on a lattice. Stiff is the penalty
// stiffness of a pair, N/m.
func NewSelf(l *lattice.Lattice, gap, stiff float64) *Self {
	near := math.Max(apart*l.Spacing, 2*gap)
	s := &Self{Gap: gap, Stiff: stiff, rest: l.Rest, near2: near * near, reach: gap + 0.5*l.Spacing, reel: l.Spacing}
	cell := l.Spacing * l.Spacing
	edge := func(a, b int32, area float64) {
		if b != lattice.None {
			s.edges = append(s.edges, [2]int32{a, b})
			s.edgeOf = append(s.edgeOf, area/cell)
			s.half = append(s.half, 1.1/2*r2.Norm(r2.Sub(l.Rest[a], l.Rest[b])))
		}
	}
	for i := range l.Cell {
		s.nodeOf = append(s.nodeOf, l.Area[i]/cell)
		edge(int32(i), l.U[i].Next, l.U[i].Link)
		edge(int32(i), l.V[i].Next, l.V[i].Link)
		if q := l.Cell[i].Corner; q[0] != lattice.None {
			edge(q[0], q[3], l.Cell[i].Area)
			s.tris = append(s.tris, [3]int32{q[0], q[1], q[3]}, [3]int32{q[0], q[3], q[2]})
			s.triOf = append(s.triOf, l.Cell[i].Area/cell, l.Cell[i].Area/cell)
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
	k := p.stiff
	if p.edges {
		k *= slant(x[p.node[0]], x[p.node[1]], x[p.node[2]], x[p.node[3]])
	}
	// A press of k·gap·(gap/l − 1) grows without bound as layers meet; its
	// slope, for the mass, is k·(gap/l)².
	f := k * s.Gap * (s.Gap/l - 1) / l
	k *= math.Min(s.Gap*s.Gap/(l*l), 400)
	for j, n := range p.node {
		force[n] = r3.Add(force[n], r3.Scale(f*w[j], d))
		mass[n] += 0.55 * 2 * k * math.Abs(w[j])
	}
}

// parallel is the squared sine of the angle below which two edges count as
// nearly parallel.
const parallel = 0.05

// slant fades the force between edges that turn parallel: their nearest points
// jump from end to end, and a force that jumps finds no rest. The vertices
// carry such edges. (M. Li et al., "Incremental Potential Contact", ACM Trans.
// Graphics 39, 2020, fade alike; the slope of the fade is left out here.)
func slant(a, b, c, d r3.Vec) float64 {
	u, v := r3.Sub(b, a), r3.Sub(d, c)
	q := r3.Norm2(r3.Cross(u, v)) / (parallel * r3.Norm2(u) * r3.Norm2(v))
	if q >= 1 {
		return 1
	}
	return q * (2 - q)
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

// sq returns x².
func sq(x float64) float64 { return x * x }

// moved reports whether a node has moved so far since the pairs were listed
// that an unlisted pair could have come within the gap.
func (s *Self) moved(x []r3.Vec) bool {
	if s.built == nil {
		return finite(x)
	}
	m := (s.reach - s.Gap) / 2
	far := false
	for i := range x {
		d := r3.Norm2(r3.Sub(x[i], s.built[i]))
		if math.IsNaN(d) || math.IsInf(d, 0) {
			return false // diverged; whoever walks will see it
		}
		far = far || d > m*m
	}
	return far
}

// finite reports whether every position is a number.
func finite(x []r3.Vec) bool {
	for _, p := range x {
		if s := p.X + p.Y + p.Z; math.IsNaN(s) || math.IsInf(s, 0) {
			return false
		}
	}
	return true
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
				s.keep(pair{node: [4]int32{int32(i), t[0], t[1], t[2]}, stiff: s.Stiff * min(s.nodeOf[i], s.triOf[k])}, x)
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
			// Edges whose middles are too far for their halves and the reach
			// are passed over before the costly look.
			if int(k) > j && r3.Norm2(r3.Sub(s.mids[j], s.mids[k])) < sq(s.reach+s.half[j]+s.half[k]) && s.far(a[0], b[0]) && s.far(a[0], b[1]) && s.far(a[1], b[0]) && s.far(a[1], b[1]) {
				s.keep(pair{node: [4]int32{a[0], a[1], b[0], b[1]}, edges: true, stiff: s.Stiff * min(s.edgeOf[j], s.edgeOf[k])}, x)
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
