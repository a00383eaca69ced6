package drape

import (
	"math"
	"sync/atomic"
	"time"
)

// serials counts the snapshots of all Lives, so that a Frame knows whether it
// holds the newest whichever Live filled it last.
var serials atomic.Uint64

// snapshot is what a Live shows. It never changes once it is stored.
type snapshot struct {
	Frame
	pins []LivePin
}

// showEvery is how often the walk shows a snapshot, at most.
const showEvery = 16 * time.Millisecond

// Frame copies the newest snapshot to dst and reuses its slices. It never waits
// for a step, and does nothing if dst already holds that snapshot.
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

// show makes the present state the newest snapshot.
func (w *walker) show(residual float64) {
	m := &snapshot{Frame: w.live.newest.Load().Frame, pins: w.hands.list(w.seen())}
	m.Serial, m.Job, m.Stage, m.Residual, m.Err = serials.Add(1), w.job, w.stage, residual, w.err
	m.Carried, m.Refining = w.carried, w.refines()
	m.Hung = w.d.Job.Cowl
	if finite(residual) {
		w.fill(&m.Frame)
	}
	w.measure(residual)
	last := w.reader.last
	if w.seen() != w.d {
		last = w.finer.read
	}
	m.Outcome, m.Reading, m.Pulls, m.Read = last.outcome, last.reading, last.pulls, last.ok
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
	d := w.seen()
	f.Sheet = d.Sheet()
	f.Strain, f.Shear = d.strains(), d.shears()
	f.Clear = d.clearances(f.Sheet.Pos)
}

// finite reports whether x is a number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
