//go:build cgo

package window

import "cowl/cmd/cowl/internal/panel"

// scales offered; 0 is that of the display.
var (
	scaleNames  = []string{"Auto", "100 %", "150 %", "200 %"}
	scaleValues = []float64{0, 1, 1.5, 2}
)

// showTab says what is to be seen.
func (a *App) showTab(r panel.Rect) {
	u := a.ui
	r.W -= 6
	u.Scroll("show", r, func(c *panel.Column) {
		c.Heading("On the cloth")
		for _, m := range maps {
			if got := u.Radio("map/"+m.name, c.Next(28), m.name, a.units.Said(m.help)+" M goes through them.",
				a.show == m.kind); got {
				a.show = m.kind
			}
		}
		if a.show > mapPlain && len(a.panes) > 1 { // one pane has it in its corner
			c.Gap(6)
			a.legend(c.Next(50).Shrunk(8, 0))
			c.Gap(10)
		}
		c.Heading("Around it")
		a.noForm = !u.Check("form", c.Next(28), "Dress form", "The form under the cloth. Key F.", !a.noForm)
		a.through = u.Check("through", c.Next(28), "See-through cloth", "To see how facing and form lie behind. Key T.",
			a.through)
		if u.Check("trace", c.Next(28), "One warp, weft and bias line",
			"Followed from a place that you pick on the flat piece onto the drape. Key W.", a.trace.on) != a.trace.on {
			a.switchTrace()
		}
		a.set.Fine = u.Check("fine", c.Next(28), "Soft shadows at rest",
			"Slower to draw; only while nothing moves where the processor draws.", a.set.Fine)
		a.remarkControls(c)
		c.Heading("Looking back")
		b := c.Next(panel.RowHeight).Columns(2, 8)
		if u.Toggle("back/replay", b[0], "Replay the fall",
			"The way of the cloth from the last change, once more: slower, or stopped at any moment. Key R.", a.back.replay) {
			a.replayFall()
		}
		if u.Toggle("back/former", b[1], "Before", "The rest before the last change, to flip to and fro. Key B.",
			a.back.former) {
			a.flip()
		}
		c.Heading("Units")
		a.set.Units = Units([]string{"cm", "in"}[u.Choice("units", c.Next(panel.RowHeight),
			[]string{"Centimetres", "Inches"}, []string{"Lengths in centimetres.", "Lengths in inches; 3 1/8 may be typed."},
			index(a.set.Units == Inches))])
		c.Heading("Size on the screen")
		on := 0
		for i, v := range scaleValues {
			if v == a.set.Scale {
				on = i
			}
		}
		a.set.Scale = scaleValues[u.Choice("scale", c.Next(panel.RowHeight), scaleNames,
			[]string{"As the display asks for.", "One pixel a unit.", "Half as large again.",
				"Twice as large, for fine displays."}, on)]
		c.Gap(6)
		a.setLarge(u.Check("large", c.Next(28), "Large letters, for a projector",
			"Everything two fifths larger. Key L with Ctrl.", a.set.Large))
		c.Gap(10)
	})
}

func index(b bool) int {
	if b {
		return 1
	}
	return 0
}
