package fold

import (
	"fmt"
	"math"
	"sort"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rim is how far the outline of a mesh may fall short of the outline of the
// piece before a flat line counts as off the sheet.
const rim = 1e-3 // m

// same is the flat distance below which two places are one.
const same = 1e-9 // m

// trace is the image of a straight flat line: the knots where it meets the
// edges of the triangles. Between knots it is straight in space, so nothing is
// lost to sampling.
type trace struct {
	at  []float64 // m, flat coordinate along the line, ascending
	pos []r3.Vec  // m, len = len(at)
}

// span is the part of a flat line inside one triangle.
type span struct {
	lo, hi       float64
	posLo, posHi r3.Vec
	started      bool
}

func (p *span) add(at float64, pos r3.Vec) {
	if !p.started || at < p.lo {
		p.lo, p.posLo = at, pos
	}
	if !p.started || at > p.hi {
		p.hi, p.posHi = at, pos
	}
	p.started = true
}

// upright and level name the two directions of flat lines. across is the
// coordinate that stays, along the one that runs.
type direction struct {
	name   string
	across func(r2.Vec) float64
	along  func(r2.Vec) float64
}

var (
	upright = direction{"x", func(q r2.Vec) float64 { return q.X }, func(q r2.Vec) float64 { return q.Y }}
	level   = direction{"y", func(q r2.Vec) float64 { return q.Y }, func(q r2.Vec) float64 { return q.X }}
)

// traceLine follows the flat line across = c and returns its unbroken
// stretch about along = through.
func traceLine(s *mesh.Sheet, d direction, c, through float64) (trace, error) {
	return traceOf(s, s.Tris, d, c, through)
}

// traceOf is traceLine on some triangles of s, which hold all that the line meets.
func traceOf(s *mesh.Sheet, tris [][3]int32, d direction, c, through float64) (trace, error) {
	var spans []span
	for _, t := range tris {
		if p := spanOf(s, t, d, c); p.hi-p.lo > same {
			spans = append(spans, p)
		}
	}
	sort.SliceStable(spans, func(i, j int) bool { return spans[i].lo < spans[j].lo })
	for len(spans) > 0 {
		var tr trace
		tr, spans = takeStretch(spans)
		if tr.first()-rim <= through && through <= tr.last()+rim {
			return tr, nil
		}
	}
	return trace{}, fmt.Errorf("fold: sheet: flat line %s = %g m does not reach the sheet at %g m, want it within %g m",
		d.name, c, through, rim)
}

// spanOf cuts triangle t with the line across = c.
func spanOf(s *mesh.Sheet, t [3]int32, d direction, c float64) span {
	var p span
	for k := range 3 {
		i, j := t[k], t[(k+1)%3]
		a, b := snap(d.across(s.Flat[i])-c), snap(d.across(s.Flat[j])-c)
		if a*b > 0 {
			continue
		}
		if a == b { // the edge lies on the line
			p.add(d.along(s.Flat[i]), s.Pos[i])
			p.add(d.along(s.Flat[j]), s.Pos[j])
			continue
		}
		u := a / (a - b)
		p.add(mix(d.along(s.Flat[i]), d.along(s.Flat[j]), u),
			r3.Add(s.Pos[i], r3.Scale(u, r3.Sub(s.Pos[j], s.Pos[i]))))
	}
	return p
}

// takeStretch joins spans, sorted by lo, up to the first gap and returns the
// rest. Where the line runs along triangle edges both neighbours bring the
// same span; the second is dropped.
func takeStretch(spans []span) (trace, []span) {
	tr := trace{at: []float64{spans[0].lo}, pos: []r3.Vec{spans[0].posLo}}
	for i, p := range spans {
		if p.lo > tr.last()+same {
			return tr, spans[i:]
		}
		if p.hi > tr.last()+same {
			tr.at, tr.pos = append(tr.at, p.hi), append(tr.pos, p.posHi)
		}
	}
	return tr, nil
}

func (t trace) first() float64 { return t.at[0] }
func (t trace) last() float64  { return t.at[len(t.at)-1] }

// clamp returns v moved into the trace.
func (t trace) clamp(v float64) float64 { return min(max(v, t.first()), t.last()) }

// point returns the place in space of flat coordinate v, clamped to the ends.
func (t trace) point(v float64) r3.Vec {
	v = t.clamp(v)
	k := min(max(sort.SearchFloat64s(t.at, v), 1), len(t.at)-1)
	u := (v - t.at[k-1]) / (t.at[k] - t.at[k-1])
	return r3.Add(t.pos[k-1], r3.Scale(u, r3.Sub(t.pos[k], t.pos[k-1])))
}

// growth returns length in space over flat length − 1 between lo and hi.
func (t trace) growth(lo, hi float64) float64 {
	lo, hi = t.clamp(lo), t.clamp(hi)
	long, last := 0.0, t.point(lo)
	for k, v := range t.at {
		if v > lo && v < hi {
			long += r3.Norm(r3.Sub(t.pos[k], last))
			last = t.pos[k]
		}
	}
	return (long+r3.Norm(r3.Sub(t.point(hi), last)))/(hi-lo) - 1
}

// snap puts a vertex that misses the line by rounding on the line.
func snap(v float64) float64 {
	if math.Abs(v) < same {
		return 0
	}
	return v
}

func mix(a, b, u float64) float64 { return a + u*(b-a) }
