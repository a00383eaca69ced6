//go:build cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/sided"
)

// leftSide holds the controls.
func (a *App) leftSide(r panel.Rect) {
	if r.Empty() {
		return
	}
	u := a.ui
	u.Fill(r.Right(1/a.scale), u.Theme.Rule)
	in := r.Shrunk(16, 0)
	a.heading(in.Top(62))
	a.tab = u.Tabs("tab", &in, tabNames, sided.Strings(tabHelps, a.pane().Style.Cut.Worn), a.tab)
	foot := in.Bottom(46)
	u.Fill(panel.Rect{X: r.X, Y: foot.Y, W: r.W, H: 1 / a.scale}, u.Theme.Rule)
	a.backAndForth(foot.Shrunk(0, 8))
	in.Top(8)
	in.Bottom(6)
	body := []func(panel.Rect){a.clothTab, a.cutTab, a.foldsTab, a.standTab, a.showTab, a.compareTab, a.filesTab}[a.tab]
	body(in)
}

// heading names the style.
func (a *App) heading(r panel.Rect) {
	u, s := a.ui, &a.pane().Style
	u.Words(u.Fit(s.Name, r.W, panel.Title), r.X, r.Y+30, 0, panel.Title, u.Theme.Ink)
	wearer := "size " + s.SizeWord()
	if n := s.Taken(); n > 0 {
		wearer += fmt.Sprintf(", %d own measurements", n)
	}
	if s.Points != nil {
		wearer += ", own block"
	}
	if a.pane().keep.unsaved {
		wearer = "not saved · " + wearer
	}
	u.Words(u.Fit(upper(wearer)+" · "+s.Fabric.Title, r.W, panel.Small), r.X, r.Y+50, 0, panel.Small, u.Theme.Soft)
}

// backAndForth is the row at the foot: undo, redo, again.
func (a *App) backAndForth(r panel.Rect) {
	u := a.ui
	undo, redo := a.past.Next()
	c := r.Columns(3, 8)
	help := func(word, what, key string) string {
		if what == "" {
			return "Nothing to " + word + ". " + key
		}
		return upper(word) + " " + what + ". " + key
	}
	if u.ButtonIf(undo != "", "undo", c[0], "Undo", help("undo", undo, "Ctrl+Z")) {
		a.undo()
	}
	if u.ButtonIf(redo != "", "redo", c[1], "Redo", help("redo", redo, "Ctrl+Y")) {
		a.redo()
	}
	if u.Button("again", c[2], "Again", "Another hand places the same cloth: it never falls twice alike. Key A.") {
		a.again()
	}
}
