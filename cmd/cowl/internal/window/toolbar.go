//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
)

// toolbar is the row above the view: what the hand does, where one looks from,
// what is shown beside.
func (a *App) toolbar(r panel.Rect) {
	if r.Empty() {
		return
	}
	u := a.ui
	u.Rule(r, u.Theme.Rule)
	in := r.Shrunk(12, 8)
	first, second := in, in
	if r.W < barWhole {
		first, second = in.Top(panel.RowHeight), in.Bottom(panel.RowHeight)
	}
	tools := first.Left(min(318, first.W-96))
	a.useTool(tool(u.Choice("tool", tools, toolNames, toolHelps, int(a.tool))))
	if r.W < barWhole {
		a.flatToggle(first.Right(88))
		a.viewButtons(second)
		return
	}
	a.flatToggle(second.Right(88))
	second.Right(12)
	second.X, second.W = tools.X+tools.W+12, second.W-tools.W-12
	a.viewButtons(second.Right(min(second.W, 232)))
}

func (a *App) flatToggle(r panel.Rect) {
	if a.ui.Toggle("flat", r, "Flat piece", "The flat piece beside the drape; a place marked on one is marked on the "+
		"other. Key D.", a.flat) {
		a.flat = !a.flat
		a.mark = mark{}
	}
}

func (a *App) viewButtons(r panel.Rect) {
	for i, c := range r.Columns(len(views), 6) {
		if a.ui.Button("view/"+views[i].name, c, a.viewName(i), a.says(views[i].help)) {
			a.look(i)
		}
	}
}

// viewName is what the button of a named view says: straight ahead lies the side of the cowl.
func (a *App) viewName(i int) string {
	if i == 0 {
		return upper(a.pane().Style.Cut.Worn.String())
	}
	return views[i].name
}

// useTool changes what the hand does.
func (a *App) useTool(t tool) {
	if t != a.tool {
		a.letGo()
		a.endTyping()
		a.tool = t
	}
}
