package drape

import (
	"context"
	"time"

	"cowl/sim"
	"cowl/sim/fault"
)

// walker is what the walking goroutine of a Live alone knows and touches.
type walker struct {
	live    *Live
	d       *Drape // what is hanging; nil until something could be laid
	job     Job    // of d, as it was asked for
	stage   string
	next    *beginning         // what is to be walked instead of d
	stop    context.CancelFunc // ends the present walk
	carried bool               // d was carried over from another drape
	new     bool               // d has not been at rest yet
	busy    bool               // touched since the present walk began
	finer   refining           // of d, at rest
	later   *Job               // a change that waits for changeEvery
	err     error              // of the last Change
	hands   hands
	setting setting   // of the edge of job
	set     bool      // that is done, as far as it goes
	began   time.Time // of the way of d
	shown   time.Time // of the newest snapshot
	reader  reader
}

// beginning is a drape to be walked to rest.
type beginning struct {
	d       *Drape
	carried bool // over from another drape, not laid flat
}

func newWalker(l *Live) *walker {
	return &walker{live: l, stage: StagePlacing, stop: func() {}, reader: reader{come: make(chan come, 1)}}
}

// changeEvery is the least time that the cloth walks between two changes: a
// slider that is dragged sends them faster than the cloth can follow.
const changeEvery = 150 * time.Millisecond

// run walks, sleeps and obeys until the Live is closed.
func (w *walker) run() {
	defer close(w.live.done)
	defer w.live.readers.Wait()
	defer fault.Tell()
	for w.live.ctx.Err() == nil {
		switch {
		case w.next != nil:
			w.begin()
		case w.later != nil:
			w.changeLater()
		case w.busy && w.d != nil && w.d.Result.Status != sim.Diverged:
			w.goOn()
		case w.refines():
			w.refine()
		default:
			w.sleep()
		}
	}
}

// begin brings what comes next to rest.
func (w *walker) begin() {
	ctx, stop := context.WithCancel(w.live.ctx)
	defer stop()
	d, carried := w.next.d, w.next.carried
	w.stop, w.next, w.busy, w.began = stop, nil, false, time.Now()
	w.reader.last, w.carried, w.new = figures{}, carried, true
	w.finer = refining{}
	w.reader.way++
	w.hands.wait = !carried
	w.stage = StageSettling
	if !carried {
		w.stage = StagePlacing
		w.hands.grab = nil
	}
	w.meet(d)
	if carried {
		h := handOf(d.Job.Seed)
		if d.shift(ctx, h); ctx.Err() == nil && !d.follows() && w.placeAnew() {
			return
		}
		// As long as a hand that lets fall, whatever was laid: it has not been led slowly.
		d.smoothOut(ctx, h, smoothings)
		w.stage = StageSettling
	} else {
		placed, err := d.place(ctx)
		if err != nil {
			w.fail(err)
			return
		}
		d = placed
		w.meet(d)
		w.hands.wait, w.stage = false, StageSettling
		w.rehold()
	}
	d, err := d.rest(ctx, carried)
	if err != nil {
		w.fail(err)
		return
	}
	w.d = d
	w.end()
}

// fail shows that a way could not go on.
func (w *walker) fail(err error) {
	w.err = err
	w.d.Result.Status = sim.StepLimit
	w.end()
}

// goOn brings a drape that was touched to rest again.
func (w *walker) goOn() {
	ctx, stop := context.WithCancel(w.live.ctx)
	defer stop()
	w.stop, w.busy, w.stage = stop, false, StageSettling
	w.finer = refining{}
	w.reader.way++
	w.d.finish(ctx)
	w.end()
}

// end shows how a walk has ended, unless there is more to do. Cloth that was
// carried over and cannot find rest is placed anew, as is that which does not follow the hand.
func (w *walker) end() {
	w.stop = func() {}
	if w.next != nil || w.live.ctx.Err() != nil {
		return
	}
	lost := w.d.lost()
	if w.carried && w.new && lost && w.placeAnew() {
		return
	}
	if !lost && !w.busy && w.setEdge() {
		return
	}
	w.new = false
	if w.busy && w.d.Result.Status != sim.Diverged {
		return
	}
	w.stage = StageStopped
	if !lost {
		w.stage = StageRest
	}
	w.show(w.d.Result.Residual)
}

// lost reports whether a walk has ended without sound cloth at rest.
func (d *Drape) lost() bool {
	return d.Result.Status != sim.Settled || d.Pierced() > 0 || d.knotted(make([]bool, len(d.State.Pos)))
}

// placeAnew has the piece that hangs placed from the flat next; false if it cannot be.
func (w *walker) placeAnew() bool {
	j := w.job
	j.Cowl = w.d.Job.Cowl
	w.next, _ = w.anew(j)
	return w.next != nil
}

// sleep waits for orders and obeys them.
func (w *walker) sleep() {
	select {
	case <-w.live.ctx.Done():
	case <-w.live.wake:
		w.obey()
	}
}

// obey does what was ordered since the last time.
func (w *walker) obey() {
	l := w.live
	l.mu.Lock()
	orders, job := l.orders, l.job
	l.orders, l.job = nil, nil
	l.mu.Unlock()
	for _, do := range orders {
		do(w)
	}
	if job != nil {
		w.later = job
	}
}

// changeLater does the change that waits.
func (w *walker) changeLater() {
	j := *w.later
	w.later = nil
	w.change(j)
}

// watch is called after every step of d on the walking goroutine.
func (w *walker) watch(d *Drape, s *sim.Stepper) {
	if w.finer.walks {
		w.watchFiner(d)
		return
	}
	if d != w.d {
		w.meet(d)
	}
	select {
	case <-w.live.wake:
		w.obey()
	default:
	}
	if w.later != nil && time.Since(w.began) >= changeEvery {
		w.changeLater()
	}
	if w.next != nil {
		return
	}
	w.hands.hold(d)
	if now := time.Now(); now.Sub(w.shown) >= showEvery && w.live.wanted.Load() {
		w.show(s.Residual())
	}
}

// meet takes d for the drape that hangs.
func (w *walker) meet(d *Drape) {
	w.d = d
	w.rehold()
}
