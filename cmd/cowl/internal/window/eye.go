//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"
)

// look begins to glide to a named view.
func (a *App) look(view int) {
	a.head(a.framed(view), view, a.now)
}

// framed returns the eye of a named view that sees the form in the pane that is
// the narrowest.
func (a *App) framed(view int) Orbit {
	return Framed(a.pane().dummy.places(), narrowest(a.layout()), view)
}

// narrowest returns width over height of the narrowest pane.
func narrowest(l places) float64 {
	aspect := math.Inf(1)
	for _, r := range l.panes {
		aspect = min(aspect, r.W/max(r.H, 1))
	}
	return aspect
}

// reframe keeps a named view framed when the panes change their shape.
func (a *App) reframe(l places) {
	if s := narrowest(l); s != a.shape {
		a.shape = s
		if a.named >= 0 {
			a.eye, a.goal = a.framed(a.named), nil
		}
	}
}

// steer lets mouse and keys move the eye over a pane.
func (a *App) steer(r panel.Rect, u panel.Use, free bool) {
	in := &a.ui.In
	if u.Over && a.drag < 0 {
		for b, struck := range in.Struck {
			if struck && (b != panel.LeftButton || free) {
				a.drag = b
				a.freely()
			}
		}
	}
	if u.Over && in.Wheel != 0 {
		a.zoom(in.Wheel)
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
			a.freely()
		}
		for in.Took(k.key, panel.Mods{Shift: true}) {
			a.eye.Pan(move*k.dx, move*k.dy, r.H)
			a.freely()
		}
	}
}

// under returns the place of the cloth of a pane under a place of the screen.
func (a *App) under(i int, r panel.Rect, x, y float64) (hit, bool) {
	p := a.panes[i]
	if !p.hasCloth() {
		return hit{}, false
	}
	v := a.eye.View()
	ray := v.Ray(x-r.X, y-r.Y, r.W, r.H)
	h, ok := seen(&p.view().Sheet, v.Eye, ray)
	if ok && !a.noForm && p.dummy != nil && !p.Style.Hang.Free && hidden(&p.dummy.surface, v.Eye, ray, h.away) {
		return hit{}, false
	}
	return h, ok
}
