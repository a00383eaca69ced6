//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"
)

// The widths of the panels, units: as they open, in a small and in a wide window, and what
// else there is room for.
const (
	sideWide   = 320
	sideNarrow = 252
	sideRoomy  = 360
	centreMin  = 300 // is left of the view
	handleWide = 8   // takes hold of the rim of a panel
	stripWide  = 14  // brings one back that is away
)

// wide returns how wide a panel is in a window: as it was drawn, else by the window.
func (s Side) wide(window float64) float64 {
	w := s.Wide
	switch {
	case w > 0:
	case window < 1100:
		w = sideNarrow
	case window >= 1500:
		w = sideRoomy
	default:
		w = sideWide
	}
	return math.Round(min(max(w, sideLeast), sideMost, max((window-centreMin)/2, sideLeast)))
}

// handles let the mouse draw the panels out and put them away.
func (a *App) handles(l places) {
	whole := a.ui.Whole()
	if a.display.full || whole.W < leastForRight {
		return
	}
	s, strip := &a.set.Sides, panel.Rect{H: l.status.Y, W: stripWide}
	if whole.W >= leastForLeft {
		a.handleOf("side/left", l.left, strip, &s.Left, 1)
	}
	strip.X = whole.W - stripWide
	a.handleOf("side/right", l.right, strip, &s.Right, -1)
}

// handleOf is the handle on the inner rim of a panel at r, which lies on the left (1) or
// on the right (−1); of a panel that is away a strip is left.
func (a *App) handleOf(id string, r, strip panel.Rect, s *Side, way float64) {
	u := a.ui
	if s.Away {
		u.Fill(strip, u.Theme.Sunken)
		use := u.Area(id, strip, "Click to bring the panel back.")
		x := strip.X + strip.W/2
		y := strip.H / 2
		u.Stroke([]panel.Point{{X: x - 2*way, Y: y - 5}, {X: x + 2*way, Y: y}, {X: x - 2*way, Y: y + 5}}, 1.6, u.Theme.Soft)
		if use.Clicked {
			s.Away = false
		}
		u.Ring(strip, use)
		return
	}
	if r.Empty() {
		return
	}
	rim := r.X
	if way > 0 {
		rim += r.W
	}
	hold := panel.Rect{X: rim - handleWide/2, Y: r.Y, W: handleWide, H: r.H}
	use := u.Area(id, hold, "Drag to make the panel wider or narrower; double click to put it away.")
	if use.Over || use.Held {
		u.Fill(panel.Rect{X: rim - 1.5, Y: r.Y, W: 3, H: r.H}, u.Theme.Accent)
	}
	switch {
	case use.Struck && u.In.Double:
		s.Away = true
	case use.Held && u.In.DX != 0:
		if w := r.W + way*(u.In.X-rim); w >= sideLeast && w <= sideMost {
			s.Wide = w
		}
	}
	if use.Focus {
		for in := &u.In; in.Took(panel.KeyLeft, panel.Mods{}); {
			s.Wide = min(max(r.W-10*way, sideLeast), sideMost)
		}
		for in := &u.In; in.Took(panel.KeyRight, panel.Mods{}); {
			s.Wide = min(max(r.W+10*way, sideLeast), sideMost)
		}
	}
}

// The narrowest windows that have room for a panel on the left and on the right, units.
const (
	leastForLeft  = 700
	leastForRight = 560
)
