// Package drape is the one place that wires a draft, a fabric and a dress form
// to the cloth solver and reads the outcome. Command line and window go
// through it. Start at Job and HangAll.
package drape

import (
	"context"
	"errors"
	"fmt"

	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/lattice"
	"cowl/mesh/limit"
	"cowl/sim"
	"cowl/sim/fold"
)

// Job is one drape: the piece, the cloth, the form and the hand.
type Job struct {
	Cowl      draft.Cowl
	Fabric    materials.Fabric
	Form      *form.Form // dress form of the body; also gives the shoulder points of a free hang
	Free      bool       // no form: hang from the two cowl points
	Spacing   float64    // m, between yarn crossings
	Folds     int        // how many the hand lays; 0 lets the cloth fall, Auto tries, see HangAll
	Waist     Waist
	Pace      float64 // how many times as slow as usual the hand lays folds; 0 is 1
	Shake     bool    // HangAll tries how hard a shake the folds shown survive
	Fine      bool    // HangAll carries what has come to rest on to finer lattices, see FinestSpacing
	Lean      float64 // rad, HangAll bends the wearer of the drape shown so far forward and up again; 0: not
	SetEdge   bool    // the cloth is taken up or let down over the cowl points, see HangAll,
	EdgeDepth float64 // until the edge on the centre front rests so far below the front neck point, m
	Seed      uint64  // which hand places the cloth; same seed, same bits
	Alone     bool    // keep to one core, as one of many drapes at a time; the bits are the same
	Report    func(Progress)
	Clock     *sim.Clock // where the time goes, of one drape at a time; nil: nobody asks

	watch func(*Drape, *sim.Stepper) // of a Live, called after every step, may be nil
}

// Progress says how far a drape has come.
type Progress struct {
	Stage    string  // what is being done
	Share    float64 // 0..1 of the stage
	Residual float64
}

// Drape is a settled (or stopped) piece of cloth.
type Drape struct {
	Job     Job
	System  *sim.System
	State   *sim.State
	Result  sim.Result
	Lattice *lattice.Lattice
	Skin    lattice.Skin
	Steps   int // over all stages

	pins    []pin      // where the pins have come to sit
	fingers []finger   // that lay the folds
	edge    ledEdge    // of a hand that lays folds
	track   fold.Track // of the laid folds
	tapes   int        // ties of the scene that are stay tapes; those behind sew up darts

	shook     float64 // strength of the shake it was given
	smoothing bool    // pins are still looked over
}

// The hand lets go of the cloth on a lattice of 5 to 10 mm, or on that which
// was asked for if it is coarser: one of 16 mm falls by itself 15 mm less deep.
// Spacings are halved on the way: a crossing of the coarse lattice is one of the
// fine, so that cloth that is taken over has its lengths and layers stay apart.
const finestPlacing = 0.005 // m

// placing returns the spacing on which the hand lets go, m.
func (j Job) placing() float64 {
	h := j.Spacing
	for h < finestPlacing {
		h *= 2
	}
	return h
}

// coarsestLeading is the widest spacing of a coarser lattice on which the hand leads cloth
// that is let fall, m: led on 24 mm the cloth of 12 mm dropped 10 mm less than on its own.
// Of coarsestLaying a hand lays folds: cloth of 8 mm led on 16 mm drops as much as led on its
// own within 4 mm, and what it stores and how it hangs is nearer to 6 mm.
const (
	coarsestLeading = 0.0125
	coarsestLaying  = 0.0165
)

// leading returns the spacing on which the hand leads the cloth to the form, m.
func (j Job) leading() float64 {
	widest := coarsestLeading
	if j.laid() > 0 {
		widest = coarsestLaying
	}
	if h := 2 * j.placing(); h < widest {
		return h
	}
	return j.placing()
}

// Coarsest and Finest bound the spacing, m: below 2 mm the lattice is as fine
// as the yarns of a loose cloth, above 20 mm a facing has too few cells to roll.
const (
	Coarsest = 0.020
	Finest   = 0.002
)

// Hang places the cloth by hand, lets go and brings it to rest. Of Auto, the
// hand lays as many folds as the draft asks for, else one or two if they fit.
func Hang(ctx context.Context, j Job) (*Drape, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	d, err := j.onLattice(j.leading())
	if err != nil {
		return nil, err
	}
	if d, err = d.place(ctx); err != nil {
		return nil, err
	}
	return d.rest(ctx, false)
}

// Check refuses what cannot be hung: a spacing out of range, pleats that nothing
// holds, a waist pinned where there is no seam, more folds than fit, an edge that lies nowhere.
func (j Job) Check() error {
	if j.Free && j.Cowl.Pleats != nil {
		return limit.Errorf("free", "a piece hung free has no shoulder to fold its pleats on: hang it on the form, or "+
			"without pleats")
	}
	if !(j.Spacing >= Finest && j.Spacing <= Coarsest) {
		return fmt.Errorf("drape: spacing %.1f mm, want %.0f–%.0f mm: 8 mm for a look, a quarter of the bending length "+
			"for figures",
			j.Spacing*1000, Finest*1000, Coarsest*1000)
	}
	return errors.Join(j.checkFine(), j.checkLean(), j.checkWaist(), j.checkFolds(), j.CheckEdge())
}

// rest brings cloth that has been let go to rest, coarse to fine. Cloth that falls does
// so with even masses, see place; what is left for the light ones is to come to rest.
// Cloth that was carried over falls too: it was not led slowly to where it is laid.
func (d *Drape) rest(ctx context.Context, carried bool) (*Drape, error) {
	if carried || d.Job.Folds == 0 {
		d.settle(ctx, roughly, fallSteps, true)
	} else {
		d.smoothing = true // cloth that falls would drag its pins along
		d.settle(ctx, roughly, roughSteps, false)
	}
	d.smoothing = true
	for d.Lattice.Spacing > 1.5*d.Job.Spacing && !d.over() {
		var err error
		if d, err = d.finer(); err != nil {
			return nil, err
		}
		if d.Lattice.Spacing > 1.5*d.Job.Spacing {
			d.settle(ctx, roughly, roughSteps, false)
		}
	}
	if d.Job.Folds > 0 && !d.over() {
		d.shake(ctx, GentleShake, gentleSteps)
	}
	d.smoothing = false
	if !d.over() {
		d.finish(ctx)
	}
	return d, nil
}

// On a lattice that is only on the way the cloth need not come to rest: what is
// left are ripples of that lattice.
const (
	roughly    = 5e-2 // residual
	roughSteps = 1000
	fallSteps  = 2000 // of cloth that falls: after half as many quick ways to rest end 0.6 mm off (TestQuickIsTight)
)

// Residuals on the way to rest: at RestAt cloth rests, at FinerAt it goes over to a finer
// lattice. Total unbalanced force over weight.
const (
	RestAt  = settled
	FinerAt = roughly
)

// over reports whether there is no more to do: stopped, or beyond help.
func (d *Drape) over() bool {
	return d.Result.Status == sim.Cancelled || d.Result.Status == sim.Diverged
}

// finish brings the cloth to rest, in rounds. A round takes friction up afresh
// where the cloth lies: anchors that slip a little with every swing can keep a
// nearly resting cloth creeping for ever. Layers that have passed through each
// other on the way are parted and let fall again.
func (d *Drape) finish(ctx context.Context) {
	n := rounds
	if d.Job.Free {
		n *= 2 // nothing but the air would damp its swinging
	}
	for range n {
		d.settle(ctx, settled, round, false)
		if d.over() || (d.Result.Status == sim.Settled && !d.unpick()) {
			return
		}
	}
}

// A drape is given up after this many rounds of this many steps.
const (
	rounds = 6
	round  = 5_000
)

// settle walks to rest, for so many steps at most; even as in sim.Settings.
func (d *Drape) settle(ctx context.Context, residual float64, steps int, even bool) {
	o := sim.Settings{Residual: residual, Steps: steps, Even: even}
	if d.Job.Report != nil {
		o.Report = func(step int, r float64) {
			d.Job.Report(Progress{Stage: "settling", Share: float64(step) / float64(steps), Residual: r})
		}
	}
	o.Watch = d.watched()
	d.Result = sim.Relax(ctx, d.System, d.State, o)
	d.Steps += d.Result.Steps
}
