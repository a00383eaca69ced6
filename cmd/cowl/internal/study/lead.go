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
	seen   []caseResult
}

// newLead finds what extensions can be cut, from what the dart alone gives to
// as far as cloth can be added, and let the edge lie and feed the folds as wanted;
// false if none.
func newLead(s style.Style, w Want, f *form.Form) (*lead, bool) {
	l := &lead{style: s, form: f}
	if s.Cut.DartShare >= 0 {
		s.Cut.Extension = draft.Auto
		p, err := s.Piece()
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
	b, point := least.piece.Block, least.piece.Block.CowlPoint(least.piece.CowlPoint)
	l.aim = &aim{want: w.value(dropFigure), lo: l.lo, hi: l.hi, plane: func(e int) float64 {
		_, chain := draft.DropForEdge(point.X, point.X+float64(e)/1000)
		return (b.Neck.Y - point.Y + chain) * 1000
	}}
	return l, true
}

// at is the cut with an extension in mm.
func (l *lead) at(e int) oneCase {
	s := l.style
	s.Cut.Extension = float64(e) / 1000
	share := "dart as needed"
	if s.Cut.DartShare >= 0 {
		share = fmt.Sprintf("dart share %.4g", s.Cut.DartShare)
	}
	c := newCase(fmt.Sprintf("%s, cowl point %s, %s, %s", say.Length(float64(e)/1000), say.Length(s.Cut.CowlPoint), share, s.Fabric.Name), s)
	c.steady = true
	if l.form != nil && c.wrong == nil {
		c.wrong = c.style.Fits(c.piece, l.form)
	}
	closed := math.NaN()
	if c.wrong == nil {
		closed = math.Round(c.piece.Added.DartShare*1000) / 1000
	}
	c.Values = []float64{float64(e) / 10, math.Round(s.Cut.CowlPoint*1e4) / 100, closed}
	return c
}

// spread lists extensions over the whole range, for wants without an edge drop.
func (l *lead) spread() []int {
	const n = 6
	var out []int
	for k := range n {
		out = append(out, l.lo+(l.hi-l.lo)*k/(n-1))
	}
	return out
}

// chase hangs all leads in step until each is as near as it gets: in every
// round each asks for one extension, and all are hung together.
func (w *runner) chase(ctx context.Context, leads []*lead, goal Want) error {
	if math.IsNaN(goal.value(dropFigure)) {
		return w.hangLeads(ctx, leads, (*lead).spread)
	}
	for {
		asked := false
		err := w.hangLeads(ctx, leads, func(l *lead) []int {
			e, ok := l.aim.next()
			if !ok {
				return nil
			}
			asked = true
			return []int{e}
		})
		if err != nil || !asked {
			return err
		}
	}
}

// hangLeads hangs what ask wants of every lead and tells the leads.
func (w *runner) hangLeads(ctx context.Context, leads []*lead, spec func(*lead) []int) error {
	var cases []oneCase
	var of []*lead
	var at []int
	for _, l := range leads {
		for _, e := range spec(l) {
			cases, of, at = append(cases, l.at(e)), append(of, l), append(at, e)
		}
	}
	if len(cases) == 0 {
		return nil
	}
	rs, err := w.hangAll(ctx, cases)
	if err != nil {
		return err
	}
	for i, r := range rs {
		of[i].seen = append(of[i].seen, r)
		mean, _ := r.summary(dropFigure)
		if math.IsNaN(mean) { // nothing settled: the plane has to do
			mean = usualShare * of[i].aim.plane(at[i])
		}
		of[i].aim.tell(at[i], mean)
	}
	return nil
}

// nearest returns the best of what a lead has seen; false if it saw nothing.
func (l *lead) nearest(w Want) (caseResult, bool) {
	if len(l.seen) == 0 {
		return caseResult{}, false
	}
	return slices.MinFunc(l.seen, func(a, b caseResult) int { return cmpFloat(w.far(a), w.far(b)) }), true
}
