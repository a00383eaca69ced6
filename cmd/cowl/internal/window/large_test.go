//go:build cgo

package window

import (
	"slices"
	"strings"
)

// Every tab is read whole, with large letters too, and at the end of the longest style:
// no word is shortened.
func largeLettersShown(d *drive) {
	folder := ""
	d.ask(func(a *App) { folder, a.set.Folder = a.set.Folder, "out" })
	for _, large := range []string{"", "large-"} {
		if large != "" {
			d.key("ctrl+l")
			d.until("large letters", func(a *App) bool { return a.scale > 1.2 })
		}
		for _, name := range tabNames {
			d.click("tab/" + name)
			d.shot(large + strings.ToLower(name) + ".png")
			d.ask(func(a *App) {
				if cut := slices.Clone(a.ui.Shortened); len(cut) > 0 {
					d.Errorf("%stab %s: %q had no room", large, name, cut)
				}
			})
		}
	}
	d.key("d")
	d.shot("large-flat.png")
	d.key("F1")
	d.shot("large-keys.png")
	d.ask(func(a *App) {
		if cut := slices.Clone(a.ui.Shortened); len(cut) > 0 {
			d.Errorf("keys: %q had no room", cut)
		}
	})
	d.key("Escape")
	d.key("ctrl+l")
	d.until("letters as before", func(a *App) bool { return a.scale == 1 })
	d.ask(func(a *App) { a.set.Folder = folder })
}
