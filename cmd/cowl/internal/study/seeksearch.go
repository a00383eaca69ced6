package study

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/form"
	"cowl/mesh/ruler"
	"cowl/sim/drape"
)

// seek searches the extension first, in every fabric; if more than the edge
// drop is wanted, then cowl points in the two best fabrics, then dart shares at
// the best cowl point. What comes nearest is published with the runners-up.
func (w *runner) seek(ctx context.Context, spec Spec, goal Want) error {
	defer w.hanger.close()
	s, err := spec.style()
	if err != nil {
		return err
	}
	if err := goal.against(s); err != nil {
		return err
	}
	if s.Lines != nil {
		return errors.New("seek: the piece is a finished one, and there is no cut to look for: leave the piece out, or " +
			"hang it with cowl drape")
	}
	spec.Want = goal.textIn(ruler.Centimetres) // a file, whatever is spoken
	f, err := w.lay(&s, goal)
	if err != nil {
		return err
	}
	leads, err := firstLeads(spec, s, goal, f)
	if err != nil {
		return err
	}
	if err := w.begin(&spec); err != nil {
		return err
	}
	w.tally = newTally(w, leads, goal)
	defer w.tally.line.clear()
	if err := w.first(ctx, leads, goal); err != nil {
		return err
	}
	if _, drop := goal[dropFigure]; !drop || len(goal) > 1 {
		for _, widen := range []func([]*lead, Want) []*lead{otherPoints, otherShares} {
			more := widen(leads, goal)
			if err := w.chase(ctx, more, goal); err != nil {
				return err
			}
			leads = append(leads, more...)
		}
	}
	return w.publishSeek(spec, s, goal, leads)
}

// first chases the first leads, and refuses a drop that none of them reaches as soon as the
// first hand has found that out.
func (w *runner) first(ctx context.Context, leads []*lead, goal Want) error {
	if _, drop := goal[dropFigure]; drop {
		if err := w.closeIn(ctx, leads); err != nil {
			return err
		}
		if err := w.refuse(ctx, leads, goal); err != nil {
			return err
		}
	}
	return w.chase(ctx, leads, goal)
}

// lay lets the hand lay the folds that are wanted, unless the style asks for another
// number, and returns the form on which they must fit; nil: none are wanted. Folds
// come from laying them: to look for a cut on which so many form by themselves would
// be to wait for luck.
func (w *runner) lay(s *style.Style, goal Want) (*form.Form, error) {
	n, wanted := goal[countFigure]
	if wanted && s.Hang.Folds == drape.Auto {
		s.Hang.Folds = int(n)
	}
	if !wanted {
		return nil, nil
	}
	return w.hanger.form(*s)
}

// firstLeads begins one lead a fabric.
func firstLeads(spec Spec, s style.Style, goal Want, f *form.Form) ([]*lead, error) {
	starts, err := sweepStarts(spec, s)
	if err != nil {
		return nil, err
	}
	var out []*lead
	for _, c := range starts {
		if l, ok := newLead(c.style, goal, f); ok {
			out = append(out, l)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("seek: no extension can be cut: %w", cmp.Or(newCase("", starts[0].style).wrong, errNoFeed))
	}
	return out, nil
}

var errNoFeed = errors.New("none feeds as many folds as are wanted; fewer folds, or another cowl point or size")

// refuse says what can be reached if no lead reaches the wanted edge drop.
func (w *runner) refuse(ctx context.Context, leads []*lead, goal Want) error {
	for _, l := range leads {
		if math.IsNaN(goal.value(dropFigure)) || !l.aim.out() {
			return nil
		}
	}
	ends, err := w.hangLeads(ctx, leads, (*lead).firstAt, func(l *lead) []int {
		return slices.DeleteFunc([]int{l.lo, l.hi}, l.aim.tried)
	})
	if err != nil {
		return err
	}
	for _, t := range ends {
		t.lead.aim.tell(t.at, t.drop)
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, l := range leads {
		for _, t := range l.aim.tries {
			least, most = math.Min(least, t.value), math.Max(most, t.value)
		}
	}
	l, folds := leads[0], ""
	if n, wanted := goal[countFigure]; wanted {
		folds = fmt.Sprintf(" and %.0f folds", n)
	}
	return fmt.Errorf("--want: edge drop %s%s, want %s–%s: that is what extensions of %s to %s give with this cowl "+
		"point, dart share and way of adding cloth (%v); another --how, --cowl-point or --size reaches elsewhere",
		dropFigure.Amount(goal.value(dropFigure)), folds, dropFigure.Beside(math.Ceil(least)),
		dropFigure.Amount(math.Floor(most)), say.Length(float64(l.lo)/1000), say.Length(float64(l.hi)/1000), l.style.Cut.How)
}

// best sorts leads, the nearest first.
func best(leads []*lead, w Want) []*lead {
	out := slices.Clone(leads)
	far := func(l *lead) float64 {
		c, ok := l.nearest(w)
		if !ok {
			return math.Inf(1)
		}
		return w.far(c)
	}
	slices.SortStableFunc(out, func(a, b *lead) int { return cmpFloat(far(a), far(b)) })
	return out
}

// otherPoints begins leads at other cowl points in the two best fabrics.
func otherPoints(leads []*lead, w Want) []*lead {
	var out []*lead
	order := best(leads, w)
	for _, l := range order[:min(2, len(order))] {
		for _, step := range pointSteps {
			s := l.style
			s.Cut.CowlPoint = math.Round((s.Cut.CowlPoint+step)*1000) / 1000
			if s.Cut.CowlPoint < 0.01 {
				continue
			}
			if n, ok := newLead(s, w, l.form); ok {
				out = append(out, n)
			}
		}
	}
	return out
}

// otherShares begins leads with none, half and all of the dart closed at the
// best cut so far.
func otherShares(leads []*lead, w Want) []*lead {
	var out []*lead
	l := best(leads, w)[0]
	for _, share := range shareSteps {
		s := l.style
		if c, ok := l.nearest(w); ok && c.Values[2] == share {
			continue // the draft has chosen it already
		}
		s.Cut.DartShare = share
		if n, ok := newLead(s, w, l.form); ok {
			out = append(out, n)
		}
	}
	return out
}
