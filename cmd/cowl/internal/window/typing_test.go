//go:build cgo

package window

import "strings"

// Letters and the Enter that ends them, all in one picture, are what was typed and no
// command: neither grab, nor another hand, nor see-through cloth.
func typedAtOnce(d *drive) {
	d.click("tab/Files")
	d.click("folder")
	d.key("ctrl+a")
	d.together(func() {
		d.x("type", "--delay", "0", "gate")
		d.x("key", "Return")
	})
	d.ask(func(a *App) {
		if a.set.Folder != "gate" || a.tool != toolLook || a.through || a.pane().seed() != 1 {
			d.Errorf("typed gate and Enter: folder %q, tool %d, see-through %v, hand %d; want the folder and nothing else",
				a.set.Folder, a.tool, a.through, a.pane().seed())
		}
		a.set.Folder = d.out
	})
}

// The mouse comes from afar and presses in the same picture: the view stands.
func travelBeforePress(d *drive) {
	d.x("mousemove", "400", "300")
	d.settle()
	var before Orbit
	d.ask(func(a *App) { before = a.eye })
	d.together(func() {
		d.x("mousemove", "700", "420")
		d.x("mousedown", "1")
	})
	d.ask(func(a *App) {
		if a.eye != before || a.drag < 0 {
			d.Errorf("the eye went from %+v to %+v by travel before the press, held %d; want it to stand, held", before, a.eye,
				a.drag)
		}
	})
	d.x("mousemove", "740", "420")
	d.settle()
	d.x("mouseup", "1")
	d.settle()
	d.ask(func(a *App) {
		if off := before.Azimuth - a.eye.Azimuth; !near(off, 40*perPixel, 1e-9) {
			d.Errorf("dragged 40 units: turned by %.3f rad, want %.3f", off, 40*perPixel)
		}
	})
}

// Enter in the search takes the first fabric that fits.
func searchAndEnter(d *drive) {
	d.click("search")
	d.x("type", "georgette")
	d.settle()
	var first string
	d.ask(func(a *App) { first = a.fabrics()[0].Name })
	d.key("Return")
	d.ask(func(a *App) {
		if got := a.pane().Style.Fabric.Name; got != first || !strings.Contains(got, "georgette") {
			d.Errorf("georgette and Enter hang %s, want the first in the list, %s", got, first)
		}
		a.search = ""
	})
}
