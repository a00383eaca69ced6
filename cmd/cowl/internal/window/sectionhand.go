//go:build cgo

package window

import (
	"slices"
	"strconv"

	"cowl/cmd/cowl/internal/panel"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cutMark is a mark in the section by which the cloth can be laid higher or lower.
type cutMark struct {
	name string
	flat r2.Vec // m, on the centre front
	at   r3.Vec // m, where that lies now
}

// cutMarks lists the edge and, from there down, the crests that were read last.
func (p *Pane) cutMarks() []cutMark {
	var out []cutMark
	mark := func(name string, down float64) {
		flat := r2.Vec{Y: p.frame.Hung.FoldY - down}
		if at, ok := inSpace(&p.frame.Sheet, flat); ok {
			out = append(out, cutMark{name, flat, at})
		}
	}
	mark(edgeWord, 0)
	if p.frame.Read {
		for k, f := range p.frame.Reading.Folds {
			mark(strconv.Itoa(k+1), f.CF)
		}
	}
	return out
}

// What takes hold of a mark.
const (
	edgeWord  = "edge" // the name of the first
	markReach = 12     // units, to either side of it
	markStep  = 0.005  // m, by an arrow key
)

// sectionHand lets the mouse, or the arrow keys, take a mark of the section and
// lay it higher or lower.
func (a *App) sectionHand(c chart, p *Pane) {
	u := a.ui
	if p.live == nil || p.look != nil {
		return
	}
	for _, m := range p.cutMarks() {
		at := c.at(r2.Vec{X: m.at.Z, Y: m.at.Y})
		if m.name == edgeWord {
			u.Disc(at, 5, u.Theme.OnInk)
			u.Disc(at, 4, u.Theme.Ink)
			r := a.edgePlace(c, p, at)
			u.Words(edgeWord, r.X, r.Y+11, 0, panel.Small, u.Theme.Ink)
		}
		r := panel.Rect{X: at.X - markReach, Y: at.Y - markReach, W: 2 * markReach, H: 2 * markReach}
		use := u.Area("section/"+m.name, r, "Drag to lay it higher or lower; let go of the button and it falls. With "+
			"Shift, or by the arrow keys, it stays held until L.")
		if use.Struck {
			a.hold(grip{pane: a.active, flat: m.flat, at: m.at, cut: m.name, stays: u.In.Mods.Shift})
		}
		if dy := arrows(&u.In, use); dy != 0 {
			a.nudge(m, dy)
		}
		u.Ring(r, use)
	}
	a.drawCut(c, p)
}

// edgePlace returns where the word for the edge is written beside its mark: where no
// number of a fold is in the way.
func (a *App) edgePlace(c chart, p *Pane, at panel.Point) panel.Rect {
	wide := a.ui.Width(edgeWord, panel.Small)
	left, right := at.X-9-wide, at.X+9
	places := []panel.Rect{
		{X: left, Y: at.Y - 16, W: wide, H: 13}, {X: right, Y: at.Y - 16, W: wide, H: 13},
		{X: right, Y: at.Y - 1, W: wide, H: 13},
		{X: left, Y: at.Y - 1, W: wide, H: 13}, {X: at.X - wide/2, Y: at.Y - 25, W: wide, H: 13},
		{X: at.X - wide/2, Y: at.Y + 10, W: wide, H: 13},
		{X: right + 18, Y: at.Y - 6, W: wide, H: 13},
	}
	signs := a.foldSigns(c, p)
	for _, r := range places {
		if !slices.ContainsFunc(signs, func(o panel.Rect) bool { return !r.Meet(o).Empty() }) {
			return r
		}
	}
	return places[0]
}

// arrows returns how far the arrow keys move what has the focus, m.
func arrows(in *panel.Input, use panel.Use) float64 {
	dy := 0.0
	if use.Focus {
		for in.Took(panel.KeyUp, panel.Mods{}) {
			dy += markStep
		}
		for in.Took(panel.KeyDown, panel.Mods{}) {
			dy -= markStep
		}
	}
	return dy
}

// nudge moves the hand that holds a mark up by dy, m, and takes hold of it first.
func (a *App) nudge(m cutMark, dy float64) {
	if g := a.grip; g == nil || g.cut != m.name || !g.stays {
		a.hold(grip{pane: a.active, flat: m.flat, at: m.at, cut: m.name, stays: true})
	}
	g := a.grip
	g.at.Y += dy
	a.panes[g.pane].live.Grab(g.flat, g.at)
}

// drawCut moves the hand in the section with the mouse, lets go with the button
// and shows where it is.
func (a *App) drawCut(c chart, p *Pane) {
	g, in := a.grip, &a.ui.In
	if g == nil || g.cut == "" || a.panes[g.pane] != p {
		return
	}
	if in.Down[panel.LeftButton] && (in.DX != 0 || in.DY != 0) {
		g.at = c.moved(g.at, in.DX, in.DY)
		p.live.Grab(g.flat, g.at)
	}
	a.ui.Disc(c.at(r2.Vec{X: g.at.Z, Y: g.at.Y}), 6, panel.Faded(a.ui.Theme.Accent, 0.6))
	if in.Freed[panel.LeftButton] && !g.stays {
		a.letGo()
	}
}
