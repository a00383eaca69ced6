//go:build cgo

package window

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
	"cowl/mesh/export/gltf"
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// write saves a file of the style on another goroutine and says so. make makes
// its bytes there.
func (a *App) write(name string, bytesOf func() ([]byte, error), then func(*App)) {
	if a.working != "" {
		a.say("Still busy: " + a.working)
		return
	}
	dir := a.set.Folder
	name = free(dir, name)
	a.working = "Saving " + name + " …"
	go func() {
		defer fault.Tell()
		data, err := bytesOf()
		if err == nil {
			err = a.opt.Save(dir, name, data)
		}
		a.post(func(a *App) {
			a.working = ""
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

var errNoCloth = errors.New("there is no cloth yet: the form is still being made")

// savePicture saves the panes, times as large as on the screen, with shadows.
// It is drawn between two pictures of the window.
func (a *App) savePicture(times int) {
	if !a.pane().hasCloth() {
		a.complain(errNoCloth)
		return
	}
	a.working = fmt.Sprintf("Drawing a picture %d× as large …", times)
	a.tasks = append(a.tasks, func() {
		a.working = ""
		img, err := a.picture(a.eye, float64(times), false)
		if err != nil {
			a.complain(err)
			return
		}
		a.write(a.fileName(fmt.Sprintf("-%dx.png", times)), func() ([]byte, error) {
			var b bytes.Buffer
			err := png.Encode(&b, img)
			return b.Bytes(), err
		}, nil)
	})
}

// picture draws all panes off screen as they lie on it.
func (a *App) picture(eye Orbit, times float64, quick bool) (*image.RGBA, error) {
	l := a.layout()
	area := bound(l.panes)
	size := func(v float64) int { return int(v*a.scale*times + 0.5) }
	out := image.NewRGBA(image.Rect(0, 0, size(area.W), size(area.H)))
	for i, p := range a.panes {
		if err := a.feed(p); err != nil {
			return nil, err
		}
		if p.loaded == nil {
			continue
		}
		r := l.panes[i]
		quick := quick || a.show > mapYarns || a.through
		if !quick {
			a.polishNow(p)
		}
		img, err := a.painter.Shot(p.loaded, eye.View(), a.manner(quick), size(r.W), size(r.H))
		if err != nil {
			return nil, err
		}
		at := image.Pt(size(r.X-area.X), size(r.Y-area.Y))
		draw.Draw(out, img.Rect.Add(at), img, image.Point{}, draw.Src)
	}
	return out, nil
}

// bound returns the area round all panes.
func bound(rs []panel.Rect) panel.Rect {
	r := rs[0]
	for _, o := range rs[1:] {
		x, y := min(r.X, o.X), min(r.Y, o.Y)
		r = panel.Rect{X: x, Y: y, W: max(r.X+r.W, o.X+o.W) - x, H: max(r.Y+r.H, o.Y+o.H) - y}
	}
	return r
}

// doTasks does one thing that was put off until after a picture.
func (a *App) doTasks() {
	if len(a.tasks) == 0 {
		return
	}
	do := a.tasks[0]
	a.tasks = a.tasks[1:]
	do()
}
