package drape

import (
	"errors"
	"reflect"

	"cowl/sim"
)

// change goes over to j, or says why it cannot.
func (w *walker) change(j Job) {
	j = w.seeded(j)
	if w.d != nil && same(j, w.job) {
		w.err = nil
		w.tell()
		return
	}
	next, err := w.prepare(j)
	w.err = err
	if err != nil {
		w.tell()
		return
	}
	if w.d != nil && !sameOutline(w.job.Piece, j.Piece) {
		if m, ok := matched(w.job.Piece, j.Piece); ok {
			w.hands.move(m)
		}
	}
	w.job, w.next = j, next
	w.stop()
}

// again places the piece anew by the next hand.
func (w *walker) again() {
	if w.d == nil {
		return
	}
	j := w.job
	j.Seed++
	next, err := w.anew(j)
	if err != nil {
		w.err = err
		w.tell()
		return
	}
	w.job, w.next = j, next
	w.stop()
}

// seeded gives j the seed in force, unless it asks for another one than the last time.
func (w *walker) seeded(j Job) Job {
	asked := j.Seed
	if w.d != nil && asked == w.asked {
		j.Seed = w.job.Seed
	}
	w.asked = asked
	return j
}

// same reports whether two jobs ask for the same drape.
func same(a, b Job) bool {
	return a.Spacing == b.Spacing && a.Seed == b.Seed && a.Free == b.Free && a.Form == b.Form &&
		reflect.DeepEqual(a.Fabric, b.Fabric) && reflect.DeepEqual(a.Piece, b.Piece)
}

// prepare lays what j asks for.
func (w *walker) prepare(j Job) (*beginning, error) {
	if err := j.check(); err != nil {
		return nil, err
	}
	if j.Form == nil {
		return nil, errors.New("drape: no dress form; it also gives the shoulder points of a free hang")
	}
	if !w.carries(j) {
		return w.anew(j)
	}
	if j.Spacing < w.d.Lattice.Spacing { // what cannot be laid at the end is refused at once
		if _, err := j.lay(j.Spacing); err != nil {
			return nil, err
		}
	}
	d, err := w.d.carry(w.watched(j))
	if err == nil && d == nil {
		return w.anew(j)
	}
	return &beginning{d: d, carried: true}, err
}

// carries reports whether j may go on from what hangs: the cloth is in place, the
// hand that placed it is the same, and so is the grain. Nobody turns the grain of
// cloth that hangs; yarns laid anew across its folds begin crushed, and the drop
// came out at half of what a placing gives.
func (w *walker) carries(j Job) bool {
	return w.d != nil && w.stage != StagePlacing && (w.next == nil || w.next.carried) &&
		w.d.Result.Status != sim.Diverged && j.Free == w.job.Free && j.Seed == w.job.Seed &&
		j.Piece.Grain == w.job.Piece.Grain
}

// anew lays the flat piece for the hand to place.
func (w *walker) anew(j Job) (*beginning, error) {
	j = w.watched(j)
	if j.Spacing < j.leading() {
		if _, err := j.lay(j.Spacing); err != nil {
			return nil, err
		}
	}
	d, err := j.lay(j.leading())
	if err != nil {
		return nil, err
	}
	return &beginning{d: d}, nil
}

// watched lets the walker see every step of j.
func (w *walker) watched(j Job) Job {
	report := j.Report
	j.watch = w.watch
	j.Report = func(p Progress) {
		if p.Stage == StageLetting {
			w.stage = StageLetting
		}
		if report != nil {
			report(p)
		}
	}
	return j
}
