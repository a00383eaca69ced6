//go:build cgo

package window

import (
	"fmt"
	"path/filepath"
	"strings"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
	"cowl/materials/infile"
	"cowl/mesh/limit"
)

// openFile opens a style, or hangs the active pane in the fabric of a file.
// Neither is taken unless it can be hung.
func (a *App) openFile(path string) {
	data, err := infile.Read(path, "a style or a fabric in YAML", infile.YAML)
	if err != nil {
		a.complain(err)
		return
	}
	f, errFabric := materials.Parse(path, data)
	if errFabric == nil {
		a.useFabricFile(path, f)
		return
	}
	s, errStyle := style.Parse(path, data)
	if errStyle == nil {
		pins, err := pinsBeside(path)
		if err != nil {
			a.complain(err)
			return
		}
		if a.useStyle(path, s, pins) {
			a.set.Recent = remembered(a.set.Recent, path)
		}
		return
	}
	if looksLikeFabric(data) {
		errStyle = errFabric
	}
	a.complain(limit.Errorf("", "%s cannot be opened: %v", filepath.Base(path), errStyle))
}

// looksLikeFabric tells which of two messages helps.
func looksLikeFabric(data []byte) bool {
	return strings.Contains(string(data), "weight_gsm") && !strings.Contains(string(data), "cut:")
}

// useStyle hangs a style that was read, with its pins, in the active pane; false where
// it cannot be hung. What was there before and is not saved stays on the shelf.
func (a *App) useStyle(path string, s style.Style, pins hands) bool {
	p := a.pane()
	a.keepSafe(true)
	a.note = note{}
	a.changePane(p, "opening "+filepath.Base(path), "", func(now *style.Style) error {
		*now = s
		return nil
	})
	if a.note.bad {
		return false
	}
	if !pins.none() || !p.hands.none() {
		p.hands = pins
		p.restart()
	}
	p.keep, p.own = keeping{}, true
	a.path, a.watched = path, watched{}
	text := "Opened " + path
	if n := len(pins.own); n > 0 {
		text += ", with " + plural(n, "own pin")
	}
	a.say(text + ".")
	return true
}

func (a *App) useFabricFile(path string, f materials.Fabric) {
	a.changePane(a.pane(), "the fabric "+f.Title, "", func(now *style.Style) error { return now.UseFabricFile(path) })
	if a.note.bad {
		return
	}
	a.set.Recent = remembered(a.set.Recent, path)
	a.watched = watched{path: path, pane: a.pane(), seen: changed(path)}
	a.say("Hanging in " + f.Title + ", from " + path + ". When the file changes, the cloth follows.")
}

// watchFabric takes a fabric file up again that was changed. One that has
// become wrong is reported, and the cloth hangs on as it was.
func (a *App) watchFabric() {
	w := &a.watched
	if w.path == "" || a.now < w.look {
		return
	}
	w.look = a.now + 1
	t := changed(w.path)
	if t.Equal(w.seen) {
		return
	}
	w.seen = t
	if t.IsZero() {
		a.complain(fmt.Errorf("the fabric file %s is gone; the cloth hangs on with the values read before", w.path))
		return
	}
	f, err := materials.FromFile(w.path)
	if err != nil {
		a.complain(limit.Errorf("fabric", "the fabric file has changed and cannot be read, so the values before it stay: %v",
			err))
		return
	}
	a.changePane(w.pane, "the changed fabric file", "", func(now *style.Style) error { return now.UseFabricFile(w.path) })
	a.say("The fabric file has changed: " + f.Title + " hangs with its new values.")
}
