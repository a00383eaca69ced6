//go:build cgo

package window

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"strings"
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fault"
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
	job    drape.Job // of the pane, with the hand shown
	each   []drape.Outcome
	failed int                // hands whose cloth found no rest
	share  [manyHands]float64 // 0..1, how far each is
	cancel context.CancelFunc // nil: all have hung
}

// holds reports whether what the hands made is of what hangs in a pane.
func (f *fiveHands) holds(p *Pane) bool {
	return f != nil && !p.stale() && f.job.Same(&p.frame.Job)
}

// done is how much of the hanging is behind, 0..1.
func (f *fiveHands) done() (share float64) {
	for _, s := range f.share {
		share += s / manyHands
	}
	return share
}

// hangByFive hangs the style of the active pane by five hands beside the window, or
// stops that.
func (a *App) hangByFive() {
	p := a.pane()
	switch {
	case p.five != nil && p.five.cancel != nil:
		p.stopFive()
		a.say("Stopped: the figures stay those of one hand.")
		return
	case !p.frame.Read || !p.resting():
		a.say("Wait until the cloth rests: the other hands lay as many folds as this one.")
		return
	}
	if a.opt.Afford != nil {
		if err := a.opt.Afford(p.Style, p.piece, len(a.panes)+1); err != nil {
			a.complain(err)
			return
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	f := &fiveHands{job: p.frame.Job, cancel: cancel}
	f.job.Report = nil
	first := p.frame.Outcome
	p.five = f
	from := 0
	if !p.frame.Carried && p.hands.none() && p.hands.touch == 0 && first.Status == sim.Settled { // it is that of the first hand
		f.each, f.share[0], from = append(f.each, first), 1, 1
	}
	go a.hangEach(ctx, f, &first, from)
}

// hangEach hangs the hands from one on, one after the other: what is watched goes first.
func (a *App) hangEach(ctx context.Context, f *fiveHands, first *drape.Outcome, from int) {
	defer fault.Tell()
	giveWay()
	for k := from; k < manyHands; k++ {
		j := f.job
		j.Seed += uint64(k)
		j.Alone = runtime.NumCPU() > 1 // the other cores are for the window and its own drapes
		j.Report = a.tellShare(f, k)
		run, err := a.hangLike(ctx, j, first)
		if ctx.Err() != nil {
			return
		}
		if err != nil { // so it would be with every hand
			a.post(func(a *App) {
				f.cancel()
				*f = fiveHands{job: f.job, failed: manyHands}
				a.complain(err)
			})
			return
		}
		a.post(func(*App) {
			f.share[k] = 1
			if run.Outcome.Status == sim.Settled {
				f.each = append(f.each, run.Outcome)
			} else {
				f.failed++
			}
		})
	}
	a.post(func(a *App) { f.cancel(); f.cancel = nil })
}

// tellShare returns what tells the window how far a hand is, twice a second at most.
func (a *App) tellShare(f *fiveHands, k int) func(drape.Progress) {
	var last time.Time
	return func(p drape.Progress) {
		if time.Since(last) < 500*time.Millisecond {
			return
		}
		last = time.Now()
		a.post(func(*App) { f.share[k] = max(f.share[k], handShare(p)) })
	}
}

// handShare is about how much of a hand's work is behind: placing is a third of it.
func handShare(p drape.Progress) float64 {
	if p.Stage == drape.StagePlacing || p.Residual <= 0 {
		return p.Share / 3
	}
	return 1.0/3 + 2.0/3*balanceShare(p.Residual)
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

// withSpread writes a figure of a pane, with its spread where five hands have hung.
func (a *App) withSpread(p *Pane, f *measure.Figure, v float64) string {
	text := figure(a.units, f, v)
	if s, ok := p.spreadOf(f); ok && !math.IsNaN(s) {
		return plusMinus(text, spreadText(a.units, f, s))
	}
	return text
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

// fiveControls are the button, how far the hands are, and what they have in common.
func (a *App) fiveControls(c *panel.Column, id string, p *Pane) {
	u, f := a.ui, p.five
	label, help := "Hang by five hands", "Four more hands hang this style beside the window; every figure is then told with its spread. Key H."
	if f != nil && f.cancel != nil {
		label, help = "Stop the five hands", "Stops it. The figures stay those of one hand. Key H."
	}
	c.Gap(4)
	if u.Button(id, c.Next(panel.RowHeight), label, help) {
		a.hangByFive()
	}
	c.Gap(8)
	switch {
	case f == nil:
	case f.cancel != nil:
		r := c.Next(10)
		u.Bar(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 6}, f.done())
		c.Text(fmt.Sprintf("%d of %d hands have hung it.", len(f.each)+f.failed, manyHands), panel.Small, true)
	case f.holds(p):
		c.Text(f.words(a.units), panel.Small, true)
	default:
		c.Text("The five hands hung it as it was before the change.", panel.Small, true)
	}
	c.Gap(8)
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
	text := fmt.Sprintf("±: the standard deviation of %d hands. Their drop is %s on average; cowl folds, one number a hand: %s.",
		len(f.each), u.Length(mean), strings.Join(counts, " "))
	if f.failed > 0 {
		text += " " + plural(f.failed, "hand") + " found no rest and are left out."
	}
	return text
}
