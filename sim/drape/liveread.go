package drape

import (
	"slices"
	"time"

	"cowl/sim"
	"cowl/sim/fault"
	"cowl/sim/fold"
)

// figures are what was read off a drape.
type figures struct {
	outcome Outcome
	reading fold.Reading
	pulls   map[string]float64 // N, see Frame
	ok      bool
}

// reader reads figures beside the walk, one set at a time.
type reader struct {
	last figures
	due  time.Time
	busy bool
	way  int // counts the walks: figures of a former one come too late
	come chan come
}

// come is a set of figures that has been read on the way of that number.
type come struct {
	figures
	way  int
	took time.Duration
}

// readEvery is the least time between two readings on the way, and readRest
// the time left free after one, in times of what it took.
const (
	readEvery = 250 * time.Millisecond
	readRest  = 3
)

// measure brings the figures up to date: on the way by a reading of some
// moments ago, at the end of it by one of the very state.
func (w *walker) measure(residual float64) {
	r := &w.reader
	r.receive()
	seconds := time.Since(w.began).Seconds()
	switch {
	case w.seen() != w.d: // refined, and read when it came to rest
	case w.stage == StageRest || w.stage == StageStopped:
		r.last = w.d.figures(seconds)
	case w.stage == StagePlacing || !finite(residual):
		r.last.ok = false
	case !r.busy && time.Now().After(r.due):
		r.busy = true
		d, way := w.d.snapshot(residual), r.way
		w.live.readers.Go(func() {
			defer fault.Tell()
			start := time.Now()
			f := d.figures(seconds)
			r.come <- come{f, way, time.Since(start)}
		})
	}
}

// receive takes figures that have been read meanwhile.
func (r *reader) receive() {
	select {
	case c := <-r.come:
		r.busy, r.due = false, time.Now().Add(max(readEvery, readRest*c.took))
		if c.way == r.way {
			r.last = c.figures
		}
	default:
	}
}

// figures reads the drape as the only placing.
func (d *Drape) figures(seconds float64) figures {
	o, r, err := d.outcome(seconds)
	one := Run{Outcome: o, Each: []Outcome{o}}
	one.agree()
	return figures{one.Outcome, r, d.pulls(), err == nil && d.Result.Status != sim.Diverged}
}

// snapshot copies what the walk changes. What is read off
// it is a snapshot on the way.
func (d *Drape) snapshot(residual float64) *Drape {
	c := *d
	c.State, c.pins = d.State.Clone(), slices.Clone(d.pins)
	c.Result = sim.Result{Status: sim.StepLimit, Residual: residual}
	return &c
}
