//go:build cgo

package window

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// What needs no cloth that falls is tried on cloth that is frozen.
func TestFrozen(t *testing.T) {
	d := start(t, nil)
	d.until("a form", func(a *App) bool { return a.pane().dummy != nil })
	d.ask(func(a *App) { freeze(t, a) })
	d.waits = time.Minute // nothing hangs
	for _, c := range []struct {
		name  string
		check func(*drive)
	}{
		{"typed at once", typedAtOnce}, {"travel before a press", travelBeforePress}, {"search and Enter", searchAndEnter},
		{"changing", changing}, {"doubts", doubtful},
		{"own pane", ownPaneStays}, {"nothing shifts", nothingShifts}, {"nothing to undo", nothingToUndo},
		{"edge label", edgeLabelFree}, {"section", sectionSmooth},
		{"large picture", largePicture}, {"panels drawn", panelsDrawn}, {"idle", idleDrawsNothing}, {"no jump", noJump},
		{"time left", timeLeftSaid}, {"lines followed", linesFollowed},
		{"tape", tapeChecks}, {"remarks", remarksWritten}, {"file chosen", fileChosen}, {"pattern", patternSaved},
		{"looking back", lookingBack}, {"table", tableOfFigures}, {"five hands", fiveHandsHang},
		{"large letters", largeLettersShown},
		{"slash drawn", slashDrawn}, {"slash typed", slashTyped}, {"trim drawn", trimDrawn},
		{"keyboard alone", keyboardAlone}, {"golden", goldens},
	} {
		t.Run(c.name, func(t *testing.T) {
			sub := *d
			sub.TB = t
			sub.home()
			c.check(&sub)
		})
	}
}

// drawOnFlat draws with the mouse through places of the flat piece, m.
func (d *drive) drawOnFlat(line ...r2.Vec) {
	d.Helper()
	flat := d.place("flatpiece")
	var at []panel.Point
	d.ask(func(a *App) {
		c := fitFlat(panel.Rect{X: flat.X + 24, Y: flat.Y + 44, W: flat.W - 48, H: flat.H - 92}, a.pane().cowl.Outline)
		for _, q := range line {
			at = append(at, c.at(q))
		}
	})
	for i, p := range at {
		d.x("mousemove", px(p.X), px(p.Y))
		d.settle()
		if i == 0 {
			d.x("mousedown", "1")
			d.settle()
		}
	}
	d.x("mouseup", "1")
	d.settle()
}

// A slash drawn by mouse cuts both halves where it was drawn and as long; undo
// takes it back.
func slashDrawn(d *drive) {
	d.click("tab/Stand")
	d.key("d")
	var from, to r2.Vec
	d.ask(func(a *App) { // 7 cm square into the piece from the middle of the first stretch of the waist
		w := a.pane().cowl.Waist
		along := r2.Unit(r2.Sub(w[1], w[0]))
		from = r2.Scale(0.5, r2.Add(w[0], w[1]))
		to = r2.Add(from, r2.Scale(0.07, r2.Vec{X: along.Y, Y: -along.X}))
	})
	d.drawOnFlat(from, r2.Scale(0.5, r2.Add(from, to)), to)
	d.until("a slash on both halves", func(a *App) bool { return len(a.pane().cowl.Releases) == 2 })
	d.ask(func(a *App) {
		s, cut := a.pane().Style.Stand, a.pane().cowl.Releases[0]
		if math.Abs(s.ReleaseWaist-0.07) > 0.006 || s.ReleaseArmhole != 0 {
			d.Errorf("drew a waist slash of %.3f m and an armhole slash of %.3f m, want 0.070 m and none", s.ReleaseWaist,
				s.ReleaseArmhole)
		}
		if r2.Norm(r2.Sub(cut.From, from)) > 0.006 || r2.Norm(r2.Sub(cut.To, to)) > 0.008 {
			d.Errorf("the slash runs from %v to %v, want from %v to %v", cut.From, cut.To, from, to)
		}
	})
	d.key("ctrl+z")
	d.until("the piece as it was cut", func(a *App) bool {
		return a.pane().Style.Stand == draft.DefaultStand() && len(a.pane().cowl.Releases) == 0
	})
}

// A waist slash that is typed where the seam has room for none makes way for the
// dart; in a window in inches a refusal speaks of inches.
func slashTyped(d *drive) {
	d.ask(func(a *App) {
		s := a.pane().Style.Clone()
		s.Stand.ReleaseWaist = 0.05
		if _, err := s.Cowl(); err == nil {
			d.Error("a slash half-way along the waist is drafted, want the dart in its way: this test tries nothing")
		}
		a.set.Units = Inches
	})
	d.click("tab/Stand")
	for _, c := range [][2]string{{"release_waist/typed", "2"}, {"release_waist_at/typed", "50"}} {
		d.click(c[0])
		d.x("type", c[1])
		d.key("Return")
	}
	d.until("a refusal in inches", func(a *App) bool {
		return a.note.bad && strings.Contains(a.note.text, "2.00 in at 0.50")
	})
	d.ask(func(a *App) {
		cuts := a.pane().cowl.Releases
		if len(cuts) != 2 || math.Abs(r2.Norm(r2.Sub(cuts[0].To, cuts[0].From))-0.0508) > 1e-9 {
			d.Errorf("typed 2 in, and then half-way: slashes %v, want two of 2 in", cuts)
		}
		a.set.Units = Centimetres
	})
}

// A line drawn from outside to outside over the side corner of the waist cuts
// that corner off both halves; a second button takes it back.
func trimDrawn(d *drive) {
	d.click("tab/Stand")
	d.key("d")
	d.click("draw/Trim")
	var corner r2.Vec
	var before float64
	d.ask(func(a *App) {
		corner, before = a.pane().cowl.Waist[0], polyline.Area(a.pane().cowl.Outline)
	})
	// From beside the side seam 4 cm up to below the waist 4 cm in.
	d.drawOnFlat(r2.Add(corner, r2.Vec{X: 0.01, Y: 0.05}), r2.Add(corner, r2.Vec{X: -0.02, Y: 0.02}),
		r2.Add(corner, r2.Vec{X: -0.05, Y: -0.01}))
	d.until("a trim", func(a *App) bool { return len(a.pane().Style.Trims) == 1 })
	d.ask(func(a *App) {
		// Two triangles, one a half, with legs of about 4 cm each.
		if gone := before - polyline.Area(a.pane().cowl.Outline); gone < 2*0.0004 || gone > 2*0.0016 {
			d.Errorf("the trim takes %.1f cm² away, want two corners of about 8 cm²", gone*1e4)
		}
	})
	d.click("stand/trim")
	d.until("no trim", func(a *App) bool { return len(a.pane().Style.Trims) == 0 })
}

// With no mouse: Tab reaches the tabs and a slider, its value is typed, the
// view is turned and a picture saved.
func keyboardAlone(d *drive) {
	d.x("mousemove", "640", "3") // keys go to the window under the mouse: on nothing
	d.tabTo("tab/Cut")
	d.key("Return")
	d.tabTo("grain/typed")
	d.x("type", "20")
	d.key("Return")
	d.until("grain of 20°", func(a *App) bool { return math.Abs(a.pane().cowl.Grain-20*degree) < 1e-9 })
	d.tabTo("view/1")
	var before Orbit
	d.ask(func(a *App) { before = a.eye })
	d.key("Right", "Right")
	d.until("a view that has turned", func(a *App) bool { return a.eye.Azimuth < before.Azimuth-0.1 })
	d.ask(func(a *App) { a.set.Folder = filepath.Join(d.out, "keys") })
	d.key("ctrl+p")
	d.until("a saved picture", func(a *App) bool {
		_, err := os.Stat(filepath.Join(d.out, "keys", "trial-2x.png"))
		return err == nil && a.errand == nil
	})
	d.ask(func(a *App) { a.set.Folder = d.out })
	d.key("ctrl+z")
	d.until("the grain of before", func(a *App) bool { return a.pane().cowl.Grain == 45*degree })
}
