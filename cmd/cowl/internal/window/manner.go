//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/stage"
)

// manner says how a pane is painted.
func (a *App) manner(p *Pane, quick, fine bool) stage.Manner {
	m := stage.Manner{Quick: quick, Fine: fine, Sparing: a.slow, NoForm: a.noForm, Bare: a.show == mapPlain,
		Toile: a.show == mapPlain}
	if a.through {
		m.Opacity = 0.55
	}
	if s := &p.view().Sheet; a.trace.on {
		p.traced.update(s, a.trace.at, p.view().Job.Cowl.Grain)
		m.Lines = p.traced.ribbons(s)
	}
	if len(a.tape.at) > 1 {
		a.followTape(p)
		m.Lines = append(m.Lines, p.taped.lines(&p.view().Sheet)...)
	}
	c := maps[a.show]
	switch {
	case c.kind == mapYarns:
		m.Yarns = &yarnColours
	case c.value != nil:
		m.Map = &stage.Map{Low: c.low, High: c.high, Ramp: c.ramp}
	}
	return m
}

// followTape has the tape measured as the cloth of a pane lies now.
func (a *App) followTape(p *Pane) {
	f := p.view()
	p.taped.update(&a.tape, &f.Sheet, f.Serial)
}
