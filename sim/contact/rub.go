package contact

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// place says where on its two parts a pair meets: the shares along its edges, or
// the weights of the last two corners of its triangle.
type place struct{ a, b float64 }

// weights returns those of the nodes in the vector between the two points of a place.
func (p *pair) weights(at place) [4]float64 {
	if p.edges {
		return [4]float64{1 - at.a, at.a, at.b - 1, -at.b}
	}
	return [4]float64{1, at.a + at.b - 1, -at.a, -at.b}
}

// grip is where a touching pair holds on: two points of the cloth, so that it
// turns and stretches with both layers.
type grip struct {
	at    place
	holds bool
}

// rub adds the friction of pair k, whose nearest points lie at now, d apart along the
// unit vector n, with a stiffness (N/m) and a slip (m) up to which it sticks: μ times
// the press over the stiffness. It holds where it first touched and drags the grip
// along when it slips.
//
// The grip's points lie apart by d and by what they have slipped, t, which is linear
// in place: to shorten the slip is to bring the place as much nearer to now. While
// it sticks a pair is a spring of energy stiff·t²/2. Its gradient has two parts: one
// pulls the grip's points together, and as the nearest points move when a layer
// tilts, the other turns the layers: by as much as two pulls a gap apart turn them
// the other way. Without it layers that lie on each other keep trembling.
func (s *Self) rub(k int32, now place, d, n r3.Vec, stiff, most float64, x []r3.Vec, sum []Sum) {
	p, g := &s.pairs[k], &s.grips[k]
	if !g.holds {
		*g = grip{now, true}
		return // nothing has slipped
	}
	w := p.weights(g.at)
	t := p.apart(w, x)
	along := t.X*n.X + t.Y*n.Y + t.Z*n.Z
	t = r3.Vec{X: t.X - along*n.X, Y: t.Y - along*n.Y, Z: t.Z - along*n.Z}
	if l := math.Sqrt(t.X*t.X + t.Y*t.Y + t.Z*t.Z); l > most {
		r := most / l
		t = r3.Scale(r, t)
		g.at = place{now.a + r*(g.at.a-now.a), now.b + r*(g.at.b-now.b)}
		w = p.weights(g.at)
	}
	nearest, m := p.weights(now), &s.mass[k]
	for j, i := range p.node {
		f, c, o := stiff*w[j], stiff*(w[j]-nearest[j]), &sum[i]
		o.Force.X -= f*t.X + c*d.X
		o.Force.Y -= f*t.Y + c*d.Y
		o.Force.Z -= f*t.Z + c*d.Z
		m[j] = max(m[j], 0.55*math.Abs(f))
	}
}

// apart returns the vector between two points of a pair, m.
func (p *pair) apart(w [4]float64, x []r3.Vec) r3.Vec {
	a, b, c, e := &x[p.node[0]], &x[p.node[1]], &x[p.node[2]], &x[p.node[3]]
	return r3.Vec{
		X: w[0]*a.X + w[1]*b.X + w[2]*c.X + w[3]*e.X,
		Y: w[0]*a.Y + w[1]*b.Y + w[2]*c.Y + w[3]*e.Y,
		Z: w[0]*a.Z + w[1]*b.Z + w[2]*c.Z + w[3]*e.Z,
	}
}

// part lets go of a pair that has left contact.
func (s *Self) part(k int32) {
	if s.Friction > 0 {
		s.grips[k].holds = false
	}
}

// stowed are the grips of touching pairs while pairs are listed anew, found by
// the first node of their pair.
type stowed struct {
	first []int32 // len = nodes; place in all + 1 of the last, 0 for none
	all   []kept
}

// kept is the grip of a pair and the one stowed before it for the same node.
type kept struct {
	node  [4]int32
	edges bool
	at    place
	next  int32
}

// stow takes the grips off the listed pairs.
func (s *Self) stow() {
	o := &s.stowed
	if o.first == nil {
		o.first = make([]int32, len(s.flat))
	}
	clear(o.first)
	o.all = o.all[:0]
	for k, g := range s.grips {
		if p := &s.pairs[k]; g.holds {
			o.all = append(o.all, kept{p.node, p.edges, g.at, o.first[p.node[0]]})
			o.first[p.node[0]] = int32(len(o.all))
		}
	}
}

// take gives the listed pairs the grips that they had.
func (s *Self) take() {
	s.grips = s.grips[:0]
	for i := range s.pairs {
		p, g := &s.pairs[i], grip{}
		for k := s.stowed.first[p.node[0]]; k > 0; k = s.stowed.all[k-1].next {
			if o := &s.stowed.all[k-1]; o.node == p.node && o.edges == p.edges {
				g = grip{o.at, true}
				break
			}
		}
		s.grips = append(s.grips, g)
	}
}
