//go:build cgo

package window

import "strings"

// The table has a column for every pane: the figures as the readings tell them, and a
// dash for one that has none. The section shows both.
func tableOfFigures(d *drive) {
	d.key("ctrl+2")
	d.until("two panes", func(a *App) bool { return len(a.panes) == 2 })
	d.ask(func(a *App) { // the second has fallen as the first, and drops 2 cm deeper
		p := a.panes[1]
		p.stop()
		p.frame = a.panes[0].frame
		p.live, p.asked = a.panes[0].live, a.panes[0].asked
		p.frame.Outcome.EdgeDrop = 0.148
	})
	d.click("tab/Compare")
	d.click("compare/table")
	d.place("figures/close")
	d.shot("table.png")
	d.ask(func(a *App) {
		text := tabbed(a.figureTable())
		for _, want := range []string{"Drop below the neck points\t12.8 cm\t14.8 cm\n", "Cowl folds above the bust\t1\t1\n",
			"Fabric\tPolyester twill 3/1\tPolyester twill 3/1\n"} {
			if !strings.Contains(text, want) {
				d.Errorf("the table lacks %q:\n%s", want, text)
			}
		}
		p := a.panes[1]
		p.frame.Read = false
		if text := tabbed(a.figureTable()); !strings.Contains(text, "Drop below the neck points\t12.8 cm\t–\n") {
			d.Errorf("without figures in the second:\n%s", text)
		}
	})
	d.key("Escape")
	d.until("no sheet", func(a *App) bool { return a.ui.Dialog() == "" })
	d.ask(func(a *App) { a.panes[1].live = nil })
}
