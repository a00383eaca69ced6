//go:build cgo

package window

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// leans bends the wearer by a button: the figures come, those upright are of the drape, and
// the cloth hangs on as it was. A change makes them those of before.
func leans(d *drive) {
	d.rest()
	d.click("tab/Stand")
	var was []r3.Vec
	d.ask(func(a *App) { was = slices.Clone(a.pane().frame.Sheet.Pos) })
	d.ask(func(a *App) { a.leanBy = 10 * degree })
	d.x("mousemove", "160", "520")
	d.x("click", "--repeat", "40", "5") // to the foot of the controls
	d.settle()
	d.click("stand/lean")
	d.until("an errand", func(a *App) bool { return a.errand != nil })
	d.until("figures of the lean", func(a *App) bool { return a.pane().bent != nil && a.errand == nil })
	d.x("mousemove", "160", "520")
	d.x("click", "--repeat", "40", "5")
	d.settle()
	d.shot("lean.png")
	d.ask(func(a *App) {
		p := a.pane()
		l := p.bent.lean
		if o := &p.frame.Outcome; l.Upright.StandOff != o.StandOff || l.Upright.Kept != o.Kept ||
			math.Abs(l.Angle-10*degree) > 1e-12 {
			d.Errorf("bent by %.0f° from %+v, want 10° from the %g m and %d folds of the drape", l.Angle/degree, l.Upright,
				o.StandOff, o.Kept)
		}
		if !(l.Bent.StandOff > l.Upright.StandOff) {
			d.Errorf("bent %+v, upright %+v, want the edge to fall from the chest", l.Bent, l.Upright)
		}
		if !slices.Equal(p.frame.Sheet.Pos, was) || p.bent.serial != p.frame.Serial {
			d.Error("the cloth has moved")
		}
	})
	d.ask(func(a *App) { a.setNumber("extension", a.pane().cowl.Extension+0.01, "the extension", "") })
	d.until("a change", func(a *App) bool { return a.pane().bent.serial != a.pane().frame.Serial })
	d.key("ctrl+z")
	d.rest()
	if d.ask(func(a *App) { a.lean(); a.cancel() }); !strings.Contains(d.noteNow(), "Stopped") {
		d.Errorf("a lean that is stopped says %q", d.noteNow())
	}
}

// noteNow is the line of news.
func (d *drive) noteNow() (text string) {
	d.ask(func(a *App) { text = a.note.text })
	return text
}
