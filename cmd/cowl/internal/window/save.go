//go:build cgo

package window

import (
	"bytes"
	"errors"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
	"cowl/mesh/export/gltf"
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// write saves a file of the style on another goroutine and says so. make makes
// its bytes there.
func (a *App) write(name string, bytesOf func() ([]byte, error), then func(*App)) {
	dir := a.set.Folder
	name = free(dir, name)
	if !a.beginErrand(&errand{text: "Saving " + name, share: 1, stays: true}) {
		return
	}
	go func() {
		defer fault.Tell()
		data, err := bytesOf()
		if err == nil {
			err = a.opt.Save(dir, name, data)
		}
		a.post(func(a *App) {
			a.endErrand()
			if err != nil {
				a.complain(err)
				return
			}
			if then != nil {
				then(a)
			}
			a.say("Saved " + filepath.Join(dir, name) + ".")
		})
	}()
}

// stem is the beginning of a file's name, from the name of the style.
func stem(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if len(words) == 0 {
		return "style"
	}
	return strings.Join(words, "-")
}

// free returns a name in dir that is not taken: name, name-2, name-3, …
func free(dir, name string) string {
	ext := filepath.Ext(name)
	base := strings.TrimSuffix(name, ext)
	for n := 2; ; n++ {
		if _, err := os.Stat(filepath.Join(dir, name)); errors.Is(err, os.ErrNotExist) || n > 9999 {
			return name
		}
		name = fmt.Sprintf("%s-%d%s", base, n, ext)
	}
}

func (a *App) fileName(rest string) string { return stem(a.pane().Style.Name) + rest }

// saveStyle saves the style of the active pane, and beside it the pins set by hand.
func (a *App) saveStyle() {
	p := a.pane()
	s, pins := p.Style.Clone(), p.hands.clone()
	head := []byte("# Written by cowl view. Hang it again:  cowl drape --style FILE\n")
	name := free(a.set.Folder, a.fileName(".yaml"))
	style := func(a *App) {
		a.write(name, func() ([]byte, error) { return append(head, s.YAML()...), nil }, func(a *App) { a.saved(p) })
	}
	if pins.none() {
		style(a)
		return
	}
	a.write(pinsFile(name), func() ([]byte, error) { return pins.csv(), nil }, style)
}

// saveResult saves the figures of the active pane.
func (a *App) saveResult() {
	p := a.pane()
	switch {
	case !p.frame.Read:
		a.complain(errors.New("there are no figures yet: wait until the hand has let go of the cloth"))
		return
	case p.stale():
		a.complain(errors.New("the figures are still those of before the change: wait until the cloth has taken it up"))
		return
	}
	s, piece, o := p.Style.Clone(), p.frame.Hung, p.frame.Outcome
	a.write(a.fileName("-result.json"), func() ([]byte, error) { return a.opt.Result(s, piece, o) }, nil)
}

// sheetNow copies the cloth of a pane as it is now.
func (p *Pane) sheetNow() mesh.Sheet {
	s := p.frame.Sheet
	s.Pos = append(s.Pos[:0:0], s.Pos...)
	return s
}

// saveMesh saves cloth and form of the active pane.
func (a *App) saveMesh() {
	p := a.pane()
	if !p.hasCloth() {
		a.complain(errNoCloth)
		return
	}
	sheet, title, foldY := p.sheetNow(), p.Style.Name, p.frame.Hung.FoldY
	cloth := stage.ForFile(p.Style.Fabric.Look, p.frame.Job.Piece.Grain)
	var form *mesh.Surface
	if p.dummy != nil && !p.frame.Job.Free {
		form = &p.dummy.surface
	}
	a.write(a.fileName(".glb"), func() ([]byte, error) {
		var b bytes.Buffer
		err := gltf.Write(&b, surface.Smooth(sheet, surface.Options{FoldY: foldY}), form, gltf.Options{Title: title, Cloth: cloth})
		return b.Bytes(), err
	}, nil)
}

// savePicture saves the panes, times as large as on the screen, with shadows. It is
// drawn between pictures of the window.
func (a *App) savePicture(times int) {
	if !a.pane().hasCloth() {
		a.complain(errNoCloth)
		return
	}
	p, eye := a.newPortrait(float64(times), false), a.eye
	e := &errand{text: fmt.Sprintf("Drawing a picture %d× as large", times)}
	name := a.fileName(fmt.Sprintf("-%dx.png", times))
	e.then = func() {
		img := p.picture()
		a.write(name, func() ([]byte, error) {
			var b bytes.Buffer
			err := png.Encode(&b, img)
			return b.Bytes(), err
		}, nil)
	}
	a.sit(e, p, func() error {
		e.step = func() (bool, error) {
			done, err := p.step()
			e.share = p.share()
			return done, err
		}
		return p.aim(a.painter, eye)
	})
}
