package drape

import (
	"context"
	"runtime"
	"sync"
	"time"

	"cowl/sim"
	"cowl/sim/fault"
	"cowl/sim/fold"
)

// Run is a job hung by several hands.
type Run struct {
	Outcome Outcome      // of the shown placing, with counts and spread over all
	Reading fold.Reading // of the shown placing
	Drape   *Drape       // the shown placing: the first, never chosen for what it shows
	Each    []Outcome    // one a placing
}

// HangAll hangs the job with n hands of seeds Seed, Seed+1, … and reads what they
// agree on. Of Auto the first hand tries how many folds the cloth keeps and sets
// the edge where it is wanted; the others do alike, see HangLike. Drapes are
// independent, so they take a core each; the result does not depend on the number
// of cores.
func HangAll(ctx context.Context, j Job, n int) (*Run, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	tried, err := j.first(ctx)
	if err != nil {
		return nil, err
	}
	shown := tried.shown
	j.Folds, j.Cowl = shown.drape.Job.Folds, shown.drape.Job.Cowl
	var jobs []Job
	for k := 1; k < n; k++ {
		job := j
		job.Seed += uint64(k)
		jobs = append(jobs, job)
	}
	rest, err := hangEach(ctx, jobs)
	if err != nil {
		return nil, err
	}
	all := append([]hung{shown}, rest...)
	return j.run(ctx, all, tried.tries)
}

// HangLike hangs the job by its hand alone, which does as another has found out: it
// lays as many folds and takes up as much cloth as in the outcome first. It gives
// the drape that HangAll has of that hand, to the bit.
func HangLike(ctx context.Context, j Job, first *Outcome) (*Run, error) {
	j.Folds = first.Laid
	j, err := j.taken(first.Taken)
	if err != nil {
		return nil, err
	}
	all, err := hangEach(ctx, []Job{j})
	if err != nil {
		return nil, err
	}
	return j.run(ctx, all, nil)
}

// run makes the run of drapes, the shown one first.
func (j Job) run(ctx context.Context, all []hung, tries []Try) (*Run, error) {
	r := &Run{Outcome: all[0].outcome, Reading: all[0].reading, Drape: all[0].drape}
	for _, h := range all {
		r.Each = append(r.Each, h.outcome)
	}
	r.Outcome.Tried = tries
	r.agree()
	if j.Shake {
		r.shakeShown(ctx)
	}
	if j.Lean > 0 && r.Outcome.Status == sim.Settled {
		return r, r.leanShown(ctx)
	}
	return r, nil
}

// hung is a drape and what is read off it.
type hung struct {
	drape   *Drape
	outcome Outcome
	reading fold.Reading
}

// hangEach hangs many jobs, as many at a time as there are cores. Only the first
// tells of its progress.
func hangEach(ctx context.Context, jobs []Job) ([]hung, error) {
	out, errs := make([]hung, len(jobs)), make([]error, len(jobs))
	gate := make(chan struct{}, runtime.GOMAXPROCS(0))
	var wg sync.WaitGroup
	var broken fault.Carrier
	for k, job := range jobs {
		job.Alone = job.Alone || len(jobs) > 1
		if k > 0 {
			job.Report = nil
		}
		wg.Go(func() {
			gate <- struct{}{}
			defer func() { <-gate }()
			defer broken.Catch()
			start, h := time.Now(), &out[k]
			if h.drape, errs[k] = Hang(ctx, job); errs[k] == nil {
				h.outcome, h.reading, errs[k] = h.drape.outcome(time.Since(start).Seconds())
			}
			if errs[k] == nil {
				*h, errs[k] = h.refined(ctx)
			}
		})
	}
	wg.Wait()
	broken.Raise()
	for k, err := range errs {
		if err != nil {
			return nil, err
		}
		d := out[k].drape
		d.Job.Alone, d.System.Alone = jobs[k].Alone, jobs[k].Alone // what goes on with one drape has all cores
	}
	return out, nil
}

// agree fills the shown outcome with what the placings have in common.
func (r *Run) agree() {
	o := &r.Outcome
	o.Placings = len(r.Each)
	for _, e := range r.Each {
		o.FoldCounts = append(o.FoldCounts, e.FoldCount)
		o.EdgeDrops = append(o.EdgeDrops, e.EdgeDrop)
	}
	o.FoldCount, o.CountShare = fold.Modes(o.FoldCounts)
}
