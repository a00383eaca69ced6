//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
)

// statusLine is the bottom line: news first, else the help of what the mouse or
// the focus is on.
func (a *App) statusLine(r panel.Rect) {
	u := a.ui
	if a.display.full { // news alone, over the view
		if r = u.Whole(); a.note.text == "" || a.now >= a.note.until {
			return
		}
		r = r.Bottom(statusTall)
		u.Fill(r, u.Theme.Ground)
	}
	u.Fill(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 1 / a.scale}, u.Theme.Rule)
	in := r.Shrunk(16, 0)
	keys := "F1: keys"
	u.Words(keys, in.X+in.W, r.Y+20, 1, panel.Plain, u.Theme.Soft)
	in.W -= u.Width(keys, panel.Plain) + 24
	a.errandBar(&in)
	if a.note.text != "" && a.now < a.note.until {
		ink, style := u.Theme.Ink, panel.Plain
		if a.note.bad {
			style = panel.Strong
			bar := panel.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H}
			if a.errand != nil { // its bar and button stay in sight
				bar.W = in.X + in.W + 12 - r.X
			}
			lines := u.Wrap(a.note.text, in.W, style)
			if n := min(len(lines), 4); n > 1 {
				bar.Y -= float64(n-1) * 19
				bar.H += float64(n-1) * 19
			}
			u.Fill(bar, u.Theme.Ink)
			for i, line := range lines[:min(len(lines), 4)] {
				u.Words(line, in.X, bar.Y+20+19*float64(i), 0, style, u.Theme.OnInk)
			}
			return
		}
		u.Words(u.Fit(a.note.text, in.W, style), in.X, r.Y+20, 0, style, ink)
		return
	}
	u.Words(u.Fit(u.Help, in.W, panel.Plain), in.X, r.Y+20, 0, panel.Plain, u.Theme.Soft)
}
