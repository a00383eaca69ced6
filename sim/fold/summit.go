package fold

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// faint is the least prominence on the section, which is cut by chords, at
// which a crest is read on a patch: one just over MinDepth may show less.
const faint = MinDepth / 2 // m

// turn is an end, a crest or a valley of a section.
type turn struct {
	Point
	sample int     // of the section
	ahead  float64 // m, distance ahead of the bridged front
}

// summit is a crest with the valleys beside it. Beside a rolled edge lies the
// edge itself.
type summit struct {
	turn
	prominence    float64 // m
	before, after turn
}

// summits returns the crests of the section that are not too faint, from the
// edge down, each read on a patch.
func (p profile) summits() []summit {
	turns := p.turns()
	ahead := make([]float64, len(turns))
	for i, t := range turns {
		ahead[i] = t.ahead
	}
	var out []summit
	for _, c := range crests(ahead, p.turned) {
		if c.prominence >= faint {
			out = append(out, summit{turns[c.index], c.prominence, turns[max(c.index-1, 0)], turns[c.index+1]})
		}
	}
	return out
}

// turns reads the marks of the section on patches.
func (p profile) turns() []turn {
	marks := p.marks()
	out := make([]turn, len(marks))
	for k := range marks {
		out[k] = p.refined(p.around(marks, k))
	}
	return out
}

// mark is a sample that decides on prominence: an end of the section, a crest
// that is not too faint, or the lowest sample between two of these.
type mark struct {
	at    int
	crest bool
}

func (p profile) marks() []mark {
	marks := []mark{{}}
	for _, c := range crests(p.ahead, p.turned) {
		if c.prominence < faint {
			continue
		}
		if c.index == 0 {
			marks[0].crest = true
			continue
		}
		marks = p.through(marks, mark{c.index, true})
	}
	return p.through(marks, mark{at: len(p.ahead) - 1})
}

// through appends to marks the lowest sample on the way to next, and next.
func (p profile) through(marks []mark, next mark) []mark {
	from := marks[len(marks)-1].at
	low := from
	for i := from; i <= next.at; i++ {
		if p.ahead[i] < p.ahead[low] {
			low = i
		}
	}
	if low != from && low != next.at {
		marks = append(marks, mark{at: low})
	}
	return append(marks, next)
}

// stretch is where a turn is looked for: samples lo to hi about the sample at,
// and less than room ahead of it or behind, m. Sign is 1 for a crest and −1
// for a valley.
type stretch struct {
	lo, at, hi int
	room, sign float64
}

// around returns the stretch for marks[k]. Which crests there are is the
// section's to say: the stretch goes no more than half-way to the marks beside
// it, in place and in distance, so that no patch makes, loses or passes one; a
// valley may lie as near an end as it will. The stretch is no longer than a
// cell's diagonal to either side, and no deeper than half a circle over one.
// The ends stay where they are on the line.
func (p profile) around(marks []mark, k int) stretch {
	cell, m := math.Sqrt2*p.lattice, marks[k]
	w := stretch{m.at, m.at, m.at, cell / 2, -1}
	if m.crest {
		w.sign = 1
	}
	if k > 0 {
		w.room = min(w.room, p.room(marks[k-1], m))
	}
	if k+1 < len(marks) {
		w.room = min(w.room, p.room(m, marks[k+1]))
	}
	if k == 0 || k == len(marks)-1 {
		return w
	}
	reach := int(cell / p.step)
	w.lo, w.hi = max(m.at-reach, halfway(m, marks[k-1])), min(m.at+reach, halfway(m, marks[k+1]))
	return w
}

// halfway returns the sample up to which m may lie towards the mark n beside it.
func halfway(m, n mark) int {
	if !m.crest && !n.crest {
		return n.at // an end
	}
	return (m.at + n.at) / 2
}

// room returns how far either of two marks may move towards the other: half of
// what they differ by. An end and the valley beside it may pass each other, as
// long as that makes no crest of an edge where the facing turns inside.
func (p profile) room(a, b mark) float64 {
	d := math.Abs(p.ahead[a.at] - p.ahead[b.at])
	switch {
	case a.crest || b.crest:
		return d / 2
	case a.at == 0 && p.turned:
		return max(d, faint-d) / 2
	}
	return math.Inf(1)
}

// sampled returns sample i as it is.
func (p profile) sampled(i int) turn { return turn{p.section[i], i, p.ahead[i]} }

// refined returns the turn as the cloth shows it on w, or as the section does
// where no patch turns there.
func (p profile) refined(w stretch) turn {
	pt, ok := patchAt(p.sheet, p.near, p.flat(p.section[w.at].S), p.lattice)
	if !ok {
		return p.sampled(w.at)
	}
	s, ok := p.extreme(pt, w)
	if !ok {
		return p.sampled(w.at)
	}
	q := pt.point(p.flat(s))
	t := turn{Point{s, r2.Vec{X: q.Z, Y: q.Y}}, w.at, p.frame.level(q)}
	if !(math.Abs(t.ahead-p.ahead[w.at]) < w.room) {
		return p.sampled(w.at)
	}
	return t
}

// extreme returns the place down the line where the patch turns: the vertex of
// the parabola through the best sample of w and its neighbours. False if the
// best is at an end of w, but for a valley at an end of the line. Of a level
// stretch it is the place nearest w.at.
func (p profile) extreme(pt patch, w stretch) (s float64, ok bool) {
	if w.lo >= w.hi {
		return p.section[w.at].S, true
	}
	value := func(k int) float64 { return w.sign * p.frame.ahead(pt.point(p.flat(p.section[k].S))) }
	best, most := w.at, value(w.at)
	for k := w.lo; k <= w.hi; k++ {
		if v := value(k); v > most+same || v > most-same && abs(k-w.at) < abs(best-w.at) {
			best, most = k, v
		}
	}
	switch {
	case w.sign < 0 && (best == 0 || best == len(p.section)-1):
		return p.section[best].S, true
	case best == w.lo || best == w.hi:
		return 0, false
	}
	return p.section[best].S + p.step*vertex(value(best-1), most, value(best+1)), true
}

// vertex returns where the parabola through a, b, c at −1, 0, 1 turns, b being
// the greatest; 0 on a level.
func vertex(a, b, c float64) float64 {
	if bend := a - 2*b + c; bend < 0 {
		return (a - c) / (2 * bend)
	}
	return 0
}

func abs(i int) int { return max(i, -i) }
