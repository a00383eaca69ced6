//go:build cgo

package window

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/style"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Of twelve styles the last ten stay, newest first, by name and with their pins.
func TestShelfKeepsTen(t *testing.T) {
	s := shelf{t.TempDir()}
	day := time.Date(2026, 3, 5, 14, 7, 0, 0, time.Local)
	for i := range 12 {
		st := style.Default()
		st.Name = fmt.Sprint("Blouse ", i)
		pins := hands{own: []pinMark{{r2.Vec{X: 0.0105, Y: -0.02}, r3.Vec{X: 0.1, Y: 0.2, Z: 0.3}}}}
		if i%2 == 0 {
			pins = hands{}
		}
		now := day.Add(time.Duration(i) * time.Minute)
		file, err := s.put("", now, &st, pins)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(filepath.Join(s.dir, file), now, now); err != nil {
			t.Fatal(err)
		}
	}
	list := s.list()
	if len(list) != 10 {
		t.Fatalf("%d styles kept, want the last 10", len(list))
	}
	for k, v := range list {
		i := 11 - k
		name, note, when := v.words(day.Add(25 * time.Hour))
		if name != fmt.Sprint("Blouse ", i) || when != fmt.Sprintf("5 Mar, 14:%02d", 7+i) ||
			strings.Contains(note, "1 own pin") != (i%2 == 1) {
			t.Errorf("row %d: %q, %q, %q; want Blouse %d of 5 Mar, 14:%02d", k, name, note, when, i, 7+i)
		}
	}
	if m := list[0].pins.own[0]; m.flat.X != 0.0105 || m.at.Z != 0.3 {
		t.Errorf("the pin comes back as %+v", m)
	}
	if _, _, when := list[0].words(day); when != "today, 14:18" {
		t.Errorf("of the same day it says %q, want today, 14:18", when)
	}
	if left, _ := os.ReadDir(s.dir); len(left) != 15 {
		t.Errorf("%d files left, want ten styles and five of pins", len(left))
	}
}

// What an earlier version kept in a file of its own is found on the shelf.
func TestShelfAdopts(t *testing.T) {
	dir := t.TempDir()
	s, old := shelf{filepath.Join(dir, "unsaved")}, filepath.Join(dir, "unsaved-style.yaml")
	st := style.Default()
	st.Name = "Of last year"
	if err := os.WriteFile(old, st.YAML(), 0o600); err != nil {
		t.Fatal(err)
	}
	s.adopt(old)
	s.adopt(old) // nothing more to do
	if list := s.list(); len(list) != 1 || list[0].style.Name != "Of last year" {
		t.Errorf("%d styles on the shelf, want that of last year", len(list))
	}
}

// Pins that make no sense are refused with the reason.
func TestPinsRefused(t *testing.T) {
	head := strings.Join(pinColumns, ",") + "\n"
	for _, c := range []struct{ text, want string }{
		{"", "want the columns"}, {"x,y\n", "want the columns"}, {head + "own,1,2,3,4\n", "wrong number of fields"},
		{head + "own,1,2,3,4,nan\n", "at_z_mm"}, {head + "own,1,2,3,4,9e9\n", "-3000–3000 mm"},
		{head + "sewn,1,2,3,4,5\n", "sewn"},
		{head + strings.Repeat("own,1,2,3,4,5\n", mostPins+1), "at most 500"},
	} {
		if _, err := parsePins([]byte(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.40q: error %v, want one with %q", c.text, err, c.want)
		}
	}
}

// What was not saved is offered by name at the next start; left, it is not offered
// again and lies under Files, from where it is opened with its pin. Saved, it goes.
func TestOfferedAgain(t *testing.T) {
	config := t.TempDir()
	open := func() *drive { return start(t, func(o *Options) { o.Config = config }) }
	d := open()
	d.click("tab/Cut")
	d.click("facing/typed")
	d.x("type", "7")
	d.key("Return")
	d.until("the facing", func(a *App) bool { return a.pane().cowl.Facing == 0.07 })
	d.until("cloth", func(a *App) bool { return a.pane().hasCloth() })
	d.key("Escape", "p") // out of the field
	d.x("mousemove", "640", "420")
	d.settle()
	d.x("click", "1")
	d.until("a pin", func(a *App) bool { return len(a.pane().hands.own) == 1 })
	d.quit()

	d = open()
	d.place("offer/list")
	d.ask(func(a *App) {
		if n := len(a.offered.list); n != 1 || a.offered.list[0].style.Name != "Trial" {
			t.Errorf("%d styles offered, want Trial", n)
		}
	})
	d.shot("offer.png")
	d.click("offer/no")
	d.quit()

	d = open()
	d.ask(func(a *App) {
		if a.ui.Dialog() != "" {
			t.Error("what was left is offered again")
		}
	})
	d.click("tab/Files")
	var id string
	d.ask(func(a *App) { id = "kept/" + a.shelf().list()[0].file })
	d.shot("kept.png")
	d.click(id)
	d.until("facing and pin again", func(a *App) bool {
		p := a.pane()
		return p.cowl.Facing == 0.07 && p.keep.unsaved && len(p.hands.own) == 1
	})
	d.until("the pin in the walk", func(a *App) bool { return own(a.pane()) == 1 })
	d.shot("pin.png")
	d.key("ctrl+s")
	d.until("a saved style", func(a *App) bool { return !a.pane().keep.unsaved && len(a.shelf().list()) == 0 })
	for _, name := range []string{"trial.yaml", "trial-pins.csv"} {
		if _, err := os.Stat(filepath.Join(d.out, name)); err != nil {
			t.Errorf("saved: %v", err)
		}
	}
}

// quit ends the window by its key.
func (d *drive) quit() {
	d.Helper()
	d.x("key", "ctrl+q")
	if err := <-d.ended; err != nil {
		d.Fatal(err)
	}
	d.ended <- nil
}
