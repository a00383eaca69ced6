//go:build cgo

package window

import (
	"context"
	"fmt"
	"strings"

	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fold"
)

// manyHands is by how many hands the spread of a figure is told.
const manyHands = 5

// hanger hangs a job by its hand, which lays and takes up as in an outcome:
// drape.HangLike, or what a test has in its place.
type hanger func(context.Context, drape.Job, *drape.Outcome) (*drape.Run, error)

// fiveHands is what five hands make of the style of a pane. It belongs to the thread of
// the window.
type fiveHands struct {
	job    drape.Job // of the pane, with the hand shown; Fine if what was shown is refined
	each   []drape.Outcome
	failed int                // hands whose cloth found no rest
	share  [manyHands]float64 // 0..1, how far each is
	cancel context.CancelFunc // nil: all have hung
}

// holds reports whether what the hands made is of what hangs in a pane.
func (f *fiveHands) holds(p *Pane) bool {
	return f != nil && !p.stale() && f.job.Same(&p.frame.Job) && f.job.Fine == (p.frame.Outcome.Coarser != nil)
}

// done is how much of the hanging is behind, 0..1.
func (f *fiveHands) done() (share float64) {
	for _, s := range f.share {
		share += s / manyHands
	}
	return share
}

// stopFive ends the hanging by five hands and forgets it.
func (p *Pane) stopFive() {
	if p.five != nil && p.five.cancel != nil {
		p.five.cancel()
	}
	p.five = nil
}

// spreadOf returns the standard deviation of a figure over the hands, SI; false while
// there is none.
func (p *Pane) spreadOf(f *measure.Figure) (float64, bool) {
	if p.look != nil || !p.five.holds(p) || p.five.cancel != nil || len(p.five.each) < 3 {
		return 0, false
	}
	var v []float64
	for i := range p.five.each {
		v = append(v, f.SI(&p.five.each[i]))
	}
	return fold.Spread(v), true
}

// plusMinus joins an amount and its spread, with one unit where both have the same.
func plusMinus(amount, spread string) string {
	if k := strings.LastIndex(amount, " "); k >= 0 && strings.HasSuffix(spread, amount[k:]) {
		amount = amount[:k]
	}
	return amount + " ± " + spread
}

// spreadText writes a spread in the unit of its figure, inches in thirty-seconds.
func spreadText(u Units, f *measure.Figure, v float64) string {
	if sign := f.Metric().Sign; u == Inches && (sign == measure.Centimetre.Sign || sign == measure.Millimetre.Sign) {
		return u.Small(v)
	}
	return amount(u, f.Metric(), f.Digits, false, v)
}

// words say what the hands have in common.
func (f *fiveHands) words(u Units) string {
	if len(f.each) < 3 {
		return fmt.Sprintf("Only %d of five hands came to rest: too few for a spread.", len(f.each))
	}
	var counts []string
	mean := 0.0
	for _, o := range f.each {
		counts = append(counts, fmt.Sprint(o.FoldCount))
		mean += o.EdgeDrop / float64(len(f.each))
	}
	text := fmt.Sprintf("±: the standard deviation of %d hands. Their drop is %s on average; cowl folds, one number a "+
		"hand: %s.",
		len(f.each), u.Length(mean), strings.Join(counts, " "))
	if f.failed > 0 {
		text += " " + plural(f.failed, "hand") + " found no rest and are left out."
	}
	return text
}
