//go:build cgo

package window

import (
	"fmt"
	"image"
	"math"

	"cowl/cmd/cowl/internal/motion"
)

// The turntable: so many pictures round, each so long, no wider than that.
const (
	turnPictures = 36
	turnDelay    = 8   // hundredths of a second
	turnWide     = 640 // pixels
)

// saveTurntable draws the panes from all round, one picture after another
// between pictures of the window, and saves them as a GIF.
func (a *App) saveTurntable() {
	if !a.pane().hasCloth() {
		a.complain(errNoCloth)
		return
	}
	area := bound(a.layout().panes)
	p := a.newPortrait(min(1, turnWide/(area.W*a.scale)), a.slow)
	eye := a.eye
	var shots []*image.RGBA
	aim := func() error {
		e := eye
		e.Azimuth = math.Remainder(eye.Azimuth+2*math.Pi*float64(len(shots))/turnPictures, 2*math.Pi)
		return p.aim(a.painter, e)
	}
	e := &errand{}
	say := func() {
		e.text = fmt.Sprintf("Turning picture %d of %d", len(shots)+1, turnPictures)
		e.share = float64(len(shots)) / turnPictures
	}
	say()
	step := func() (bool, error) {
		done, err := p.step()
		if err != nil || !done {
			return false, err
		}
		if shots = append(shots, p.picture()); len(shots) == turnPictures {
			return true, nil
		}
		say()
		return false, aim()
	}
	e.then = func() {
		a.writeOne(a.fileName("-turntable.gif"), func() ([]byte, error) { return motion.GIF(shots, turnDelay) }, nil)
	}
	a.sit(e, p, func() error { e.step = step; return aim() })
}
