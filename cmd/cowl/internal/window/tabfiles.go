//go:build cgo

package window

import (
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
)

// filesTab opens and saves.
func (a *App) filesTab(r panel.Rect) {
	u := a.ui
	r.W -= 6
	u.Scroll("files", r, func(c *panel.Column) {
		c.Heading("Name of the style")
		if name, done := u.Field("name", c.Next(panel.RowHeight), a.pane().Style.Name, "Unnamed style",
			"Stands on the flat piece and in the names of files."); done && strings.TrimSpace(name) != "" &&
			name != a.pane().Style.Name {
			a.change("the name", "", func(s *style.Style) error { s.Name = strings.TrimSpace(name); return nil })
		}
		c.Heading("Save to")
		if dir, done := u.Field("folder", c.Next(panel.RowHeight), a.set.Folder, "folder",
			"Folder for all that is saved; it is made where it is missing."); done && dir != "" {
			a.set.Folder = dir
		}
		c.Gap(8)
		a.patternButtons(c)
		for _, row := range [][2]saver{
			{{"Style", "Style file: cut, body, fabric, placing. Ctrl+S.", (*App).saveStyle},
				{"Result", "All figures as result.json.", (*App).saveResult}},
			{{"Picture 2×", "The view, twice as many pixels, with soft shadows. Ctrl+P.", func(a *App) { a.savePicture(2) }},
				{"Picture 4×", "The view, four times as many pixels.", func(a *App) { a.savePicture(4) }}},
			{{"Turning picture", "The form turned once round, as a GIF that moves.", (*App).saveTurntable},
				{"Mesh (GLB)", "Cloth and form as a glTF file for any viewer.", (*App).saveMesh}},
		} {
			b := c.Next(panel.RowHeight).Columns(2, 8)
			c.Gap(8)
			for i, s := range row {
				if u.Button("save/"+s.name, b[i], s.name, s.help) {
					s.do(a)
				}
			}
		}
		a.keptList(c) // before the list of files: what was not saved is looked for in haste
		a.openList(c)
		c.Gap(8)
	})
}

// patternButtons save the flat piece.
func (a *App) patternButtons(c *panel.Column) {
	head := c.Next(22)
	a.ui.Words("Pattern of the flat piece", head.X, head.Y+15, 0, panel.Plain, a.ui.Theme.Ink)
	row := c.Next(panel.RowHeight).Columns(3, 8)
	for i, f := range []struct{ name, help string }{
		{"SVG", "One drawing of the true size, with seam and cutting lines, notches and grain."},
		{"PDF", "For the printer: pages of A4 and of Letter to be stuck together, one large sheet, and the cutting sheet."},
		{"DXF", "For pattern programs and cutters: lines of the piece as layers."},
	} {
		if a.ui.Button("pattern/"+f.name, row[i], f.name, f.help) {
			a.savePattern(strings.ToLower(f.name))
		}
	}
	c.Gap(8)
}

// saver is a button that saves.
type saver struct {
	name, help string
	do         func(*App)
}
