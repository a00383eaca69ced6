//go:build cgo

package window

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fault"
)

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
	case p.frame.Refining:
		a.say("Wait until it is refined, or take the tick off Finer lattice at rest (Cut): the other hands hang on " +
			"the same lattices as this one.")
		return
	}
	if a.opt.Afford != nil {
		if err := a.opt.Afford(p.Style, p.cowl, len(a.panes)+1); err != nil {
			a.complain(err)
			return
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	f := &fiveHands{job: p.frame.Job, cancel: cancel}
	first := p.frame.Outcome
	f.job.Report, f.job.Fine = nil, first.Coarser != nil
	p.five = f
	from := 0
	// it is that of the first hand
	if !p.frame.Carried && p.hands.none() && p.hands.touch == 0 && first.Status == sim.Settled {
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

// withSpread writes a figure of a pane, with its spread where five hands have hung.
func (a *App) withSpread(p *Pane, f *measure.Figure, v float64) string {
	text := figure(a.units, f, v)
	if s, ok := p.spreadOf(f); ok && !math.IsNaN(s) {
		return plusMinus(text, spreadText(a.units, f, s))
	}
	return text
}

// fiveControls are the button, how far the hands are, and what they have in common.
func (a *App) fiveControls(c *panel.Column, id string, p *Pane) {
	u, f := a.ui, p.five
	label, help := "Hang by five hands", "Four more hands hang this style beside the window; every figure is then "+
		"told with its spread. Key H."
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
		c.Text("The five hands hung it as it was before.", panel.Small, true)
	}
	c.Gap(8)
}
