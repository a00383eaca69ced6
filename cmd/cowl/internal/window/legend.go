//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
)

// legend explains the colours of the cloth.
func (a *App) legend(r panel.Rect) {
	u, c := a.ui, maps[a.show]
	u.Round(r.Inset(-8), 4, panel.Faded(u.Theme.Ground, 0.85))
	if c.kind == mapYarns {
		for i, y := range []struct {
			name string
			ink  [3]uint8
		}{{"warp", [3]uint8{yarnColours.Warp.R, yarnColours.Warp.G, yarnColours.Warp.B}},
			{"weft", [3]uint8{yarnColours.Weft.R, yarnColours.Weft.G, yarnColours.Weft.B}}} {
			x := r.X + float64(i)*100
			ink := u.Theme.Ink
			ink.R, ink.G, ink.B = y.ink[0], y.ink[1], y.ink[2]
			u.Fill(panel.Rect{X: x, Y: r.Y + r.H/2 - 2, W: 34, H: 4}, ink)
			u.Words(y.name, x+42, r.Y+r.H/2+4.5, 0, panel.Plain, u.Theme.Ink)
		}
		return
	}
	mid := (c.low + c.high) / 2
	low, high := c.label(a.units, c.low), c.label(a.units, c.high)
	if c.low < 0 {
		low = "≤ " + low
	}
	u.Legend(r, upper(c.legend), c.ramp.At, [3]string{low, c.label(a.units, mid), "≥ " + high})
}
