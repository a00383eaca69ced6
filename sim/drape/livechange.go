package drape

import (
	"errors"
	"reflect"

	"cowl/mesh/draft"
	"cowl/sim"
)

// change goes over to j, or says why it cannot.
func (w *walker) change(j Job) {
	if w.d != nil && j.Same(&w.job) {
		w.err = nil
		w.alike(j)
		return
	}
	if w.restsAs(j) {
		w.job, w.err = j, nil
		w.show(w.seen().Result.Residual)
		return
	}
	next, err := w.prepare(j)
	w.err = err
	if err != nil {
		w.tell()
		return
	}
	w.moveHands(next)
	w.job, w.next, w.setting, w.set = j, next, setting{}, false
	w.stop()
}

// moveHands takes the hands along to a piece of another cut.
func (w *walker) moveHands(next *beginning) {
	if w.d == nil {
		return
	}
	from, to := w.hung(), next.d.Job.Cowl
	if m, ok := matched(from, to); ok && !sameOutline(from, to) {
		w.hands.move(m)
	}
}

// hung returns the piece as it hangs, or as it is about to: with its edge set.
func (w *walker) hung() draft.Cowl {
	if w.next != nil {
		return w.next.d.Job.Cowl
	}
	return w.d.Job.Cowl
}

// Same reports whether two jobs ask for the same drape, refined or not, as a Live tells them apart.
func (j *Job) Same(k *Job) bool {
	return j.SetEdge == k.SetEdge && j.EdgeDepth == k.EdgeDepth && sameCloth(*j, *k)
}

// sameCloth is Same but for the depth of the edge.
func sameCloth(a, b Job) bool {
	return a.Folds == b.Folds && a.Waist == b.Waist && a.Spacing == b.Spacing && a.Seed == b.Seed && a.Free == b.Free &&
		a.Form == b.Form &&
		reflect.DeepEqual(a.Fabric, b.Fabric) && reflect.DeepEqual(a.Cowl, b.Cowl)
}

// prepare lays what j asks for.
func (w *walker) prepare(j Job) (*beginning, error) {
	if j.Form == nil {
		return nil, errors.New("drape: no dress form; it also gives the shoulder points of a free hang")
	}
	if err := j.Check(); err != nil {
		return nil, err
	}
	j = w.taken(j)
	if !w.carries(j) {
		return w.anew(j)
	}
	if j.Spacing < w.d.Lattice.Spacing { // what cannot be laid at the end is refused at once
		if _, err := j.onLattice(j.Spacing); err != nil {
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
// hand that placed it is the same, and so are its folds and the grain. Nobody turns
// the grain of cloth that hangs; yarns laid anew across its folds begin crushed, and
// the drop came out at half of what a placing gives. Nor does anyone lay another number
// of folds into it without taking it off, or lets cloth in below the waist; a waist is let
// go of by the hand that places.
func (w *walker) carries(j Job) bool {
	return w.d != nil && w.stage != StagePlacing && (w.next == nil || w.next.carried) &&
		w.d.Result.Status != sim.Diverged && j.Free == w.job.Free && j.Seed == w.job.Seed &&
		j.Cowl.Grain == w.job.Cowl.Grain && j.Cowl.Hem == w.job.Cowl.Hem &&
		(j.Waist == FreeWaist) == (w.job.Waist == FreeWaist) && j.laid() == w.d.Job.Folds
}

// anew lays the flat piece for the hand to place.
func (w *walker) anew(j Job) (*beginning, error) {
	j = w.watched(j)
	if j.Spacing < j.leading() {
		if _, err := j.onLattice(j.Spacing); err != nil {
			return nil, err
		}
	}
	d, err := j.onLattice(j.leading())
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
