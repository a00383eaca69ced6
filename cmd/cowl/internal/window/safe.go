//go:build cgo

package window

import (
	"path/filepath"
	"time"
)

// shelfFolder holds the styles kept safe, in the folder of settings.
const shelfFolder = "unsaved"

// shelf is where styles that are not saved lie.
func (a *App) shelf() shelf { return shelf{filepath.Join(a.opt.Config, shelfFolder)} }

// touched keeps the style of a pane safe after a change.
func (p *Pane) touched(now float64) {
	p.own = true
	p.keep.unsaved, p.keep.due = true, now+0.5
}

// keepSafe lays styles on the shelf half a second after the last change; a crash or a
// reset of the driver then loses nothing.
func (a *App) keepSafe(now bool) {
	for _, p := range a.panes {
		if p.keep.due == 0 || !now && a.now < p.keep.due {
			continue
		}
		p.keep.due = 0
		file, err := a.shelf().put(p.keep.file, time.Now(), &p.Style, p.hands)
		p.keep.file = file
		if err != nil {
			a.complain(err)
		}
	}
}

// saved takes the style of a pane off the shelf: it has been saved.
func (a *App) saved(p *Pane) {
	a.shelf().drop(p.keep.file)
	p.keep = keeping{}
}

// keepSettings writes the settings, and the styles if that was to be done still.
func (a *App) keepSettings() {
	a.keepSafe(true)
	if err := a.set.save(a.opt.Config); err != nil {
		a.complain(err)
	}
}
