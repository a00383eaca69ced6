//go:build cgo

package window

import (
	"sync"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"
	"cowl/sim/drape"
)

// ask keeps what is about to be hung.
func (p *Pane) ask() drape.Job {
	j := p.job()
	p.asked = asked{job: j}
	p.past.begin()
	p.ebb = ebb{}
	return j
}

// stale reports whether what is seen of a pane is that of before a change: the walk
// has not yet taken it up.
func (p *Pane) stale() bool {
	switch {
	case p.live == nil || p.asked.refused != nil:
		return false
	case p.dummy == nil: // of another body: its form is being made
		return true
	}
	return p.asked.serial != 0 && p.asked.serial == p.frame.Serial || !p.frame.Job.Same(&p.asked.job)
}

// refuse takes the error of a moment in, once, and reports whether it is news. It comes
// with every moment until the next change.
func (p *Pane) refuse() (err error, news bool) {
	if p.frame.Err == nil {
		return nil, false
	}
	err = limit.Reworded(p.frame.Err, p.says)
	news = p.asked.refused == nil || p.asked.refused.Error() != err.Error()
	p.asked.refused = err
	return err, news
}

// still reports whether the cloth that is seen does not move.
func (p *Pane) still() bool {
	return p.live != nil && (p.frame.Stage == drape.StageRest || p.frame.Stage == drape.StageStopped)
}

// resting reports whether nothing moves any more, and nothing is about to.
func (p *Pane) resting() bool { return p.still() && !p.stale() }

// failed reports whether the cloth has stopped without coming to rest.
func (p *Pane) failed() bool { return p.resting() && p.frame.Stage == drape.StageStopped }

// seeEbb follows how far the cloth is from rest.
func (p *Pane) seeEbb(now float64) {
	res := p.frame.Residual
	if p.frame.Stage != drape.StageSettling || p.stale() {
		res = 0
	}
	p.ebb.see(now, len(p.frame.Sheet.Pos), res)
}

// timeLeft says about how long it takes to rest, and how many finer lattices are to come;
// empty where that cannot be told.
func (p *Pane) timeLeft() string {
	if p.frame.Stage != drape.StageSettling || p.stale() || p.look != nil {
		return ""
	}
	finer := halvingsLeft(len(p.frame.Sheet.Pos), polyline.Area(p.frame.Hung.Outline), p.spacing())
	s, ok := p.ebb.left(finer)
	if !ok {
		return ""
	}
	text := upper(leftWords(s))
	if finer > 0 {
		text += ", with " + plural(finer, "finer lattice") + " to come"
	}
	return text
}

// figures reports whether the figures of a pane may be told: they are those of its
// style, and of cloth that is on its way to rest or there.
func (p *Pane) figures() bool {
	if p.look != nil {
		return p.look.Read && p.look.Stage != drape.StageStopped
	}
	return p.frame.Read && !p.stale() && !p.failed()
}

// stageWords says how far a drape has come.
func stageWords(p *Pane) string {
	switch {
	case p.dummy == nil:
		return "making the form"
	case p.live == nil:
		return "waiting"
	case p.stale():
		return "changing"
	case p.failed():
		return "not at rest"
	case p.frame.Refining:
		return "at rest, refining"
	}
	return p.frame.Stage
}

// job is what is to hang.
func (p *Pane) job() drape.Job {
	j := p.Style.Job(p.cowl, p.dummy.form)
	j.Report = p.report()
	return j
}

// report is called on the goroutine of the walk, which gives way once.
func (p *Pane) report() func(drape.Progress) {
	if p.gave == nil {
		p.gave = new(sync.Once)
	}
	once := p.gave
	return func(drape.Progress) { once.Do(giveWay) }
}
