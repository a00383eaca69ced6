package sim

import (
	"context"
	"math"
)

// Status says how a run ended.
type Status string

// The ways a run can end.
const (
	Settled   Status = "settled"
	StepLimit Status = "step-limit"
	Diverged  Status = "diverged"
	Cancelled Status = "cancelled"
)

// Settings steers the way to rest; the zero value is the documented default.
type Settings struct {
	Residual float64                          // total unbalanced force over weight at rest; 0 means 1e-3
	Steps    int                              // step limit; 0 means 200,000
	Report   func(step int, residual float64) // called every 200 steps, may be nil
	Even     bool                             // see Stepper
	Watch    func(*Stepper)                   // called after every step, may be nil; may change targets, grips and hands
}

// Result tells how the way to rest ended.
type Result struct {
	Status   Status
	Steps    int
	Residual float64 // total unbalanced force over the weight of the piece
}

// checkEvery is how many steps lie between two readings of the residual.
const checkEvery = 50

// Walk steps to rest or to the limit.
func (w *Stepper) Walk(ctx context.Context, o Settings) Result {
	if o.Residual == 0 {
		o.Residual = 1e-3
	}
	if o.Steps == 0 {
		o.Steps = 200_000
	}
	r := Result{Status: StepLimit}
	for r.Steps < o.Steps {
		w.Step()
		r.Steps++
		if o.Watch != nil {
			if o.Watch(w); ctx.Err() != nil {
				r.Status, r.Residual = Cancelled, w.Residual()
				return r
			}
		}
		if r.Steps%checkEvery != 0 {
			continue
		}
		r.Residual = w.Residual()
		if o.Report != nil && r.Steps%(4*checkEvery) == 0 {
			o.Report(r.Steps, r.Residual)
		}
		switch {
		case ctx.Err() != nil:
			r.Status = Cancelled
			return r
		case math.IsNaN(r.Residual) || math.IsInf(r.Residual, 0):
			r.Status = Diverged
			return r
		case r.Residual <= o.Residual:
			r.Status = Settled
			return r
		}
	}
	r.Residual = w.Residual()
	return r
}

// Relax brings the state to rest in place.
func Relax(ctx context.Context, s *System, st *State, o Settings) Result {
	w := NewStepper(s, st)
	w.Even = o.Even
	return w.Walk(ctx, o)
}
