package drape

import "math"

// A Live sets the edge of its job as a draper does at the stand: the cloth comes to
// rest, and then it is taken up or let down over the cowl points as it hangs.
// HangAll hangs it afresh each time, so the two do not end in the same bits.

// taken returns j with its piece taken up as far as is known before it hangs: as
// what hangs is now, and by what that lies off the depth that j wants.
func (w *walker) taken(j Job) Job {
	if !j.SetEdge || w.d == nil {
		return j
	}
	by := w.hung().Taken - w.job.Cowl.Taken
	switch read := &w.reader.last; {
	case w.stage == StageRest && read.ok && sameOutline(j.Cowl, w.job.Cowl):
		if off := read.outcome.EdgeBelowNeck - j.EdgeDepth; math.Abs(off) > EdgeNear {
			by += off / dropPerUp
		}
	case w.job.SetEdge:
		by += (w.job.EdgeDepth - j.EdgeDepth) / dropPerUp
	}
	r := j.Cowl.TakeUpRange(by)
	if p, err := j.Cowl.TakenUp(math.Max(r.Lo, math.Min(r.Hi, by))); err == nil {
		j.Cowl = p
	}
	return j
}

// restsAs reports whether what rests is what j wants, but for the words: only the
// depth of the edge is another, and it lies there already.
func (w *walker) restsAs(j Job) bool {
	read := &w.reader.last
	if w.d == nil || w.next != nil || w.stage != StageRest || !read.ok || !sameCloth(j, w.job) {
		return false
	}
	if !j.SetEdge {
		return w.hung().Taken == j.Cowl.Taken
	}
	return math.Abs(read.outcome.EdgeBelowNeck-j.EdgeDepth) <= EdgeNear
}

// setEdge goes over to the piece taken up or let down by what the resting edge lies
// off its depth; false: it lies there, or no taking up brings it nearer.
func (w *walker) setEdge() bool {
	if !w.job.SetEdge || w.set {
		return false
	}
	w.set = true
	next, err := w.edgeNext()
	if err != nil {
		w.err = err
	}
	if next == nil {
		return false
	}
	w.moveHands(next)
	w.next, w.set = next, false
	return true
}

// edgeNext lays the piece taken up over what rests; nil: there is nothing to take up.
func (w *walker) edgeNext() (*beginning, error) {
	r, err := w.d.Read()
	if err != nil {
		return nil, err
	}
	j := w.job
	by, err := w.setting.next(j, w.d.Job.Cowl, r.EdgeBelowNeck)
	if err != nil || by == 0 {
		return nil, err
	}
	if j.Cowl, err = w.d.Job.Cowl.TakenUp(by); err != nil {
		return nil, err
	}
	if j.Folds == Auto && j.AutoFolds() < w.d.Job.Folds { // what is left feeds fewer
		return w.anew(j)
	}
	j.Folds = w.d.Job.Folds
	if err := j.checkFolds(); err != nil {
		return nil, err
	}
	d, err := w.d.carry(w.watched(j))
	if err == nil && d == nil {
		return w.anew(j)
	}
	return &beginning{d: d, carried: true}, err
}
