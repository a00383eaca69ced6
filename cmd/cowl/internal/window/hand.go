//go:build cgo

package window

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// handle lets the tool act on a pane. It reports whether the left button is
// free to turn the view.
func (a *App) handle(i int, r panel.Rect, u panel.Use) (free bool) {
	x, y := a.ui.In.X, a.ui.In.Y
	if !u.Over && !u.Focus {
		return true
	}
	h, ok := hit{}, false
	if u.Over {
		h, ok = a.under(i, r, x, y)
	}
	if ok && a.grip == nil && a.drag < 0 {
		a.mark = mark{i, h.flat, h.at, true}
	}
	if !u.Struck && !(u.Clicked && !a.ui.In.Freed[panel.LeftButton]) {
		return true
	}
	a.active = i
	if a.tool == toolTape && ok {
		a.tape.add(h.flat)
		return false
	}
	if a.tool == toolWrite {
		a.beginRemark(i, r)
		return false
	}
	if a.tool == toolLook || !ok || a.panes[i].look != nil || a.panes[i].live == nil {
		return true
	}
	switch a.tool {
	case toolGrab:
		a.grab(i, h)
	case toolPin:
		a.pin(i, h)
	case toolUnpin:
		a.unpin(i, h)
	}
	return false
}

// grab takes hold of the cloth.
func (a *App) grab(i int, h hit) {
	_, _, back := a.eye.View().Axes()
	a.hold(grip{pane: i, flat: h.flat, at: h.at, normal: back, stays: a.ui.In.Mods.Shift})
}

// touch takes note that a hand changes how the cloth of a pane hangs: what is seen
// until the next moment is that of before.
func (a *App) touch(p *Pane) {
	if p.frame.Outcome.Status != sim.Diverged { // such cloth never moves again
		p.asked.serial = p.frame.Serial
	}
}

// offCloth is a place of the flat piece where there is no cloth, m.
var offCloth = r2.Vec{X: 1e3, Y: 1e3}

// hold closes the hand.
func (a *App) hold(g grip) {
	a.letGo()
	a.past.Record(a.state(), "pulling the cloth", "")
	a.panes[g.pane].hands.touch++
	a.grip = &g
	a.touch(a.panes[g.pane])
	a.panes[g.pane].live.Grab(g.flat, g.at)
}

// pull moves the hand with the mouse, and lets go with the button.
func (a *App) pull(panes []panel.Rect) {
	g := a.grip
	if g == nil || g.pane >= len(panes) || a.panes[g.pane].live == nil {
		a.grip = nil
		return
	}
	if g.cut != "" {
		return
	}
	in := &a.ui.In
	r := panes[g.pane]
	if in.Down[panel.LeftButton] && (in.DX != 0 || in.DY != 0) {
		v := a.eye.View()
		ray := v.Ray(in.X-r.X, in.Y-r.Y, r.W, r.H)
		if c := r3.Dot(ray, g.normal); math.Abs(c) > 1e-6 {
			away := r3.Dot(r3.Sub(g.at, v.Eye), g.normal) / c
			g.at = r3.Add(v.Eye, r3.Scale(away, ray))
			a.panes[g.pane].live.Grab(g.flat, g.at)
		}
	}
	if in.Freed[panel.LeftButton] && !g.stays {
		a.letGo()
	}
}

// letGo opens the hand.
func (a *App) letGo() {
	if a.grip == nil {
		return
	}
	if p := a.panes[min(a.grip.pane, len(a.panes)-1)]; p.live != nil {
		p.live.Drop()
		p.touched(a.now)
	}
	a.grip = nil
}

// pin sets a pin where the cloth lies.
func (a *App) pin(i int, h hit) {
	p := a.panes[i]
	a.past.Record(a.state(), "a pin", "")
	p.hands.own = append(p.hands.own, pinMark{h.flat, h.at})
	a.touch(p)
	p.live.Pin(h.flat, h.at)
	a.say("Pinned. Unpin takes it out again.")
	p.touched(a.now)
}

// unpinReach is how near to a pin one must click on the flat piece, m.
const unpinReach = 0.03

// unpin takes out the pin nearest to a place.
func (a *App) unpin(i int, h hit) {
	p := a.panes[i]
	best, far := -1, math.Inf(1)
	pins := p.live.Pins()
	for k, q := range pins {
		if d := r2.Norm(r2.Sub(q.Flat, h.flat)); d < far {
			best, far = k, d
		}
	}
	if best < 0 || far > unpinReach {
		a.say(fmt.Sprintf("There is no pin within %s of this place.", a.units.Length(unpinReach)))
		return
	}
	a.past.Record(a.state(), "a pin taken out", "")
	q := pins[best]
	if q.Own {
		for k, m := range p.hands.own {
			if m.flat == q.Flat || m.at == q.At {
				p.hands.own = append(p.hands.own[:k:k], p.hands.own[k+1:]...)
				break
			}
		}
	} else {
		p.hands.gone = append(p.hands.gone, pinMark{q.Flat, q.At})
	}
	a.touch(p)
	p.live.Unpin(q.Flat)
	a.say(fmt.Sprintf("Took out a pin: %s.", q.Name))
	p.touched(a.now)
}
