//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// slowPart is the edge of a drawn triangle where the processor draws, m: some 4 pixels
// of a window. The finer ones of a picture that is kept cost twice the time there.
const slowPart = 0.004

// polish has the smooth surface of cloth that rests made on another goroutine, once a
// rest: it takes a tenth of a second or two. Meanwhile, when its lattice is on the screen,
// this one finds out what sky the cloth sees. While cloth moves its lattice is drawn.
func (a *App) polish(p *Pane) {
	serial := p.shown
	if p.polishing == serial || p.polished == serial {
		return
	}
	p.polishing = serial
	sheet, o := p.sheetNow(), surface.Options{FoldY: p.view().Hung.FoldY}
	if a.slow {
		o.Part = slowPart
	}
	go func() {
		defer fault.Tell()
		s := stage.NewFine(surface.Smooth(sheet, o))
		cut := cutCentre(&s.Sheet, o.FoldY, serial)
		a.post(func(a *App) { a.takeSmooth(p, s, cut) })
	}()
	a.tasks = append(a.tasks, func() {
		if p.loaded != nil && p.shown == serial {
			a.painter.LookUp(p.loaded)
		}
	})
}

// takeSmooth takes a smooth surface and its section in, unless the cloth has moved since.
func (a *App) takeSmooth(p *Pane, s stage.Fine, cut centreCut) {
	serial := cut.serial
	if p.polishing == serial {
		p.polishing = 0
	}
	if p.loaded != nil && p.shown == serial {
		a.painter.Smooth(p.loaded, s)
		p.polished, p.cut = serial, cut
	}
}
