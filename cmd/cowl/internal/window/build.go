//go:build cgo

package window

import (
	"fmt"
	"strconv"
	"unicode"
	"unicode/utf8"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
)

// build lays out the whole window for this picture and lets its controls act.
func (a *App) build() {
	u := a.ui
	a.units = a.set.Units
	u.Begin(a.wide, a.tall, a.scale, a.now)
	l := a.layout()
	a.laid = l
	a.reframe(l)
	a.handles(l) // first: their rims reach into what lies beside them
	a.middle(l)
	a.toolbar(l.bar)
	a.leftSide(l.left)
	a.rightSide(l.right)
	a.statusLine(l.status)
	a.sheets()
	a.keys()
	a.pointer()
	if u.Complaint != "" {
		a.note = note{u.Complaint, true, a.now + 15}
	}
	u.End()
	if a.ui.In.Freed[panel.LeftButton] {
		a.past.Seal()
	}
}

// middle is the view of each pane and the flat piece.
func (a *App) middle(l places) {
	a.mark.on = false
	a.replayBar(bound(l.frames)) // first: it lies over the view
	for i, r := range l.panes {
		a.pane3D(i, r)
		if len(l.panes) > 1 {
			a.paneWords(i, l.frames[i])
		}
	}
	if !l.flat.Empty() {
		a.flatPiece(l.flat)
	}
	if len(l.panes) > 0 {
		a.pull(l.panes)
		a.dragging(l.panes[0].H)
	}
	a.drawMark(l)
}

// pane3D lets mouse and keys act on a pane and writes on it.
func (a *App) pane3D(i int, r panel.Rect) {
	u, p := a.ui, a.panes[i]
	use := u.Area("view/"+strconv.Itoa(i+1), r, a.viewHelp())
	free := a.handle(i, r, use)
	a.steer(r, use, free && a.grip == nil)
	u.Push(r)
	defer u.Pop()
	if !p.hasCloth() {
		text := "Laying out the cloth …"
		if p.dummy == nil {
			text = "Making the form …"
		}
		u.Words(text, r.X+r.W/2, r.Y+r.H/2, 0.5, panel.Plain, u.Theme.Soft)
	}
	a.traceLegend(r)
	a.tapeMarks(p, r)
	a.remarkMarks(i, r)
	a.foldMarks(p, r)
	a.pinMarks(p, r)
	if c := maps[a.show]; c.kind > mapPlain && len(a.panes) == 1 {
		foot := r.Y + r.H
		if a.back.replay || a.back.former {
			foot -= backTall
		}
		a.legend(panel.Rect{X: r.X + 20, Y: foot - 66, W: min(260, r.W-40), H: 50})
	}
	u.Ring(r.Inset(4), use)
}

func (a *App) viewHelp() string {
	if a.tool == toolLook {
		return "Drag to turn, right button or Shift to move, wheel to come nearer; arrow keys, + and − do the same."
	}
	return toolHelps[a.tool]
}

// legend explains the colours of the cloth.
func (a *App) legend(r panel.Rect) {
	u, c := a.ui, maps[a.show]
	u.Round(r.Inset(-8), 4, panel.Faded(u.Theme.Ground, 0.85))
	if c.kind == mapYarns {
		for i, y := range []struct {
			name string
			ink  [3]uint8
		}{{"warp", [3]uint8{yarnColours.Warp.R, yarnColours.Warp.G, yarnColours.Warp.B}}, {"weft", [3]uint8{yarnColours.Weft.R, yarnColours.Weft.G, yarnColours.Weft.B}}} {
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

// paneWords names a pane of several and gives its leading figure.
func (a *App) paneWords(i int, r panel.Rect) {
	u, p := a.ui, a.panes[i]
	o := p.view().Outcome
	foot := panel.Rect{X: r.X, Y: r.Y + r.H - paneFoot, W: r.W, H: paneFoot}
	name := p.Style.Fabric.Title
	cut := fmt.Sprintf("extension %s, grain %.0f°", a.units.Length(p.piece.Extension), p.piece.Grain/degree)
	u.Words(u.Fit(name, r.W-24, panel.Strong), r.X+12, r.Y+20, 0, panel.Strong, u.Theme.Ink)
	u.Words(u.Fit(cut, r.W-24, panel.Small), r.X+12, r.Y+39, 0, panel.Small, u.Theme.Soft)
	text := stageWords(p)
	if p.figures() {
		text = fmt.Sprintf("drop %s, %s", a.units.Length(o.EdgeDrop), plural(o.FoldCount, "cowl fold"))
		if p.frame.Stage != drape.StageRest {
			text += ", " + stageWords(p)
		}
	}
	u.Words(u.Fit(text, r.W-24, panel.Plain), r.X+12, foot.Y+20, 0, panel.Plain, u.Theme.Ink)
	if i == a.active {
		u.Frame(r, 0, 2, u.Theme.Accent)
	} else {
		u.Frame(r, 0, 1, u.Theme.Rule)
	}
}

// stageWords says how far a drape has come.
func stageWords(p *Pane) string {
	switch {
	case p.dummy == nil:
		return "making the form"
	case p.live == nil:
		return "waiting"
	case p.stale():
		return "changing"
	case p.failed():
		return "not at rest"
	}
	return p.frame.Stage
}

// plural writes a count with its noun.
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// upper begins a line with a capital.
func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

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
