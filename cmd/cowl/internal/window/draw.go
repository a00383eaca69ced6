//go:build cgo

package window

import (
	"image"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
)

// feed brings the cloth of a pane to the driver where it is newer there than
// here.
func (a *App) feed(p *Pane) error {
	f := p.view()
	if !p.hasCloth() || p.dummy == nil {
		return nil
	}
	shape := &f.Sheet.Tris[0]
	if p.loaded == nil || p.shape != shape {
		s := p.scene(mesh.Sheet{Flat: f.Sheet.Flat, Pos: f.Sheet.Pos, Tris: f.Sheet.Tris, Facing: f.Sheet.Facing})
		l, err := a.painter.Load(s)
		if err != nil {
			return err
		}
		p.unload()
		p.loaded, p.shape, p.shown = l, shape, 0
	}
	p.loaded.Dress(f.Job.Fabric.Look)
	if p.shown == f.Serial && p.values == a.show && a.opt.Frames == 0 {
		return nil
	}
	p.shown, p.values = f.Serial, a.show
	var values []float64
	if v := maps[a.show].value; v != nil {
		if values = v(f); len(values) != len(f.Sheet.Pos) {
			values = nil // not kept of a moment on the way
		}
	}
	p.polished = 0
	return a.painter.Move(p.loaded, f.Sheet.Pos, values)
}

// draw paints the window: the panes, and the panel over them.
func (a *App) draw() {
	l := a.shownPlaces // panes may have come or gone since: they show in the next picture
	stage.ClearScreen(stage.Look{Background: a.ui.Theme.Ground}, a.wide, a.tall)
	for i, p := range a.panes[:min(len(a.panes), len(l.panes))] {
		if err := a.paint(p, a.pixels(l.panes[i])); err != nil {
			a.complain(err)
		}
	}
	a.drawOver(a.ui, a.extent)
}

// paint brings a pane to the screen, and paints it anew only where something
// has changed.
func (a *App) paint(p *Pane, part image.Rectangle) error {
	if err := a.feed(p); err != nil {
		return err
	}
	if p.loaded == nil || part.Empty() {
		return nil
	}
	want := painting{
		serial: p.shown, eye: a.eye, show: a.show, own: p.view().Job.Fabric.Look,
		trace: a.trace, tape: a.tape.version, noForm: a.noForm, through: a.through,
		wide: part.Dx(), tall: part.Dy(), smooth: p.drawn.smooth, fine: p.drawn.fine, polished: p.drawn.polished,
	}
	if was := p.drawn; was.serial != want.serial && p.still() { // at rest nothing more will come
		was.serial = want.serial
		if want != was {
			a.moved = a.now
		}
	} else if want != was {
		a.moved = a.now
	}
	want.smooth = !a.slow || a.now-a.moved > calm && p.still() && !a.back.playing
	if a.set.Fine && !a.through && p.still() && !a.back.replay { // at once, while the rims wait
		a.polish(p)
	}
	want.fine = want.smooth && a.set.Fine && maps[a.show].value == nil && !a.through
	if a.slow && p.polishing == p.shown { // on the lattice rims and shadows would be reckoned for nothing
		want.smooth, want.fine = false, false
	}
	want.polished = p.polished == p.shown
	if want != p.drawn || a.opt.Frames > 0 {
		err := p.canvas.Paint(a.painter, p.loaded, a.eye.View(), a.manner(p, !want.fine, want.smooth && !a.through),
			part.Dx(), part.Dy(), want.smooth)
		if err != nil {
			return err
		}
		p.drawn = want
	}
	p.canvas.Show(part.Min.X, part.Min.Y, a.tall)
	return nil
}
