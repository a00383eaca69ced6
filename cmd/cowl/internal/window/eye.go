//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"
)

// glideTime is how long the eye takes to a named view, s.
const glideTime = 0.25

// look begins to glide to a named view.
func (a *App) look(view int) {
	to := a.framed(view)
	a.goal, a.stand = &to, a.now
}

// framed returns the eye of a named view that sees the form in the pane that is
// the narrowest.
func (a *App) framed(view int) Orbit {
	aspect := math.Inf(1)
	for _, r := range a.layout().panes {
		aspect = min(aspect, r.W/max(r.H, 1))
	}
	return Framed(a.pane().dummy.places(), aspect, view)
}

// glide moves the eye on and reports whether it is on its way.
func (a *App) glide() bool {
	if a.goal == nil {
		return false
	}
	t := (a.now - a.stand) / glideTime
	if t >= 1 {
		a.eye, a.goal = *a.goal, nil
		return true
	}
	a.eye = a.eye.Towards(*a.goal, t*t*(3-2*t)*0.35)
	return true
}

// steer lets mouse and keys move the eye over a pane.
func (a *App) steer(r panel.Rect, u panel.Use, free bool) {
	in := &a.ui.In
	if u.Over && a.drag < 0 {
		for b, struck := range in.Struck {
			if struck && (b != panel.LeftButton || free) {
				a.drag, a.goal = b, nil
			}
		}
	}
	if u.Over && in.Wheel != 0 {
		a.eye.Zoom(in.Wheel)
		a.goal = nil
	}
	if u.Focus {
		a.steerKeys(r)
	}
}

// dragging moves the eye while a button is held.
func (a *App) dragging(tall float64) {
	in := &a.ui.In
	switch {
	case a.drag < 0:
		return
	case a.drag == panel.LeftButton && !in.Mods.Shift:
		a.eye.Turn(in.DX, in.DY)
	default:
		a.eye.Pan(in.DX, in.DY, tall)
	}
	if !in.Down[a.drag] {
		a.drag = -1
	}
}

// steerKeys turns, moves and zooms by keys, while the view has the focus.
func (a *App) steerKeys(r panel.Rect) {
	const turn, move = 12.0, 24.0
	in := &a.ui.In
	for _, k := range []struct {
		key    panel.Key
		dx, dy float64
	}{{panel.KeyLeft, -1, 0}, {panel.KeyRight, 1, 0}, {panel.KeyUp, 0, -1}, {panel.KeyDown, 0, 1}} {
		for a.tool == toolLook && in.Took(k.key, panel.Mods{}) {
			a.eye.Turn(turn*k.dx, turn*k.dy)
			a.goal = nil
		}
		for in.Took(k.key, panel.Mods{Shift: true}) {
			a.eye.Pan(move*k.dx, move*k.dy, r.H)
			a.goal = nil
		}
	}
}
