package contact

import (
	"cowl/sim/crew"

	"gonum.org/v1/gonum/spatial/r3"
)

// watch is what tells when a pair must be looked at. Most pairs are near and do not
// touch: they cost a look at this and at the ways of four nodes, and no more.
type watch struct {
	due   float64 // m; travel before which the two cannot come within the gap
	spare float64 // m; way of its nodes together before which they cannot
	node  [4]int32
	pair  int32
	heavy bool // its nodes bear its mass, as it may soon touch
}

// ahead is the travel for which pairs are woken in one look, in gaps.
const ahead = 0.1

// Ready lists the pairs anew where the cloth has moved enough and wakes those
// that may soon touch. It comes before Add. Travel (m) is the sum of the
// largest moves of all steps so far.
func (s *Self) Ready(x []r3.Vec, travel float64, c *crew.Crew) {
	switch {
	case s.moved(x, travel):
		s.list(x, travel, c)
		s.built, s.builtAt = append(s.built[:0], x...), travel
	case travel < s.wakeAt:
		return
	}
	s.wakeAt = travel + ahead*s.Gap
	c.Both(s.wakeHalf)
}

// watchAll begins to watch the pairs that are listed anew.
func (s *Self) watchAll(travel float64) {
	s.rest = s.rest[:0]
	for k := range s.pairs {
		p := &s.pairs[k]
		s.rest = append(s.rest, watch{due: travel + (p.spare-s.made(&p.node))/2, spare: p.spare, node: p.node, pair: int32(k)})
	}
	s.awake[0], s.awake[1] = s.awake[0][:0], s.awake[1][:0]
}

// wake collects the pairs of one half that may be due soon: every other pair, so
// that both halves have as many.
func (s *Self) wake(half int) {
	for _, w := range s.awake[half] {
		s.rest[w.pair] = w
	}
	list, burden := s.awake[half][:0], s.burden[half]
	clear(burden)
	for k := half; k < len(s.rest); k += 2 {
		w := &s.rest[k]
		if w.due >= s.wakeAt {
			w.heavy = false
			continue
		}
		list = append(list, *w)
		if w.heavy {
			bear(burden, &s.pairs[k], 1)
		}
	}
	s.awake[half] = list
}

// bear lays so many times the mass of a pair on its nodes.
func bear(burden []float64, p *pair, times float64) {
	for j, n := range p.node {
		burden[n] += times * p.mass[j]
	}
}

// Moved tells that node i has moved by so much, m.
func (s *Self) Moved(i int, by float64) { s.way[i] += by }

// made returns the way that four nodes have made together, m.
func (s *Self) made(node *[4]int32) float64 {
	return s.way[node[0]] + s.way[node[1]] + s.way[node[2]] + s.way[node[3]]
}

// Add adds the pushes of one half of the pairs, 0 or 1, between layers at x to
// sum (len = nodes). Two sides cannot come within the gap before their nodes have
// together made the way between, nor before the fastest has made half of it.
func (s *Self) Add(half int, x []r3.Vec, sum []Sum, travel float64) {
	list := s.awake[half]
	for k := range list {
		w := &list[k]
		if travel < w.due {
			continue
		}
		left := w.spare - s.made(&w.node)
		if left <= 0 {
			left = s.look(w, half, x, sum)
		}
		w.due = travel + left/2
	}
	for i, m := range s.burden[half] {
		sum[i].Mass += m
	}
}

// look pushes a pair apart and returns how much farther than the gap it is, m.
func (s *Self) look(w *watch, half int, x []r3.Vec, sum []Sum) float64 {
	p := &s.pairs[w.pair]
	if w.heavy {
		bear(s.burden[half], p, -1)
	}
	left := s.push(w.pair, x, sum)
	w.spare, w.heavy = s.made(&w.node)+left, left > 0 && left < soonSelf
	if w.heavy {
		bear(s.burden[half], p, 1)
	}
	return left
}
