//go:build cgo

package window

import (
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// leastArrow is how far the mouse must be drawn for an arrow, units; else it is a title.
const leastArrow = 12

// remarkField is where the words of the last remark are typed.
const remarkField = "remark"

// beginRemark begins one where the button went down.
func (a *App) beginRemark(pane int, r panel.Rect) {
	a.endTyping()
	at := a.shareOf(r)
	a.remarks.list = append(a.remarks.list, remark{pane: pane, at: at, to: at})
	a.remarks.pulling = true
}

// shareOf is where the mouse is on a view, its middle where it is elsewhere.
func (a *App) shareOf(r panel.Rect) r2.Vec {
	if !a.remarks.pulling && !r.Has(a.ui.In.X, a.ui.In.Y) {
		return r2.Vec{X: 0.5, Y: 0.5}
	}
	return r2.Vec{X: (a.ui.In.X - r.X) / r.W, Y: (a.ui.In.Y - r.Y) / r.H}
}

// pullRemark draws the arrow out with the mouse, and has its words typed when the button
// is let go.
func (a *App) pullRemark(i int, r panel.Rect) {
	m := a.remarks.last()
	if !a.remarks.pulling || m.pane != i {
		return
	}
	m.to = a.shareOf(r)
	far := r2.Norm(r2.Vec{X: (m.to.X - m.at.X) * r.W, Y: (m.to.Y - m.at.Y) * r.H})
	m.points = far >= leastArrow
	if a.ui.In.Down[panel.LeftButton] {
		return
	}
	a.remarks.pulling, a.remarks.typing = false, true
	if h, ok := a.under(i, r, a.ui.In.X, a.ui.In.Y); ok && m.points {
		m.onCloth, m.flat = true, h.flat
	}
	a.ui.Focus(remarkField)
}

// endTyping leaves the words; a title without any is none.
func (a *App) endTyping() {
	if !a.remarks.typing {
		return
	}
	a.remarks.typing = false
	if m := a.remarks.last(); !m.points && strings.TrimSpace(m.words) == "" {
		a.remarks.back()
	}
}

// notes lays the remarks of a pane out on r, in units of the screen.
func (a *App) notes(i int, r panel.Rect) (out []stage.Note) {
	s := &a.panes[i].view().Sheet
	see := func(q r3.Vec) (r2.Vec, bool) {
		x, y, ahead := a.eye.View().Pixel(q, r.W, r.H)
		return r2.Vec{X: x, Y: y}, ahead > 0
	}
	for k := range a.remarks.list {
		if m := &a.remarks.list[k]; m.pane == i {
			out = append(out, m.note(s, see, r2.Vec{X: r.X, Y: r.Y}, r.W, r.H))
		}
	}
	return out
}

// remarkMarks draws the remarks of a pane, and the field in which words are typed.
func (a *App) remarkMarks(i int, r panel.Rect) {
	u := a.ui
	a.pullRemark(i, r)
	notes := a.notes(i, r)
	for k, n := range notes {
		at := panel.Point{X: n.At.X, Y: n.At.Y}
		if head := stage.Tip(n.At, n.To, 1); n.Points && head != nil {
			neck := stage.Neck(head)
			u.Stroke([]panel.Point{at, {X: neck.X, Y: neck.Y}}, stage.NoteLine, stage.NoteInk)
			var tip []panel.Point
			for _, q := range head {
				tip = append(tip, panel.Point{X: q.X, Y: q.Y})
			}
			u.Convex(tip, stage.NoteInk)
		}
		if a.remarks.typing && a.remarks.last().pane == i && k == len(notes)-1 {
			a.remarkWords(at, r)
		} else if n.Words != "" {
			style := panel.Style{Size: stage.NoteLetters, Bold: true}
			wide, tall := u.Width(n.Words, style)/2+stage.NotePad, stage.NoteLetters/2+stage.NotePad
			u.Fill(panel.Rect{X: at.X - wide, Y: at.Y - tall, W: 2 * wide, H: 2 * tall}, stage.NoteGround)
			u.Words(n.Words, at.X, at.Y+0.36*stage.NoteLetters, 0.5, style, stage.NoteInk)
		}
	}
}

// remarkWords is the field for the words at a place, kept within the view.
func (a *App) remarkWords(at panel.Point, view panel.Rect) {
	const wide = 220
	r := panel.Rect{X: at.X - wide/2, Y: at.Y - panel.RowHeight/2, W: wide, H: panel.RowHeight}
	r.X = max(view.X+4, min(r.X, view.X+view.W-wide-4))
	m := a.remarks.last()
	words, done := a.ui.Field(remarkField, r, m.words, "words, then Enter", "What is to stand here. Enter ends it.")
	m.words = words
	if done || a.ui.Focused() != remarkField {
		a.endTyping()
		a.ui.Focus("")
	}
}

// pointer is the ring round the mouse that is seen from afar.
func (a *App) pointer() {
	if in := &a.ui.In; a.pointing && in.Present {
		at := panel.Point{X: in.X, Y: in.Y}
		a.ui.Disc(at, 26, panel.Faded(stage.NoteInk, 0.22))
		a.ui.Frame(panel.Rect{X: at.X - 26, Y: at.Y - 26, W: 52, H: 52}, 26, 3, stage.NoteInk)
	}
}

// remarkControls are for a class, under Show.
func (a *App) remarkControls(c *panel.Column) {
	u := a.ui
	c.Heading("For a class")
	a.pointing = u.Check("pointer", c.Next(28), "Large pointer",
		"A ring round the mouse, to be seen from the back of a room. Key K.", a.pointing)
	if n := len(a.remarks.list) + len(a.tape.at); n > 0 {
		if u.Button("remarks/clear", c.Next(panel.RowHeight), "Take tape, arrows and titles off",
			"All of them. Backspace takes the last one alone.") {
			a.remarks = remarks{}
			a.tape.clear()
		}
		c.Gap(4)
	}
}

// takeBack takes the last remark or place of the tape away, or all of them: what the tool
// in use has made.
func (a *App) takeBack(all bool) {
	switch {
	case a.tool == toolWrite && all:
		a.remarks = remarks{}
	case a.tool == toolWrite:
		a.remarks.back()
	case all:
		a.tape.clear()
	default:
		a.tape.back()
	}
}

// pictureNotes lays remarks and tape out on a picture of all panes, times as large as on
// the screen.
func (a *App) pictureNotes(times float64) []stage.Note {
	l := a.layout()
	area, k := bound(l.panes), a.scale*times
	var out []stage.Note
	for i, r := range l.panes {
		r = panel.Rect{X: (r.X - area.X) * k, Y: (r.Y - area.Y) * k, W: r.W * k, H: r.H * k}
		out = append(out, a.notes(i, r)...)
		if len(a.tape.at) > 1 {
			text := a.tapeWords(a.panes[i])
			half := func() float64 {
				return (a.ui.Width(text, panel.Style{Size: stage.NoteLetters, Bold: true})/2 + 2*stage.NotePad) * k
			}
			if 2*half() > r.W { // what is measured, alone
				text = "Tape: " + a.units.Length(a.panes[i].taped.says.along)
			}
			out = append(out, stage.Note{Words: text, At: r2.Vec{X: r.X + half(), Y: r.Y + 26*k}})
		}
	}
	return out
}
