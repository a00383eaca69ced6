//go:build cgo

package window

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/limit"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fault"
)

// leanControls bend the wearer of the cloth that rests, and tell what became of it. They are
// no part of the style, and the cloth hangs on as it was.
func (a *App) leanControls(c *panel.Column) {
	p := a.pane()
	c.Heading("Bend the wearer forward")
	s := a.slider(drape.LeanRange(a.leanBy), control{"lean", "the lean", "By",
		"How far the wearer bends from the hips, 5° at a time, and up again."})
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), a.leanBy); ch != panel.Same {
		a.leanBy = v
	}
	can := p.resting() && !p.failed() && !p.Style.Hang.Free && a.leanBy > 0
	if a.ui.ButtonIf(can, "stand/lean", c.Next(panel.RowHeight), "Bend and come up",
		"Tries it on a copy of the cloth as it rests: what hangs stays as it is. Takes about as long as a drape.") {
		a.lean()
	}
	c.Gap(6)
	switch l := p.bent; {
	case l == nil:
	case l.serial != p.frame.Serial:
		c.Text("The wearer bent before the last change.", panel.Small, true)
	default:
		for _, line := range measure.Leaning(&l.lean, l.laid, a.units) {
			c.Text(upper(p.says(line))+".", panel.Small, false)
			c.Gap(2)
		}
	}
	c.Gap(8)
}

// lean bends the wearer of the active pane, on a goroutine.
func (a *App) lean() {
	p, angle := a.pane(), a.leanBy
	ctx, cancel := context.WithCancel(context.Background())
	e := &errand{text: fmt.Sprintf("Bending the wearer forward by %.0f°", angle/degree), free: cancel}
	if !a.beginErrand(e) {
		cancel()
		return
	}
	live, out := p.live, &bent{laid: p.frame.Outcome.Laid, serial: p.frame.Serial}
	go func() {
		defer fault.Tell()
		giveWay()
		var err error
		out.lean, err = live.Lean(ctx, angle, func(share float64) { a.post(func(*App) { e.share = share }) })
		a.post(func(a *App) {
			if a.errand != e {
				return // it was stopped
			}
			a.endErrand()
			switch {
			case errors.Is(err, context.Canceled):
			case err != nil:
				a.complain(limit.Reworded(err, p.says))
			default:
				p.bent = out
				a.say(fmt.Sprintf("The wearer has bent by %.0f° and come up again.", math.Round(angle/degree)))
			}
		})
	}()
}
