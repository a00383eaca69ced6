//go:build cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/panel"
)

// tapeWords say what the tape measures on a pane; empty while it is not laid.
func (a *App) tapeWords(p *Pane) string {
	n := len(a.tape.at)
	switch {
	case n == 1:
		return "Tape: click where it goes on to"
	case n < 2 || !p.hasCloth():
		return ""
	}
	a.followTape(p)
	says := p.taped.says
	text := fmt.Sprintf("Tape: %s along the cloth, %s as cut, %s through the air",
		a.units.Length(says.along), a.units.Length(says.cut), a.units.Length(says.chord))
	if says.broken {
		text = fmt.Sprintf("Tape: %s along the cloth, and it leaves the cloth between: click places there too",
			a.units.Length(says.along))
	}
	return text
}

// tapeMarks writes on a pane what the tape measures, and marks its places.
func (a *App) tapeMarks(p *Pane, r panel.Rect) {
	u := a.ui
	if len(a.tape.at) == 0 || !p.hasCloth() {
		return
	}
	for _, q := range a.tape.at {
		if at, ok := inSpace(&p.view().Sheet, q); ok {
			if on, ok := a.onView(r, at); ok {
				u.Disc(on, 5, u.Theme.Ink)
				u.Disc(on, 3.5, tapeInk)
			}
		}
	}
	text := a.tapeWords(p)
	if text == "" {
		return
	}
	box := panel.Rect{X: r.X + 8, Y: r.Y + 8, W: min(u.Width(text, panel.Strong)+20, r.W-16)}
	if a.trace.on {
		box.Y += 20
	}
	lines := u.Wrap(text, box.W-20, panel.Strong)
	box.H = 20*float64(len(lines)) + 8
	u.Round(box, 4, panel.Faded(u.Theme.Ground, 0.9))
	u.Fill(panel.Rect{X: box.X, Y: box.Y + 4, W: 3, H: box.H - 8}, tapeInk)
	for i, line := range lines {
		u.Words(line, box.X+12, box.Y+18+20*float64(i), 0, panel.Strong, u.Theme.Ink)
	}
}

// tapeOnFlat draws the tape on the flat piece, and lets it be laid on there.
func (a *App) tapeOnFlat(c flatChart, p *Pane, use panel.Use) {
	u, s := a.ui, &p.view().Sheet
	if a.tool == toolTape && use.Struck && a.tab != tabStand {
		if q := c.back(u.In.X, u.In.Y); len(s.Tris) > 0 {
			if _, on := foot(s, q, len(s.Tris)); on {
				a.tape.add(q)
			}
		}
	}
	var line []panel.Point
	for _, q := range a.tape.at {
		line = append(line, c.at(q))
	}
	if len(line) > 1 {
		u.Stroke(line, 4, u.Theme.Ink)
		u.Stroke(line, 2.6, tapeInk)
	}
	for _, at := range line {
		u.Disc(at, 5, u.Theme.Ink)
		u.Disc(at, 3.5, tapeInk)
	}
}
