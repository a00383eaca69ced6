//go:build cgo

package window

import (
	"errors"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/panel"
)

// openList is the path, the list of a folder and what was used last.
func (a *App) openList(c *panel.Column) {
	u := a.ui
	c.Heading("Open a style or a fabric")
	field := c.Next(panel.RowHeight)
	button := field.Right(64)
	field.Right(8)
	path, done := u.Field("open/path", field, a.path, "path of a .yaml file",
		"A style file or a fabric file. You can drop one on the window, too.")
	a.path = path
	if u.Button("open", button, "Open", "Opens the file, or goes into the folder, that is named on the left.") || done &&
		u.Entered() && path != "" {
		a.openPath(path)
	}
	c.Gap(8)
	a.folderList(c)
	for _, path := range a.set.Recent {
		if path == a.set.Recent[0] {
			c.Heading("Used last")
		}
		row := c.Next(panel.RowHeight)
		if u.Button("recent/"+path, row, u.Fit(filepath.Base(path), row.W-12, panel.Plain), "Open "+path+".") {
			a.openPath(path)
		}
		c.Gap(4)
	}
}

// folderList lets one go through folders and choose a file.
func (a *App) folderList(c *panel.Column) {
	u, f := a.ui, &a.folder
	if f.dir == "" {
		f.enter(a.firstFolder())
	}
	f.refresh(a.now)
	head := c.Next(panel.RowHeight)
	up := head.Right(64)
	u.Words(u.Fit("In "+filepath.Base(f.dir), head.W-8, panel.Plain), head.X, head.Y+20, 0, panel.Plain, u.Theme.Ink)
	u.Hint("files/dir", head, f.dir)
	if u.Button("files/up", up, "Up", "Goes to the folder that holds this one.") {
		f.enter(filepath.Dir(f.dir))
		return
	}
	c.Gap(6)
	items := make([]panel.Item, len(f.list))
	for i, l := range f.list {
		items[i] = panel.Item{Name: l.name, Note: l.when.Format("2 Jan 2006, 15:04")}
		if l.inside {
			items[i].Note = "folder"
		}
	}
	r := c.Next(4 * 42)
	on := u.Pick("files/list", r, items, f.on, "Choose a file and press Open, or click it twice. A folder is gone into.")
	switch {
	case f.err != nil:
		u.Words(u.Fit("This folder cannot be read.", r.W-20, panel.Small), r.X+10, r.Y+24, 0, panel.Small, u.Theme.Soft)
	case len(items) == 0:
		u.Words(u.Fit("No styles or fabrics here.", r.W-20, panel.Small), r.X+10, r.Y+24, 0, panel.Small, u.Theme.Soft)
	}
	if on != f.on {
		f.on = on
		a.path = f.chosen()
	}
	if u.In.Double && u.On() == "files/list" && f.chosen() != "" {
		a.openPath(f.chosen())
	}
	c.Gap(4)
}

// firstFolder is where one begins to look: where files are saved, if that is there.
func (a *App) firstFolder() string {
	dir, err := filepath.Abs(a.set.Folder)
	if err == nil {
		if info, err := os.Stat(dir); err == nil && info.IsDir() {
			return dir
		}
	}
	if here, err := os.Getwd(); err == nil {
		return here
	}
	return string(filepath.Separator)
}

// openPath opens a file or goes into a folder.
func (a *App) openPath(path string) {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		if abs, err := filepath.Abs(path); err == nil {
			path = abs
		}
		a.folder.enter(path)
		return
	case errors.Is(err, os.ErrNotExist):
		a.set.Recent = forgotten(a.set.Recent, path)
	}
	a.openFile(path)
}
