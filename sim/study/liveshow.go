package study

import (
	"math"
	"sync/atomic"
	"time"

	"cowl/sim"
	"cowl/sim/fold"
)

// serials counts the moments of all Lives, so that a Frame knows whether it
// holds the newest whichever Live filled it last.
var serials atomic.Uint64

// moment is what a Live shows. It never changes once it is stored.
type moment struct {
	Frame
	pins []LivePin
}

// Moments are shown and figures read at most this often. A reading takes at
// most a tenth of the time.
const (
	showEvery = 16 * time.Millisecond
	readEvery = 300 * time.Millisecond
)

// figures are what was last read off a drape.
type figures struct {
	outcome Outcome
	reading fold.Reading
	ok      bool
}

// Frame copies the newest moment to dst and reuses its slices. It never waits
// for a step, and does nothing if dst already holds that moment.
func (l *Live) Frame(dst *Frame) {
	m := l.newest.Load()
	l.wanted.Store(true)
	if m.Serial == dst.Serial {
		return
	}
	old := *dst
	*dst = m.Frame
	dst.Sheet.Pos = append(old.Sheet.Pos[:0], m.Sheet.Pos...)
	dst.Strain = append(old.Strain[:0], m.Strain...)
	dst.Shear = append(old.Shear[:0], m.Shear...)
	dst.Clear = append(old.Clear[:0], m.Clear...)
}

// show makes the present state the newest moment.
func (w *walker) show(residual float64) {
	m := &moment{Frame: w.live.newest.Load().Frame, pins: w.hands.list(w.d)}
	m.Serial, m.Job, m.Stage, m.Residual, m.Err = serials.Add(1), w.job, w.stage, residual, w.err
	if finite(residual) {
		w.fill(&m.Frame)
	}
	w.measure(residual)
	m.Outcome, m.Reading, m.Read = w.figure.outcome, w.figure.reading, w.figure.ok
	w.shown = time.Now()
	w.live.wanted.Store(false)
	w.live.newest.Store(m)
}

// tell shows a new error, or that there is none, and leaves the rest as it was.
func (w *walker) tell() {
	m := *w.live.newest.Load()
	m.Serial, m.Err = serials.Add(1), w.err
	if w.d == nil {
		m.Stage = StageStopped
	}
	w.live.newest.Store(&m)
}

// fill sets sheet and fields of f.
func (w *walker) fill(f *Frame) {
	d := w.d
	f.Sheet = d.Sheet()
	f.Strain, f.Shear = d.strains(), d.shears()
	f.Clear = d.clearances(f.Sheet.Pos)
}

// measure reads the figures of the drape anew if it is time, or if it has ended.
func (w *walker) measure(residual float64) {
	ended := w.stage == StageRest || w.stage == StageStopped
	if w.stage == StagePlacing || (!ended && time.Now().Before(w.read)) {
		return
	}
	start := time.Now()
	d := *w.d
	if !ended {
		d.Result = sim.Result{Status: sim.StepLimit, Residual: residual}
	}
	o, r, err := d.outcome(start.Sub(w.began).Seconds())
	one := Run{Outcome: o, Reading: r, Drape: &d, Each: []Outcome{o}}
	one.agree()
	w.figure = figures{one.Outcome, r, err == nil && d.Result.Status != sim.Diverged}
	took := time.Since(start)
	w.read = time.Now().Add(max(readEvery, 9*took))
}

// finite reports whether x is a number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
