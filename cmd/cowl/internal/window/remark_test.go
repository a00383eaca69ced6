//go:build cgo

package window

import (
	"image"
	"image/png"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/stage"

	"gonum.org/v1/gonum/spatial/r2"
)

// N writes on the view: an arrow drawn onto the cloth, with words, and a title. The arrow
// stays on its place of the cloth when the view is turned, both are saved with the
// picture, and Backspace takes one back, Delete all.
func remarksWritten(d *drive) {
	d.key("1")
	d.key("n")
	d.until("the front view", func(a *App) bool { return a.goal == nil && a.tool == toolWrite })
	d.x("mousemove", "420", "200")
	d.settle()
	d.x("mousedown", "1")
	for _, at := range [][2]string{{"500", "260"}, {"600", "330"}} {
		d.x("mousemove", at[0], at[1])
		d.settle()
	}
	d.x("mouseup", "1")
	d.until("a field", func(a *App) bool { return a.remarks.typing && a.ui.Focused() == remarkField })
	d.x("type", "soft fold")
	d.key("Return")
	d.until("words", func(a *App) bool { return !a.remarks.typing && a.remarks.last().words == "soft fold" })
	d.x("mousemove", "640", "80", "click", "1")
	d.until("another field", func(a *App) bool { return a.remarks.typing && len(a.remarks.list) == 2 })
	d.x("type", "Lesson 3")
	d.key("Return")
	tip := func() (on, want r2.Vec) {
		d.ask(func(a *App) {
			r := a.shownPlaces.panes[0]
			m := a.remarks.list[0]
			at, ok := inSpace(&a.pane().frame.Sheet, m.flat)
			q, _ := a.onView(r, at)
			if !ok || !m.onCloth || !m.points {
				d.Fatalf("the arrow is %+v, want its tip on the cloth", m)
			}
			on, want = a.notes(0, r)[0].To, r2.Vec{X: q.X, Y: q.Y}
		})
		return on, want
	}
	if on, _ := tip(); r2.Norm(r2.Sub(on, r2.Vec{X: 600, Y: 330})) > 1.5 {
		d.Errorf("the arrow points to %v, want where the mouse let go, (600, 330)", on)
	}
	d.key("2")
	d.until("a turned view", func(a *App) bool { return a.goal == nil })
	d.settle()
	if on, want := tip(); r2.Norm(r2.Sub(on, want)) > 0.5 || r2.Norm(r2.Sub(on, r2.Vec{X: 600, Y: 330})) < 10 {
		d.Errorf("turned, the arrow points to %v, want its place of the cloth, %v", on, want)
	}
	d.key("k")
	d.x("mousemove", "760", "500")
	d.settle()
	d.shot("remarks.png")
	remarksSaved(d)
	d.key("BackSpace")
	d.until("one remark", func(a *App) bool { return len(a.remarks.list) == 1 })
	d.key("Delete")
	d.until("none", func(a *App) bool { return len(a.remarks.list) == 0 })
}

// remarksSaved saves a picture and wants the words in it.
func remarksSaved(d *drive) {
	d.ask(func(a *App) { a.set.Folder = filepath.Join(d.out, "remarks") })
	d.key("ctrl+p")
	name := filepath.Join(d.out, "remarks", "trial-2x.png")
	d.until("the picture", func(a *App) bool { _, err := os.Stat(name); return err == nil && a.errand == nil })
	d.ask(func(a *App) { a.set.Folder = d.out })
	f, err := os.Open(name)
	if err != nil {
		d.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		d.Fatal(err)
	}
	var notes []stage.Note
	d.ask(func(a *App) { notes = a.pictureNotes(2) })
	for _, n := range notes {
		if inked := inkedNear(img, n.At, 60); inked < 200 {
			d.Errorf("%q: %d pixels of ink about %v of the saved picture, want 200 or more", n.Words, inked, n.At)
		}
	}
	if *shots != "" {
		_ = os.MkdirAll(*shots, 0o755)
		if data, err := os.ReadFile(name); err == nil {
			_ = os.WriteFile(filepath.Join(*shots, "remarks-saved.png"), data, 0o644)
		}
	}
}

// inkedNear counts the pixels in the colour of notes within reach of a place.
func inkedNear(img image.Image, at r2.Vec, reach int) (n int) {
	wr, wg, wb, _ := stage.NoteInk.RGBA()
	for y := int(at.Y) - reach; y < int(at.Y)+reach; y++ {
		for x := int(at.X) - reach; x < int(at.X)+reach; x++ {
			if r, g, b, _ := img.At(x, y).RGBA(); r == wr && g == wg && b == wb {
				n++
			}
		}
	}
	return n
}
