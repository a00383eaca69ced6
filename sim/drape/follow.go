package drape

import (
	"cowl/sim"
	"cowl/sim/fold"
)

// lookEvery is how many steps lie between two looks at the folds while the cloth
// comes to rest.
const lookEvery = 50

// press notes where the folds lie under the hand that has laid them.
func (d *Drape) press(h hand) {
	if d.Job.Folds <= 0 {
		return
	}
	l := d.Job.laying(h)
	d.track = fold.TrackPressed(l.crest, l.valley, d.crests())
}

// look sees where the laid folds have come to.
func (d *Drape) look() {
	if len(d.track.Folds) > 0 {
		d.track = d.track.Look(d.crests())
	}
}

// crests returns where folds lie down the flat centre front, m; none while the cloth
// cannot be read: it has run away, which its status tells.
func (d *Drape) crests() []float64 {
	s := d.Sheet()
	c, err := fold.Line(&s, d.Job.frame(), 0)
	if err != nil {
		return nil
	}
	var out []float64
	for _, f := range c.Folds {
		out = append(out, f.CF)
	}
	return out
}

// watched returns what is done after every step on the way to rest; nil: nothing.
func (d *Drape) watched() func(*sim.Stepper) {
	if d.Job.watch == nil && len(d.track.Folds) == 0 && !d.smoothing {
		return nil
	}
	step := 0
	return func(w *sim.Stepper) {
		if step++; step%lookEvery == 0 {
			d.look()
			d.smoothPins()
		}
		if d.Job.watch != nil {
			d.Job.watch(d, w)
		}
	}
}

// smoothPins looks the pins over once more while the cloth is not yet to be left alone.
func (d *Drape) smoothPins() {
	if !d.smoothing {
		return
	}
	d.repin()
	for k, p := range d.pins {
		d.State.Target[k] = p.at
	}
}
