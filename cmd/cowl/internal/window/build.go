//go:build cgo

package window

import (
	"fmt"
	"strconv"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
)

// build lays out the whole window for this picture and lets its controls act.
func (a *App) build() {
	u := a.ui
	a.units = a.set.Units
	u.Begin(a.wide, a.tall, a.scale, a.now)
	l := a.layout()
	a.shownPlaces = l
	a.reframe(l)
	a.handles(l) // first: their rims reach into what lies beside them
	a.middle(l)
	a.toolbar(l.bar)
	a.leftSide(l.left)
	a.rightSide(l.right)
	a.statusLine(l.status)
	a.dialogs()
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

// paneWords names a pane of several and gives its leading figure.
func (a *App) paneWords(i int, r panel.Rect) {
	u, p := a.ui, a.panes[i]
	o := p.view().Outcome
	foot := panel.Rect{X: r.X, Y: r.Y + r.H - paneFoot, W: r.W, H: paneFoot}
	name := p.Style.Fabric.Title
	cut := fmt.Sprintf("extension %s, grain %.0f°", a.units.Length(p.cowl.Extension), p.cowl.Grain/degree)
	u.Words(u.Fit(name, r.W-24, panel.Strong), r.X+12, r.Y+20, 0, panel.Strong, u.Theme.Ink)
	u.Words(u.Fit(cut, r.W-24, panel.Small), r.X+12, r.Y+39, 0, panel.Small, u.Theme.Soft)
	text := stageWords(p)
	if p.figures() {
		text = fmt.Sprintf("drop %s, %s", a.units.Length(o.EdgeDrop), plural(o.FoldCount, "cowl fold"))
		if p.frame.Stage != drape.StageRest {
			text += ", " + stageWords(p)
		} else if p.frame.Refining {
			text += ", refining"
		}
	}
	u.Words(u.Fit(text, r.W-24, panel.Plain), r.X+12, foot.Y+20, 0, panel.Plain, u.Theme.Ink)
	if i == a.active {
		u.Frame(r, 0, 2, u.Theme.Accent)
	} else {
		u.Frame(r, 0, 1, u.Theme.Rule)
	}
}
