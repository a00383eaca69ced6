//go:build cgo

package window

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// A back cowl is opened, hangs before the back of the form, is told in the words of a back
// and is carried over a change as a front is; a front opened after it hangs anew before the
// front, and undo brings the back again.
func TestBackCowl(t *testing.T) {
	s, err := style.Parse("back.yaml", []byte("name: Centre front in my words\nfabric: polyester-twill\n"+
		"cut: {side: back, extension_cm: 10, cowl_point_cm: 5}\nhang: {spacing_mm: 20}\n"))
	if err != nil {
		t.Fatal(err)
	}
	d := start(t, func(o *Options) { o.Style = s })
	d.rest()
	var drop float64
	d.ask(func(a *App) {
		p := a.pane()
		o := &p.frame.Outcome
		if drop = o.EdgeDrop; !(drop > 0.03 && drop < p.cowl.Report().DropV) || o.Pierced != 0 {
			t.Errorf("edge drop %.0f mm, %d pierced, want it between 30 mm and that of a V, %.0f mm, and none", 1000*drop,
				o.Pierced, 1000*p.cowl.Report().DropV)
		}
		backs(t, a, "at first")
		// The nape lies higher than the front neck point.
		if f := p.dummy.form; f.FrontNeck().Y < f.Turned().FrontNeck().Y {
			t.Errorf("the neck before the cowl at %.3f m, behind it at %.3f m, want the nape before it", f.FrontNeck().Y,
				f.Turned().FrontNeck().Y)
		}
	})
	d.shot("back.png")

	d.click("tab/Cut")
	d.click("extension/typed")
	d.x("type", "13")
	d.key("Return")
	d.until("a longer extension", func(a *App) bool { return a.pane().cowl.Extension > 0.129 })
	d.rest()
	d.ask(func(a *App) {
		// On 20 mm cloth that hangs does not follow the hand so far.
		if p := a.pane(); p.frame.Carried || p.frame.Outcome.EdgeDrop < drop+0.010 {
			t.Errorf("carried %t, edge drop %.0f mm, want it placed anew and clearly more than %.0f mm", p.frame.Carried,
				1000*p.frame.Outcome.EdgeDrop, 1000*drop)
		}
		backs(t, a, "with a longer extension")
	})
	d.click("tab/Folds")
	d.click("flat")
	d.shot("back-flat.png")
	d.click("flat")

	front := filepath.Join(t.TempDir(), "front.yaml")
	if err := os.WriteFile(front, []byte("name: Plain\nhang: {spacing_mm: 20}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	d.ask(func(a *App) { a.openFile(front) })
	d.until("a front", func(a *App) bool { return a.pane().frame.Job.Cowl.Worn == draft.AtFront && a.pane().figures() })
	d.ask(func(a *App) {
		if p := a.pane(); p.frame.Carried || ofTheFront.FindString(tabbed(a.figureTable())) == "" {
			t.Errorf("a front after a back: carried %t, told as\n%s", p.frame.Carried, tabbed(a.figureTable()))
		}
	})
	d.key("ctrl+z")
	d.until("the back again", func(a *App) bool {
		return a.pane().frame.Job.Cowl.Worn == draft.AtBack && a.pane().figures()
	})
	d.ask(func(a *App) { backs(t, a, "undone") })
}

// ofTheFront are words that nothing about a back cowl may say.
var ofTheFront = regexp.MustCompile(`(?i)centre front|front neck point|the bust|ahead of`)

// backs fails where the window says of a back cowl what holds of a front.
func backs(t *testing.T, a *App, when string) {
	t.Helper()
	p := a.pane()
	text := tabbed(a.figureTable()) + a.placeWords(p.cowl.Outline[0], p)
	if said := ofTheFront.FindString(text); said != "" || !strings.Contains(text, "elow the nape") ||
		!strings.Contains(text, "centre back to the wearer's") || a.viewName(0) != "Back" {
		t.Errorf("%s the window says %q of a back cowl, and has a view %q:\n%s", when, said, a.viewName(0), text)
	}
	if p.Style.Name != "Centre front in my words" {
		t.Errorf("%s its name is %q, want that of the user", when, p.Style.Name)
	}
}
