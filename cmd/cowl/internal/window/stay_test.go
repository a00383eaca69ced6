//go:build cgo

package window

import (
	"image"
	"math"
	"strconv"
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
)

// What is put beside one's own drape leaves it as it is, and so it does a second one
// that was changed by hand.
func ownPaneStays(d *drive) {
	d.click("tab/Compare")
	for _, f := range []string{"Fabrics", "Grains", "Extensions"} {
		d.click("fan/" + f)
		d.ask(func(a *App) {
			if len(a.panes) != mostPanes || a.active != 0 || a.pane().Style.Fabric.Name != "polyester-twill" ||
				a.pane().cowl.Grain != 45*degree {
				d.Errorf("%s: %d panes, in the first %s at %.0f°, want 4 and one's own style", f, len(a.panes),
					a.pane().Style.Fabric.Name, a.pane().cowl.Grain/degree)
			}
		})
	}
	d.ask(func(a *App) {
		for i, want := range []float64{0.04, 0.10, 0.16} {
			if got := a.panes[i+1].cowl.Extension; !near(got, want, 1e-9) {
				d.Errorf("drape %d has an extension of %.3f m, want %.3f", i+2, got, want)
			}
		}
		a.active = 2
	})
	d.click("tab/Cut")
	d.click("grain/typed")
	d.x("type", "20")
	d.key("Return")
	d.click("tab/Compare")
	d.click("fan/Grains")
	d.shot("fan.png")
	d.ask(func(a *App) {
		var grains [4]float64
		for i, p := range a.panes {
			grains[i] = p.cowl.Grain / degree
		}
		if !near(grains[2], 20, 1e-9) || grains[1] != 0 || grains[3] != 90 || !near(grains[0], 45, 1e-9) {
			d.Errorf("grains %v beside a first and a third of one's own, want 45, 0, 20, 90", grains)
		}
	})
}

// A slash that is drawn out by its slider moves nothing under the mouse, and a trim
// neither.
func nothingShifts(d *drive) {
	d.click("tab/Stand")
	d.key("d")
	ids := []string{"release_waist", "release_armhole", "release_armhole_at", "stand/trim"}
	at := func() (out []panel.Rect) {
		for _, id := range ids {
			out = append(out, d.place(id))
		}
		return out
	}
	before := at()
	r := before[1]
	x, y := r.X+7, r.Y+r.H/2
	d.x("mousemove", px(x), px(y))
	d.settle()
	d.x("mousedown", "1")
	for _, dx := range []float64{40, 80} {
		d.x("mousemove", px(x+dx), px(y))
		d.settle()
	}
	d.x("mouseup", "1")
	d.settle()
	d.ask(func(a *App) {
		if a.pane().Style.Stand.ReleaseArmhole < 0.01 || a.pane().Style.Stand.ReleaseWaist != 0 {
			d.Errorf("dragged the armhole slash: %+v", a.pane().Style.Stand)
		}
	})
	for i, r := range at() {
		if r != before[i] {
			d.Errorf("%s went from %v to %v, want it to stay", ids[i], before[i], r)
		}
	}
	d.key("ctrl+z")
	d.ask(func(a *App) {
		if a.pane().Style.Stand != draft.DefaultStand() {
			d.Error("undo leaves a slash")
		}
	})
}

// While nothing happens no picture is drawn; news is taken off when it has grown old.
func idleDrawsNothing(d *drive) {
	d.x("mousemove", "640", "3")
	d.settle()
	d.ask(func(a *App) { a.note = note{text: "old news", until: a.now + 3} })
	time.Sleep(2500 * time.Millisecond)
	var last, now float64
	d.ask(func(a *App) { last, now = a.last, a.clockNow() })
	if now-last < 1 {
		d.Errorf("the last picture is %.2f s old after 2.5 s of rest, want none drawn since the change", now-last)
	}
	time.Sleep(3 * time.Second)
	d.ask(func(a *App) {
		if a.last < a.note.until {
			d.Errorf("old news stays on the screen: last picture at %.2f s, until %.2f s", a.last, a.note.until)
		}
		a.note = note{}
	})
}

// The good picture is as bright as the last one of cloth that moved, in the plain view
// and in the own look of a matt, a shiny and a sheer cloth.
func noJump(d *drive) {
	d.x("mousemove", "640", "3")
	n := 0
	for _, c := range []struct {
		show   mapKind
		fabric string
	}{{mapPlain, "polyester-twill"}, {mapOwn, "polyester-twill"}, {mapOwn, "silk-satin-memory"},
		{mapOwn, "silk-chiffon-memory"}} {
		fabric, err := materials.Find(c.fabric)
		if err != nil {
			d.Fatal(err)
		}
		show := func(stage, picture string, good bool) *image.RGBA {
			d.ask(func(a *App) {
				a.show = c.show
				p := a.pane()
				f := p.frame
				f.Job.Fabric, f.Stage = fabric, stage
				p.hold(f)
			})
			d.until("the "+picture, func(a *App) bool {
				p := a.pane()
				return p.shown == p.frame.Serial && p.drawn.serial == p.shown && p.drawn.smooth == good && p.drawn.good(a) == good
			})
			return d.now()
		}
		moving := show(drape.StageSettling, "moving", false)
		good := show(drape.StageRest, "good picture", true)
		was, is := d.brightness(moving), d.brightness(good)
		d.Logf("%s, map %d: %.1f moving, %.1f at rest", c.fabric, c.show, was, is)
		if !near(was, is, 2) || was < 100 {
			d.Errorf("%s, map %d: the last moving picture has a brightness of %.1f of 255, the good one of %.1f, want within 2",
				c.fabric, c.show, was, is)
		}
		n++
	}
	d.ask(func(a *App) { freeze(d.TB, a) })
	if n != 4 {
		d.Errorf("%d cases ran, want 4", n)
	}
}

// brightness is the mean of a picture of the window over the view of its first pane, 0 to 255.
func (d *drive) brightness(img *image.RGBA) float64 {
	r, sum, n := d.place("view/1"), 0.0, 0
	for y := int(r.Y); y < int(r.Y+r.H); y++ {
		for x := int(r.X); x < int(r.X+r.W); x++ {
			sum, n = sum+float64(img.RGBAAt(x, y).G), n+1
		}
	}
	return sum / float64(n)
}

// While cloth settles the window says about how long it takes, and how many finer
// lattices are to come; at rest it says nothing of it.
func timeLeftSaid(d *drive) {
	var frame drape.Frame
	d.ask(func(a *App) {
		p := a.pane()
		frame = p.frame
		p.frame.Stage, p.frame.Residual, p.Style.Hang.Spacing = drape.StageSettling, 0.1, 0.005
		for at := 0.0; at < 20; at += 0.1 { // by e in 10 s; 1.9 times that to 0.05, then 80 s by e
			p.ebb.see(at, len(p.frame.Sheet.Pos), 0.9*math.Exp(-at/10))
		}
	})
	d.shot("timeleft.png")
	d.ask(func(a *App) {
		p := a.pane()
		// 10 ln(0.9/0.05) − 20 = 8.9 s on this lattice, and 80 ln(0.3/0.001) = 456 s on the next.
		if got, want := p.timeLeft(), "About 8 min left, with 1 finer lattice to come"; got != want {
			d.Errorf("the window says %q, want %q", got, want)
		}
		p.frame, p.Style.Hang.Spacing, p.ebb = frame, 0.020, ebb{}
		if got := p.timeLeft(); got != "" {
			d.Errorf("at rest the window says %q", got)
		}
	})
}

// With nothing to undo the button is dull and says so; it does nothing.
func nothingToUndo(d *drive) {
	d.click("undo")
	d.ask(func(a *App) {
		if a.note.text != "" || a.ui.Help != "Nothing to undo. Ctrl+Z" {
			d.Errorf("Undo with nothing to undo says %q, helps with %q", a.note.text, a.ui.Help)
		}
	})
}

// Wherever the first fold lies, the word for the edge does not lie over its number.
func edgeLabelFree(d *drive) {
	d.ask(func(a *App) {
		p := a.pane()
		reading := p.frame.Reading
		c := a.fitChart(panel.Rect{X: 992, Y: 480, W: 272, H: 240}, p)
		edge := r2.Vec{X: 0.08, Y: 0.33}
		n := 0
		for dx := -30.0; dx <= 30; dx += 5 {
			for dy := -30.0; dy <= 30; dy += 5 {
				n++
				p.frame.Reading = fold.Reading{Folds: []fold.Fold{{At: r2.Vec{X: edge.X - dx/c.per, Y: edge.Y - dy/c.per},
					Depth: 0.08, Zone: fold.AboveBust}}}
				sign := a.foldSigns(c, p)[0]
				if r := a.edgePlace(c, p, c.at(edge)); !r.Meet(sign).Empty() {
					d.Errorf("the word edge at %v lies over the number at %v", r, sign)
				}
			}
		}
		p.frame.Reading = reading
		if n != 169 {
			d.Error(strconv.Itoa(n) + " cases ran, want 169")
		}
	})
}
