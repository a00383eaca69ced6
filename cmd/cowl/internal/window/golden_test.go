//go:build cgo

package window

import (
	"flag"
	"image"
	"math"
	"os"
	"path/filepath"
	"testing"

	"cowl/cmd/cowl/internal/golden"
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh/lattice"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// before returns the place (x, y) as far ahead as keeps it gap m off the form, to
// a thousandth of a millimetre: steps that one could see would be drawn as lumps.
func (d *dummy) before(x, y, gap float64) r3.Vec {
	clear := func(z float64) bool {
		off, _ := d.form.Distance(r3.Vec{X: x, Y: y, Z: z})
		return off >= gap
	}
	z := 0.30
	for z > -0.03 && clear(z-0.002) {
		z -= 0.002
	}
	lo, hi := z-0.002, z
	for hi-lo > 1e-6 {
		if m := (lo + hi) / 2; clear(m) {
			hi = m
		} else {
			lo = m
		}
	}
	return r3.Vec{X: x, Y: y, Z: hi}
}

// freeze puts made-up cloth before the form, at rest, with made-up figures, so
// that the picture depends on how the window draws and not on the solver.
func freeze(t testing.TB, a *App) {
	p := a.pane()
	l, err := lattice.Cut(p.cowl.Outline, lattice.Options{Spacing: 0.010, Grain: p.cowl.Grain,
		Origin: r2.Vec{Y: p.cowl.FoldY}})
	if err != nil {
		t.Error(err)
		return
	}
	skin, waist := l.Skin(), p.cowl.Waist[len(p.cowl.Waist)-1].Y
	f := drape.Frame{Job: p.job(), Hung: p.cowl, Stage: drape.StageRest, Residual: 8e-4, Read: true,
		Pulls: map[string]float64{"waist": 1.5, "side": 0.8}}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		y, behind := q.Y, 0.0
		if y > p.cowl.FoldY {
			y, behind = 2*p.cowl.FoldY-y, 0.008
		}
		y = 0.85 * (y - waist)
		wave := 0.010 * math.Sin(y/0.02) * math.Exp(-q.X*q.X/0.02)
		pos[i] = p.dummy.before(0.8*q.X, y, 0.025+wave-behind)
	}
	f.Sheet = skin.Sheet(pos, p.cowl.FoldY)
	for _, q := range f.Sheet.Flat {
		f.Strain = append(f.Strain, 0.03*math.Sin(q.X/0.05))
		f.Shear = append(f.Shear, 0.3*math.Sin(q.Y/0.05))
		f.Clear = append(f.Clear, 0.04+0.04*math.Sin(q.Y/0.05))
	}
	at := r2.Vec{X: p.dummy.before(0, 0.28, 0.035).Z, Y: 0.28}
	f.Reading = fold.Reading{Folds: []fold.Fold{{At: at, Depth: 0.082, CF: 0.10, Height: 0.28, Zone: fold.AboveBust}},
		Count: 1}
	f.Outcome = drape.Outcome{
		Status: sim.Settled, FoldCount: 1, Laid: 2, Kept: 1,
		Folds: []drape.Fold{{Fold: fold.Fold{Depth: 0.082, CF: 0.100, Height: 0.280, Zone: fold.AboveBust}, Kept: true,
			LaidCF: 0.095, Width: fold.Reach{Left: 0.13, Right: 0.12}}},
		EdgeDrop: 0.128, EdgeBelowNeck: 0.094, StandOff: 0.003, Forward: 0.083, Twist: 0.004, Drift: -0.001,
		CFGrowth: -0.014, MaxStrain: 0.059, WrongSide: 20e-6, PinPull: 0.86, PinSlip: 0.004,
		Nodes: len(l.Rest), Spacing: 0.010, Seed: 1,
	}
	p.hold(f)
}

// hold makes a moment the newest there is, so that it stays.
func (p *Pane) hold(f drape.Frame) {
	p.stop()
	p.live = drape.NewLive(p.job())
	p.live.Close()
	var last drape.Frame
	p.live.Frame(&last)
	f.Serial = last.Serial
	p.frame = f
}

// good reports whether a pane is painted as finely as it will be.
func (p painting) good(a *App) bool {
	return p.smooth && p.fine == (a.set.Fine && !a.through && a.show <= mapYarns) && (p.polished || !p.fine)
}

// shown returns what the window shows when all is drawn as finely as it will be.
func (d *drive) shown() (img *image.RGBA) {
	d.Helper()
	d.settle()
	d.until("a picture at rest", func(a *App) bool {
		for _, p := range a.panes {
			if !p.drawn.smooth || p.polishing == p.shown {
				return false
			}
		}
		return a.now-a.moved > 2*calm
	})
	return d.now()
}

// now returns what the window shows.
func (d *drive) now() (img *image.RGBA) {
	d.Helper()
	d.ask(func(a *App) {
		a.tasks = append(a.tasks, func() {
			img = a.screen()
		})
	})
	d.until("the picture", func(a *App) bool { return len(a.tasks) == 0 })
	return img
}

// screen is what the window shows. It is seen through nowhere, whatever lies in its alpha.
func (a *App) screen() *image.RGBA {
	a.draw()
	img := stage.ReadScreen(a.wide, a.tall)
	for i := 3; i < len(img.Pix); i += 4 {
		img.Pix[i] = 0xFF
	}
	return img
}

// The golden pictures were looked at when they were made: the window as it
// opens, the folds laid, and the stand with flat piece, map and inches. Drivers differ at rims,
// hence the tolerance; a control that has moved or gone is outside it.
func goldens(d *drive) {
	d.x("mousemove", "1100", "300", "click", "--repeat", "20", "--delay", "5", "4") // the readings, scrolled to their top
	d.settle()
	d.x("mousemove", "640", "3") // on nothing
	d.ask(func(a *App) { a.pane().keep.unsaved = false })
	d.golden("opened.png")
	d.ask(func(a *App) { a.tab = tabFolds })
	d.golden("folds.png")
	d.ask(func(a *App) {
		a.tab = tabCompare
		a.shownDrops = []drop{{0, 0.112, true}, {15, 0.118, true}, {30, 0.131, true}, {45, 0.139, true}, {60, 0.130, false}}
	})
	d.golden("grain.png")
	d.ask(func(a *App) { a.tab, a.shownDrops = tabCut, nil })
	d.x("mousemove", "150", "500", "click", "--repeat", "20", "--delay", "5", "4") // scrolled to its top
	d.settle()
	r := d.place("facing")
	d.x("mousemove", px(r.X+r.W/2), px(r.Y+r.H/2))
	d.golden("cut.png")
	d.x("mousemove", "640", "3")
	d.ask(func(a *App) {
		a.tab, a.flat, a.show, a.draws, a.set.Units = tabStand, true, mapShear, drawSlashes, Inches
		s := &a.pane().Style.Stand
		s.ReleaseWaist, s.ReleaseWaistAt, s.Weight = 0.06, 0.25, 0.010
		if p, err := a.pane().Style.Cowl(); err != nil {
			d.Error(err)
		} else {
			a.pane().cowl = p
		}
	})
	d.golden("stand.png")
}

var shots = flag.String("shots", "", "folder for pictures of the window on the way, to be looked at")

// shot keeps a picture of the window where -shots asks for them. Nothing is compared.
func (d *drive) shot(name string) {
	d.Helper()
	if *shots == "" {
		return
	}
	d.settle()
	d.ask(func(a *App) {
		a.tasks = append(a.tasks, func() {
			golden.Save(d.TB, filepath.Join(*shots, name), a.screen())
		})
	})
	d.until("the picture", func(a *App) bool { return len(a.tasks) == 0 })
}

// golden compares what is shown with a picture in testdata.
func (d *drive) golden(name string) {
	d.Helper()
	got := d.shown()
	want := golden.Want(d.TB, filepath.Join("testdata", name), got)
	// In blocks of 16 pixels, so that one letter more or less is seen.
	const side, most = 16, 14.0
	for y := 0; y+side <= want.Rect.Dy(); y += side {
		for x := 0; x+side <= want.Rect.Dx(); x += side {
			if off := blockOff(got, want, x, y, side); off > most {
				seen := filepath.Join(os.TempDir(), "cowl-"+name)
				golden.Save(d.TB, seen, got)
				d.Fatalf("%s: the window differs at (%d, %d) by %.0f of 255 on average over %d pixels, want %g or less; it "+
					"lies in %s",
					name, x, y, off, side, most, seen)
			}
		}
	}
}

// blockOff returns the mean difference of the channels of a block, 0 to 255.
func blockOff(a, b *image.RGBA, x, y, side int) float64 {
	sum := 0.0
	for dy := range side {
		i := a.PixOffset(x, y+dy)
		for k := range 4 * side {
			sum += math.Abs(float64(a.Pix[i+k]) - float64(b.Pix[i+k]))
		}
	}
	return sum / float64(3*side*side)
}
