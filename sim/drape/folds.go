package drape

import (
	"context"

	"cowl/sim/fold"
)

// Fold is a fold of a drape and what has become of it.
type Fold struct {
	fold.Fold
	Kept     bool       // the hand laid it and it stayed; else nobody laid it
	LaidCF   float64    // m down the flat centre front from the edge, where the hand laid it; 0: nobody did
	Width    fold.Reach // across the cloth, to either side of the centre front
	Survives float64    // largest strength of Ladder at which it stays; 0: none; NotShaken: not tried
}

// NotShaken stands for the strength of a fold that was not tried.
const NotShaken = -1

// folds returns the folds of a reading with what is known of the laid ones.
func (d *Drape) folds(r fold.Reading) ([]Fold, error) {
	s := d.Sheet()
	widths, err := fold.Across(&s, d.Job.frame(), r.Folds)
	if err != nil {
		return nil, err
	}
	out := make([]Fold, len(r.Folds))
	for i, f := range r.Folds {
		out[i] = Fold{Fold: f, Width: widths[i], Survives: NotShaken}
	}
	for _, l := range d.track.Look(r.Crests()).Folds {
		if !l.Kept() {
			continue
		}
		f := &out[l.Crest]
		f.Kept, f.LaidCF = true, l.From
	}
	return out, nil
}

// reckon counts what was kept and what came by itself above the bust.
func (o *Outcome) reckon() {
	for _, f := range o.Folds {
		switch {
		case f.Kept:
			o.Kept++
		case f.Zone == fold.AboveBust:
			o.Extra++
		}
	}
}

// Try is what the cloth made of a number of laid folds.
type Try struct {
	Laid, Kept, Extra int // Extra lie above the bust and nobody laid them
	Settled           bool
}

// mostTried is as many folds as are tried where no number is asked for.
const mostTried = 4

// counts returns the numbers of folds to try for Auto: that of the draft, else 1 to
// mostTried, as far as they fit.
func (j Job) counts() []int {
	fit := j.FoldsThatFit()
	if n := j.DraftedFolds(); n > 0 && n <= fit {
		return []int{n}
	}
	var out []int
	for n := 1; n <= min(mostTried, fit); n++ {
		out = append(out, n)
	}
	if out == nil {
		return []int{0}
	}
	return out
}

// chosen returns which of the tries is shown: the one with the most folds of which
// all are kept with no extra; if there is none, the one with the most kept, of those
// the one with the fewest extra.
func chosen(tries []Try) int {
	best := 0
	better := func(a, b Try) bool {
		whole := func(t Try) bool { return t.Settled && t.Kept == t.Laid && t.Extra == 0 }
		switch {
		case a.Settled != b.Settled:
			return a.Settled
		case whole(a) != whole(b):
			return whole(a)
		case a.Kept != b.Kept:
			return a.Kept > b.Kept
		}
		return a.Extra < b.Extra
	}
	for k := range tries {
		if better(tries[k], tries[best]) {
			best = k
		}
	}
	return best
}

// finding is what the first hand found out.
type finding struct {
	shown hung
	tries []Try // nil: a number of folds was asked for
}

// first hangs the job by its first hand, with every count if none is asked for, and
// sets the edge; what it shows is carried on to finer lattices if that is asked for.
func (j Job) first(ctx context.Context) (finding, error) {
	fine := j.Fine
	j.Fine = false
	counts := []int{j.Folds}
	if j.Folds == Auto {
		counts = j.counts()
	}
	var jobs []Job
	for _, n := range counts {
		job := j
		job.Folds = n
		jobs = append(jobs, job)
	}
	all, err := hangEach(ctx, jobs)
	if err != nil {
		return finding{}, err
	}
	var t finding
	for _, h := range all {
		t.tries = append(t.tries, h.outcome.Try())
	}
	t.shown = all[chosen(t.tries)]
	if j.Folds != Auto {
		t.tries = nil
	}
	if j.SetEdge {
		j.Folds = t.shown.drape.Job.Folds
		if t.shown, err = j.setEdge(ctx, t.shown); err != nil {
			return t, err
		}
	}
	t.shown.drape.Job.Fine = fine
	t.shown, err = t.shown.refined(ctx)
	return t, err
}
