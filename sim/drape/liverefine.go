package drape

import (
	"context"
	"time"
)

// refining is what a Live makes of cloth at rest whose job asks for Fine. The coarse
// cloth stays what hangs: whatever touches or changes it finds it as quick as before.
type refining struct {
	walks bool    // a finer drape is on its way to rest
	tried bool    // it has been, as far as it goes
	d     *Drape  // at rest on the finest lattice that came to rest; nil: none
	read  figures // of d
}

// refines reports whether the cloth at rest is to be carried on to finer lattices, or is
// on the way there. A hand that holds it still may draw it on at any moment.
func (w *walker) refines() bool {
	return w.job.Fine && w.d != nil && w.stage == StageRest && w.next == nil && !w.busy && w.hands.grab == nil &&
		!w.finer.tried && w.d.Job.goesOn(w.d.Lattice.Spacing)
}

// seen returns the drape that is shown: what hangs, or its refinement.
func (w *walker) seen() *Drape {
	if w.job.Fine && w.finer.d != nil {
		return w.finer.d
	}
	return w.d
}

// refine carries the cloth at rest on to finer lattices, as HangAll does, and shows what has
// come to rest there. Until then the coarse cloth is shown.
func (w *walker) refine() {
	ctx, stop := context.WithCancel(w.live.ctx)
	defer stop()
	w.stop, w.finer.walks = stop, true
	d, read := w.finest(ctx)
	w.stop, w.finer.walks = func() {}, false
	if ctx.Err() != nil {
		return
	}
	w.finer = refining{tried: true, d: d, read: read}
	w.show(w.seen().Result.Residual)
}

// finest returns the finest drape that came to rest, and its figures; nil if none did.
func (w *walker) finest(ctx context.Context) (best *Drape, read figures) {
	coarser := w.reader.last.outcome
	for d := w.d; d.Job.goesOn(d.Lattice.Spacing); d = best {
		start := time.Now()
		f, err := d.finer()
		if err != nil {
			return best, read
		}
		w.hands.take(f)
		if f.finish(ctx); ctx.Err() != nil || f.lost() {
			return best, read
		}
		best, read = f, f.figures(coarser.Seconds+time.Since(start).Seconds())
		before := coarser
		before.Coarser = nil
		read.outcome.Coarser, coarser = &before, read.outcome
	}
	return best, read
}

// watchFiner is called after every step on finer lattices. Orders act on the coarse cloth;
// the finer one is given up as soon as it is no longer its refinement.
func (w *walker) watchFiner(d *Drape) {
	select {
	case <-w.live.wake:
		w.obey()
	default:
	}
	if w.later != nil {
		w.changeLater()
	}
	if !w.refines() {
		w.stop()
		return
	}
	w.hands.hold(d)
}

// alike goes over to a job that asks for the same drape: what rests is refined, or shown
// as it was before.
func (w *walker) alike(j Job) {
	was := w.job.Fine
	w.job.Fine = j.Fine
	if was == j.Fine || w.stage != StageRest || w.next != nil || w.busy {
		w.tell()
		return
	}
	w.show(w.seen().Result.Residual)
}
