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

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
	"cowl/mesh/export/gltf"
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// write saves files of the style on another goroutine and says so. filesOf makes them
// there; where one of their names is taken, all get a number.
func (a *App) write(what string, filesOf func() ([]File, error), then func(*App)) {
	if !a.beginErrand(&errand{text: "Saving " + what, share: 1, stays: true}) {
		return
	}
	dir := a.set.Folder
	go func() {
		defer fault.Tell()
		files, err := filesOf()
		if err == nil {
			files = freed(dir, files)
			err = a.opt.Save(dir, files)
		}
		a.post(func(a *App) {
			a.endErrand()
			if err != nil {
				a.complain(err)
				return
			}
			a.wrote = filepath.Join(dir, files[0].Name)
			if then != nil {
				then(a)
			}
			a.say("Saved " + fileWords(dir, files) + ".")
		})
	}()
}

// writeOne is write for one file.
func (a *App) writeOne(name string, bytesOf func() ([]byte, error), then func(*App)) {
	a.write(name, func() ([]File, error) {
		data, err := bytesOf()
		return []File{{name, data}}, err
	}, then)
}

// fileWords names the files of a set.
func fileWords(dir string, files []File) string {
	text := filepath.Join(dir, files[0].Name)
	if n := len(files); n > 1 {
		text += fmt.Sprintf(" and %d more", n-1)
	}
	return text
}

// freed returns files under names that are not taken in dir: as they are, or all of them
// with the same number after the stem they share.
func freed(dir string, files []File) []File {
	out := append([]File(nil), files...)
	for n := 2; n < 9999; n++ {
		taken := false
		for _, f := range out {
			_, err := os.Stat(filepath.Join(dir, f.Name))
			taken = taken || !errors.Is(err, os.ErrNotExist)
		}
		if !taken {
			break
		}
		for i, f := range files {
			out[i].Name = f.Name[:shared(files)] + fmt.Sprintf("-%d", n) + f.Name[shared(files):]
		}
	}
	return out
}

// shared is how much of the names of files is the stem of all of them.
func shared(files []File) int {
	first := files[0].Name
	n := len(first) - len(filepath.Ext(first))
	for _, f := range files[1:] {
		for !strings.HasPrefix(f.Name, first[:n]) {
			n--
		}
	}
	return len(strings.TrimRight(first[:n], "-"))
}

func (a *App) fileName(rest string) string { return stem(a.pane().Style.Name) + rest }

// saveStyle saves the style of the active pane, and beside it the pins set by hand.
func (a *App) saveStyle() {
	p := a.pane()
	s, pins := p.Style.Clone(), p.hands.clone()
	head := []byte("# Written by cowl view. Hang it again:  cowl drape --style FILE\n")
	name := a.fileName(".yaml")
	a.write(name, func() ([]File, error) {
		files := []File{{name, append(head, s.YAML()...)}}
		if !pins.none() {
			files = append(files, File{pinsFile(name), pins.csv()})
		}
		return files, nil
	}, func(a *App) {
		a.saved(p)
		a.set.Recent = remembered(a.set.Recent, a.wrote)
	})
}

// savePattern saves the flat piece of the active pane as it is cut.
func (a *App) savePattern(format string) {
	s, piece := a.pane().Style.Clone(), a.pane().cowl
	if len(piece.Outline) == 0 {
		a.complain(errors.New("there is no piece: the cut cannot be drafted"))
		return
	}
	base := a.fileName("")
	a.write("the pattern", func() ([]File, error) {
		files, err := a.opt.Pattern(s, piece, format)
		for i, f := range files {
			files[i].Name = base + "-" + strings.TrimPrefix(f.Name, "draft-")
			if rest, ok := strings.CutPrefix(f.Name, "draft."); ok {
				files[i].Name = base + "." + rest
			}
		}
		return files, err
	}, nil)
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
	a.writeOne(a.fileName("-result.json"), func() ([]byte, error) { return a.opt.Result(s, piece, o) }, nil)
}

// saveMesh saves cloth and form of the active pane.
func (a *App) saveMesh() {
	p := a.pane()
	if !p.hasCloth() {
		a.complain(errNoCloth)
		return
	}
	sheet, title, foldY := p.sheetNow(), p.Style.Name, p.frame.Hung.FoldY
	cloth := stage.ForFile(p.Style.Fabric.Look, p.frame.Job.Cowl.Grain)
	var form *mesh.Surface
	if p.dummy != nil && !p.frame.Job.Free {
		form = &p.dummy.surface
	}
	a.writeOne(a.fileName(".glb"), func() ([]byte, error) {
		var b bytes.Buffer
		err := gltf.Write(&b, surface.Smooth(sheet, surface.Options{FoldY: foldY}), form,
			gltf.Options{Title: title, Cloth: cloth})
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
	notes, scale := a.pictureNotes(float64(times)), a.scale*float64(times)
	e := &errand{text: fmt.Sprintf("Drawing a picture %d× as large", times)}
	name := a.fileName(fmt.Sprintf("-%dx.png", times))
	e.then = func() {
		img := p.picture()
		stage.Annotate(img, notes, scale)
		a.writeOne(name, func() ([]byte, error) {
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
