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
	times := min(1, turnWide/(area.W*a.scale))
	eye := a.eye
	var shots []*image.RGBA
	var next func()
	next = func() {
		k := len(shots)
		a.working = fmt.Sprintf("Turntable: picture %d of %d …", k+1, turnPictures)
		e := eye
		e.Azimuth = math.Remainder(eye.Azimuth+2*math.Pi*float64(k)/turnPictures, 2*math.Pi)
		img, err := a.picture(e, times, a.slow)
		if err != nil {
			a.working = ""
			a.complain(err)
			return
		}
		shots = append(shots, img)
		if len(shots) < turnPictures {
			a.tasks = append(a.tasks, next)
			return
		}
		a.working = ""
		a.write(a.fileName("-turntable.gif"), func() ([]byte, error) { return motion.GIF(shots, turnDelay) }, nil)
	}
	a.tasks = append(a.tasks, next)
}
