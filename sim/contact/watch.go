package contact

import (
	"slices"

	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r3"
)

// Most pairs are near and do not touch. Two sides cannot come within the gap before
// their nodes have together made the way between, nor before the fastest node of the
// cloth has made half of it. So a pair sleeps in a calendar until the cloth has
// travelled far enough, and one that is awake costs a look at the ways of its four
// nodes, and no more, until these have made the way.

// watch tells when a pair that is awake must be looked at.
type watch struct {
	next  float64 // m; motion before which the two cannot come within the gap
	slack float64 // m; way of its nodes together before which they cannot
	node  [4]int32
	pair  int32
	bears bool // its nodes bear its mass, as it may soon touch
}

// asleep is a pair in the calendar.
type asleep struct {
	next, slack float64 // m, as of watch
	pair        int32
}

// calendar holds the pairs of one half: those that are awake, and days of those
// that wake then. A day is a motion of ahead gaps.
type calendar struct {
	awake  []watch
	day    [days][]asleep // by the number of the day, as long as the calendar reaches
	burden []float64      // kg, len = nodes; mass that near pairs lay on a node
}

const (
	ahead = 0.1 // motion for which pairs are woken in one look, in gaps
	days  = 32  // a pair that sleeps longer is looked at on the last, and sleeps on
)

// Ready lists the pairs anew where the cloth has moved enough and wakes those
// that may soon touch. It comes before Add. Motion (m), the bound on how far anything has moved, is the sum of the
// largest moves of all steps so far.
func (s *Self) Ready(x []r3.Vec, motion float64, c *forkjoin.Pair) {
	switch {
	case s.moved(x, motion):
		s.list(x, motion, c)
		s.built, s.builtAt = append(s.built[:0], x...), motion
	case s.dayOf(motion) <= s.today:
		return
	}
	s.until = s.dayOf(motion)
	c.Both(s.wakeHalf)
	s.today = s.until
}

// dayOf returns the number of the day of a motion, m.
func (s *Self) dayOf(motion float64) int { return int(motion / (ahead * s.Gap)) }

// sleep lays a pair of a half into the calendar. It wakes on the day of its next check.
func (s *Self) sleep(c *calendar, a asleep) {
	n := min(max(s.dayOf(a.next), s.until), s.until+days-1) % days
	c.day[n] = append(c.day[n], a)
}

// watchAll lists what was found and begins to watch it, the pairs of the first nodes in one
// half and as many of the last in the other: nodes and masses of a half stay near one core. The
// ways of the nodes are counted from here.
func (s *Self) watchAll(motion float64) {
	clear(s.way)
	s.until = s.dayOf(motion)
	s.today = s.until - 1
	for half := range s.calendar {
		c := &s.calendar[half]
		c.awake = c.awake[:0]
		for k := range c.day {
			c.day[k] = c.day[k][:0]
		}
	}
	s.pairs = s.pairs[:0]
	for _, kind := range [2]func(*listed) []found{
		func(l *listed) []found { return l.corners }, func(l *listed) []found { return l.edges },
	} {
		k, all := 0, 0
		for b := range s.found {
			all += len(kind(&s.found[b]))
		}
		for b := range s.found {
			for _, f := range kind(&s.found[b]) {
				s.sleep(&s.calendar[2*k/all], asleep{motion + f.left/2, f.left, int32(len(s.pairs))})
				s.pairs = append(s.pairs, f.pair)
				k++
			}
		}
	}
	s.mass = slices.Grow(s.mass[:0], len(s.pairs))[:len(s.pairs)]
}

// wake begins the day until of one half: what was awake and is checked later sleeps, and
// what sleeps until now wakes.
func (s *Self) wake(half int) {
	c := &s.calendar[half]
	clear(c.burden)
	awake := c.awake
	c.awake = c.awake[:0]
	for _, w := range awake {
		if s.dayOf(w.next) > s.until {
			s.sleep(c, asleep{w.next, w.slack, w.pair})
			continue
		}
		c.awake = append(c.awake, w)
		if w.bears {
			s.bear(c, w.pair, 1)
		}
	}
	for n := s.today + 1; n <= s.until && n <= s.today+days; n++ {
		day := c.day[n%days]
		c.day[n%days] = day[:0]
		for _, a := range day {
			if s.dayOf(a.next) > s.until {
				s.sleep(c, a)
				continue
			}
			c.awake = append(c.awake, watch{next: a.next, slack: a.slack, node: s.pairs[a.pair].node, pair: a.pair})
		}
	}
}

// bear lays so many times the mass of a pair on its nodes.
func (s *Self) bear(c *calendar, k int32, times float64) {
	m := &s.mass[k]
	for j, n := range s.pairs[k].node {
		c.burden[n] += times * m[j]
	}
}

// Moved tells that node i has moved by so much, m.
func (s *Self) Moved(i int, by float64) { s.way[i] += by }

// made returns the way that four nodes have made together, m.
func (s *Self) made(node *[4]int32) float64 {
	return s.way[node[0]] + s.way[node[1]] + s.way[node[2]] + s.way[node[3]]
}

// Add adds the pushes of one half of the pairs, 0 or 1, between layers at x to
// sum (len = nodes).
func (s *Self) Add(half int, x []r3.Vec, sum []Sum, motion float64) {
	c := &s.calendar[half]
	for k := range c.awake {
		w := &c.awake[k]
		if motion < w.next {
			continue
		}
		left := w.slack - s.made(&w.node)
		if left <= 0 {
			left = s.look(w, c, x, sum)
		}
		w.next = motion + left/2
	}
	for i, m := range c.burden {
		sum[i].Mass += m
	}
}

// look pushes a pair apart and returns how much farther than the gap it is, m.
func (s *Self) look(w *watch, c *calendar, x []r3.Vec, sum []Sum) float64 {
	if w.bears {
		s.bear(c, w.pair, -1)
	}
	left := s.push(w.pair, x, sum)
	w.slack, w.bears = s.made(&w.node)+left, left > 0 && left < soonSelf
	if w.bears {
		s.bear(c, w.pair, 1)
	}
	return left
}
