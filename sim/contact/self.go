package contact

import (
	"math"
	"sync/atomic"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Self keeps layers of one cloth apart: every crossing against every triangle,
// every edge against every edge. Crossing against crossing alone leaks where
// the bias has sheared the cells, and crossing against triangle alone lets
// edges through each other.
type Self struct {
	Gap      float64 // m, distance kept between middle surfaces
	Stiff    float64 // N/m, penalty stiffness of a pair of whole cells
	Friction float64 // coefficient μ of cloth on cloth; 0 is none. Set before the first step

	primitives []primitive // len = nodes
	flat       []r2.Vec    // m, flat places
	closed     []r2.Vec    // m, the same beside a sewn dart with the dart closed, infinite elsewhere; nil: none is sewn
	near       float64     // m, flat distance within which parts are one fold
	spacing    float64     // m, spacing of the lattice
	reach      float64     // m, how near pairs are listed

	built    []r3.Vec // m, positions when the pairs were listed; nil before the first time
	builtAt  float64  // m, motion then
	bounds   []bounds // len = nodes; of the primitives when the pairs were listed
	bins     bins
	mids     []r3.Vec
	pairs    []pair
	mass     [][4]float64 // kg, len = pairs; of the nodes, in force while the pair is near or touches
	calendar [2]calendar  // by half of the pairs
	today    int          // the day whose pairs are awake
	until    int          // the day that begins
	way      []float64    // m, len = nodes; sum of all moves of a node since the pairs were listed
	wakeHalf func(int)    // wake, made once so that a step reserves nothing
	found    [batches]listed
	batch    atomic.Int32 // the next to be taken
	grips    []grip       // len = pairs where there is friction
	stowed   stowed       // grips while pairs are listed
}

// pair is a crossing and a triangle, or two edges. Its weights sum to zero: two
// points of one cloth, the distance between which is w·x.
type pair struct {
	node  [4]int32
	stiff float64 // N/m; as much as the cloth of the lesser part carries
	edges bool
}

// apart is how many spacings of flat cloth lie at least between two parts for
// them to be two layers rather than one fold. Cells that touch each other cannot
// be kept apart; whatever else is left out could pass through itself.
const apart = 0.9

// NewSelf prepares a lattice. The gap (m) should be well below the spacing;
// stiff is the penalty stiffness (N/m) of a pair of whole cells.
func NewSelf(l *lattice.Lattice, gap, stiff float64) *Self {
	s := &Self{
		Gap: gap, Stiff: stiff, primitives: primitivesOf(l), flat: l.Rest, spacing: l.Spacing,
		near: math.Max(apart*l.Spacing, 2*gap), reach: gap + skin*l.Spacing,
		bounds: make([]bounds, len(l.Rest)), mids: make([]r3.Vec, len(l.Rest)), way: make([]float64, len(l.Rest)),
	}
	for half := range s.calendar {
		s.calendar[half].burden = make([]float64, len(l.Rest))
	}
	s.wakeHalf = s.wake
	return s
}

// Sew takes where crossings beside a sewn dart lie in the flat with the dart closed, m,
// infinite for all others: across its seam the cloth is one fold. nil: there is none.
func (s *Self) Sew(closed []r2.Vec) { s.closed = closed }

// skin is how much farther than the gap pairs are listed, in spacings. A wide
// skin lists seldom and looks at many pairs.
const skin = 0.5

// push presses pair k apart if it is closer than the gap, and returns how much
// farther than the gap it is, m. One that is near gets mass before it touches.
func (s *Self) push(k int32, x []r3.Vec, sum []Sum) float64 {
	p := &s.pairs[k]
	now, fade := p.meet(x)
	w := p.weights(now)
	d := p.apart(w, x)
	l := math.Sqrt(d.X*d.X + d.Y*d.Y + d.Z*d.Z)
	stiff := p.stiff * fade
	if l > s.Gap {
		if l < s.Gap+soonSelf {
			s.weigh(k, stiff, w)
		}
		s.part(k)
		return l - s.Gap
	}
	if l == 0 {
		return 0
	}
	// A press of k·gap·(gap/l − 1) grows without bound as layers meet; its
	// slope, for the mass, is k·(gap/l)².
	q := s.Gap / l
	f := stiff * q * (q - 1)
	s.weigh(k, stiff*math.Min(q*q, 400), w)
	if s.Friction > 0 {
		s.rub(k, now, d, r3.Scale(1/l, d), stiff, s.Friction*s.Gap*(q-1), x, sum)
	}
	m := &s.mass[k]
	for j, n := range p.node {
		g, o := f*w[j], &sum[n]
		o.Force.X, o.Force.Y, o.Force.Z = o.Force.X+g*d.X, o.Force.Y+g*d.Y, o.Force.Z+g*d.Z
		o.Mass += m[j]
	}
	return 0
}

// weigh sets the masses of pair k that a stiffness (N/m) asks for, see stable in sim.
func (s *Self) weigh(k int32, stiff float64, w [4]float64) {
	m := &s.mass[k]
	for j := range w {
		m[j] = 0.55 * 2 * stiff * math.Abs(w[j])
	}
}

// soonSelf is how far beyond the gap a pair already has its mass, see soon, m.
const soonSelf = 0.5e-3

// parallel is the square of the sine of the angle between edges below which
// their push fades. The nearest points of parallel edges jump from end to end,
// and a force that jumps finds no rest; there the crossings carry the load.
const parallel = 0.05

// meet returns where the two parts of a pair are nearest and, for edges, how much
// of the push is left.
func (p *pair) meet(x []r3.Vec) (at place, fade float64) {
	a, b, c, d := &x[p.node[0]], &x[p.node[1]], &x[p.node[2]], &x[p.node[3]]
	if p.edges {
		s, t, slant := onEdges(a, b, c, d)
		return place{s, t}, faded(slant)
	}
	u, v := onTriangle(a, b, c, d)
	return place{u, v}, 1
}

// faded returns 1 for edges whose angle has the squared sine slant, falling
// smoothly to 0 as they turn parallel.
func faded(slant float64) float64 {
	q := slant / parallel
	if q >= 1 {
		return 1
	}
	return q * (2 - q)
}

// moved reports whether the listed pairs may be incomplete.
func (s *Self) moved(x []r3.Vec, motion float64) bool {
	if s.built == nil {
		return finite(x)
	}
	m := (s.reach - s.Gap) / 2
	if motion-s.builtAt < m {
		return false
	}
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

func finite(x []r3.Vec) bool {
	for _, p := range x {
		if s := p.X + p.Y + p.Z; math.IsNaN(s) || math.IsInf(s, 0) {
			return false
		}
	}
	return true
}
