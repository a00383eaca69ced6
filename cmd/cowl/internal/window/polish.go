//go:build cgo

package window

import (
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// polish has the smooth surface of cloth that rests made on another goroutine,
// once a rest: it takes some tenths of a second. Until it is there, and while
// cloth moves, its lattice is drawn.
func (a *App) polish(p *Pane) {
	serial := p.shown
	if p.polishing == serial || p.polished == serial {
		return
	}
	p.polishing = serial
	sheet, foldY := p.sheetNow(), p.view().Hung.FoldY
	go func() {
		defer fault.Tell()
		s := surface.Smooth(sheet, surface.Options{FoldY: foldY})
		a.post(func(a *App) { a.lay(p, serial, s) })
	}()
}

// lay takes a smooth surface in, unless the cloth has moved since.
func (a *App) lay(p *Pane, serial uint64, s surface.Surface) {
	if p.polishing == serial {
		p.polishing = 0
	}
	if p.loaded != nil && p.shown == serial {
		a.painter.Smooth(p.loaded, s)
		p.polished = serial
	}
}
