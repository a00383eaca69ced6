package study

import (
	"context"
	"fmt"
	"math"
	"slices"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/form"
)

// lead is one line of search: a style of which only the extension is open.
type lead struct {
	style  style.Style
	form   *form.Form // on which the wanted folds must fit; nil: none are wanted
	lo, hi int        // mm, extensions that can be cut
	aim    *aim
	seen   []caseResult // hung by all hands
	closed []caseResult // hung by the first alone, to close in on the drop
}

// newLead finds what extensions can be cut, from what the dart alone gives to
// as far as cloth can be added, and let the edge lie and feed the folds as wanted;
// false if none.
func newLead(s style.Style, w Want, f *form.Form) (*lead, bool) {
	l := &lead{style: s, form: f}
	if s.Cut.DartShare >= 0 {
		s.Cut.Extension = draft.Auto
		p, err := s.Cowl()
		if err != nil {
			return nil, false
		}
		l.lo = int(math.Ceil(p.Extension*1000 - 1e-6))
	}
	const none = 401 // mm, more can never be cut
	least := l.at(l.lo)
	for least.wrong != nil && l.lo < none {
		l.lo += 5
		least = l.at(l.lo)
	}
	if least.wrong != nil {
		return nil, false
	}
	hi := none // the first that cannot be cut
	for l.hi = l.lo; hi-l.hi > 1; {
		if mid := (l.hi + hi) / 2; l.at(mid).wrong == nil {
			l.hi = mid
		} else {
			hi = mid
		}
	}
	b, point := least.cowl.Block, least.cowl.Block.CowlPoint(least.cowl.CowlPoint)
	l.aim = &aim{want: w.value(dropFigure), lo: l.lo, hi: l.hi, plane: func(e int) float64 {
		_, chain := draft.DropForEdge(point.X, point.X+float64(e)/1000)
		return (b.Neck.Y - point.Y + chain) * 1000
	}}
	return l, true
}

// firstAt is the cut with an extension in mm as the first hand alone hangs it.
func (l *lead) firstAt(e int) oneCase {
	c := l.at(e)
	c.style.Hang.Placings = 1
	return c
}

// at is the cut with an extension in mm, hung by all hands.
func (l *lead) at(e int) oneCase {
	s := l.style
	s.Cut.Extension = float64(e) / 1000
	share := "dart as needed"
	if s.Cut.DartShare >= 0 {
		share = fmt.Sprintf("dart share %.4g", s.Cut.DartShare)
	}
	c := newCase(fmt.Sprintf("%s, cowl point %s, %s, %s", say.Length(float64(e)/1000), say.Length(s.Cut.CowlPoint), share,
		s.Fabric.Name), s)
	c.steady = true
	if l.form != nil && c.wrong == nil {
		c.wrong = c.style.Fits(c.cowl, l.form)
	}
	closed := math.NaN()
	if c.wrong == nil {
		closed = math.Round(c.cowl.Added.DartShare*1000) / 1000
	}
	c.Values = []float64{float64(e) / 10, math.Round(s.Cut.CowlPoint*1e4) / 100, closed}
	return c
}

// spreadOver is how many extensions are spread over the range.
const spreadOver = 6

// spread lists extensions over the whole range, for wants without an edge drop.
func (l *lead) spread() []int {
	var out []int
	for k := range spreadOver {
		out = append(out, l.lo+(l.hi-l.lo)*k/(spreadOver-1))
	}
	return out
}

// chase hangs all leads until each is as near as it gets. Where a drop is wanted the first
// hand alone closes in on it, which takes a drape a step, and all hands hang what it found.
func (w *runner) chase(ctx context.Context, leads []*lead, goal Want) error {
	if math.IsNaN(goal.value(dropFigure)) {
		_, err := w.hangLeads(ctx, leads, (*lead).at, (*lead).spread)
		return err
	}
	if err := w.closeIn(ctx, leads); err != nil {
		return err
	}
	return w.bear(ctx, leads)
}

// closeIn lets the first hand close in on the drop, all leads in step: in every round each
// asks for one extension, and all are hung together.
func (w *runner) closeIn(ctx context.Context, leads []*lead) error {
	for {
		tried, err := w.hangLeads(ctx, leads, (*lead).firstAt, func(l *lead) []int {
			if e, ok := l.aim.next(); ok {
				return []int{e}
			}
			return nil
		})
		if err != nil || len(tried) == 0 {
			return err
		}
		for _, t := range tried {
			t.lead.aim.tell(t.at, t.drop)
		}
	}
}

// bear lets all hands hang what the first has found, and, where their mean is off, once
// more where it should lie by what the first hand differs from the others.
func (w *runner) bear(ctx context.Context, leads []*lead) error {
	all, err := w.hangLeads(ctx, leads, (*lead).at, func(l *lead) []int { return []int{l.aim.best().at} })
	if err != nil {
		return err
	}
	again := map[*lead][]int{}
	for _, t := range all {
		a := t.lead.aim
		if math.Abs(t.drop-a.want) <= nearOf(dropFigure) {
			continue
		}
		if math.IsNaN(t.drop) { // by no hand did it come to rest, the first included
			if at, ok := a.aside(t.at); ok {
				again[t.lead] = []int{at}
			}
			continue
		}
		a.shift(t.drop - a.best().value)
		if at := min(max(a.guess(), a.lo), a.hi); at != t.at {
			again[t.lead] = []int{at}
		}
	}
	_, err = w.hangLeads(ctx, leads, (*lead).at, func(l *lead) []int { return again[l] })
	return err
}

// triedDrop is the mean drop that a lead found at an extension, mm; NaN: nothing came to rest.
type triedDrop struct {
	lead *lead
	at   int
	drop float64
}

// hangLeads hangs the cuts that ask wants of every lead and keeps them with the leads.
func (w *runner) hangLeads(ctx context.Context, leads []*lead, cut func(*lead, int) oneCase,
	ask func(*lead) []int) ([]triedDrop, error) {
	var cases []oneCase
	var out []triedDrop
	for _, l := range leads {
		for _, e := range ask(l) {
			cases, out = append(cases, cut(l, e)), append(out, triedDrop{lead: l, at: e})
		}
	}
	if len(cases) == 0 {
		return nil, nil
	}
	rs, err := w.hangAll(ctx, cases)
	if err != nil {
		return nil, err
	}
	for i, r := range rs {
		l := out[i].lead
		if r.style.Hang.Placings < l.style.Hang.Placings {
			l.closed = append(l.closed, r)
		} else {
			l.seen = append(l.seen, r)
		}
		out[i].drop, _ = r.summary(dropFigure)
	}
	return out, nil
}

// charted lists what was hung of a lead: by all hands, and by the first alone where that is
// all there is.
func (l *lead) charted() []caseResult {
	out := slices.Clone(l.seen)
	for _, r := range l.closed {
		if !slices.ContainsFunc(l.seen, func(s caseResult) bool { return s.Values[0] == r.Values[0] }) {
			out = append(out, r)
		}
	}
	return out
}

// nearest returns the best of what a lead has seen; false if it saw nothing.
func (l *lead) nearest(w Want) (caseResult, bool) {
	if len(l.seen) == 0 {
		return caseResult{}, false
	}
	return slices.MinFunc(l.seen, func(a, b caseResult) int { return cmpFloat(w.far(a), w.far(b)) }), true
}
