// Package drape is the one place that wires a draft, a fabric and a dress form
// to the cloth solver and reads the outcome. Command line and window go
// through it. Start at Job and HangAll.
package drape

import (
	"context"
	"errors"
	"fmt"
	"runtime"

	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/lattice"
	"cowl/mesh/limit"
	"cowl/sim"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Job is one drape: the piece, the cloth, the form and the hand.
type Job struct {
	Piece     draft.Piece
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
	Scene   *sim.Scene
	State   *sim.State
	Result  sim.Result
	Lattice *lattice.Lattice
	Skin    lattice.Skin
	Steps   int // over all stages

	pins    []pin      // where the pins have come to sit
	fingers []finger   // that lay the folds
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

// coarsestLeading is the widest spacing of a coarser lattice on which the hand
// leads, m: led on 24 mm the cloth of 12 mm dropped 10 mm less than on its own.
const coarsestLeading = 0.017

// leading returns the spacing on which the hand leads the cloth to the form, m.
func (j Job) leading() float64 {
	if h := 2 * j.placing(); h < coarsestLeading {
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
	d, err := j.lay(j.leading())
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
	if j.Free && j.Piece.Pleats != nil {
		return limit.Errorf("free", "a piece hung free has no shoulder to fold its pleats on: hang it on the form, or without pleats")
	}
	if !(j.Spacing >= Finest && j.Spacing <= Coarsest) {
		return fmt.Errorf("drape: spacing %.1f mm, want %.0f–%.0f mm: 8 mm for a look, a quarter of the bending length for figures",
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

// lay puts the flat piece on a lattice of the given spacing, upright before the form.
func (j Job) lay(spacing float64) (*Drape, error) {
	j.Folds = j.laid()
	p := j.Piece
	l, err := lattice.Cut(relieved(p), lattice.Options{Spacing: spacing, Grain: p.Grain, Origin: r2.Vec{Y: p.FoldY}, Slits: slits(p)})
	if err != nil {
		return nil, err
	}
	d := &Drape{Job: j, Lattice: l, Skin: l.Skin()}
	// A watched drape leaves the second of two cores to whoever draws it.
	d.Scene = &sim.Scene{Cloth: sim.NewCloth(l, Stiffness(j.Fabric)), Friction: j.Fabric.Friction, Rub: j.Fabric.FrictionCloth, Gap: j.gap(), Alone: j.Alone || (j.watch != nil && runtime.NumCPU() < 4)}
	weigh(p, l, d.Scene.Cloth)
	if !j.Free {
		d.Scene.Obstacle = j.Form
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = j.start(q)
	}
	d.pins = j.pins()
	d.fingers = j.fingers(handOf(j.Seed))
	if d.Scene.Holds, err = j.holds(l); err != nil {
		return nil, err
	}
	if d.Scene.Ties, err = j.ties(l); err != nil {
		return nil, err
	}
	sewn, err := j.stitches(l)
	if err != nil {
		return nil, err
	}
	d.tapes, d.Scene.Ties = len(d.Scene.Ties), append(d.Scene.Ties, sewn...)
	d.State = sim.NewState(d.Scene, pos)
	return d, nil
}

// gap is the distance kept between the middle surfaces of two layers, m: the
// thickness of the cloth and room for the flat facets of the lattice.
func (j Job) gap() float64 { return facets + j.Fabric.Thickness }

// facets is how far a flat facet may stand off the surface it stands for, m. A
// chord h on a bend of radius r misses it by h²/8r: that of 12 mm, on which the
// hand lets go, on a roll of 8 mm, where the sharpest fold of the demo has 10.
// It is one for all spacings: a cloth taken over by a finer lattice keeps its
// layers where they are, and figures of two spacings are of the same cloth.
const facets = 2.25e-3

// finer carries the drape to a lattice of half the spacing.
func (d *Drape) finer() (*Drape, error) {
	f, err := d.Job.lay(d.Lattice.Spacing / 2)
	if err != nil {
		return nil, err
	}
	f.State.Take(f.Lattice, d.State, d.Lattice, nil)
	f.Steps, f.pins, f.track, f.shook, f.smoothing, f.Result = d.Steps, d.pins, d.track, d.shook, d.smoothing, d.Result
	f.pinAll()
	f.unpick()
	return f, nil
}

// settle walks to rest, for so many steps at most; even as in sim.Settings.
func (d *Drape) settle(ctx context.Context, residual float64, steps int, even bool) {
	o := sim.Settings{Residual: residual, Steps: steps, Even: even}
	if d.Job.Report != nil {
		o.Report = func(step int, r float64) {
			d.Job.Report(Progress{Stage: "settling", Share: float64(step) / float64(steps), Residual: r})
		}
	}
	o.Watch = d.watched()
	d.Result = sim.Relax(ctx, d.Scene, d.State, o)
	d.Steps += d.Result.Steps
}

// Stiffness takes from a fabric what the solver needs.
func Stiffness(f materials.Fabric) sim.Stiffness {
	twist, _ := f.Twist()
	return sim.Stiffness{
		Weight: f.Weight, PullWarp: f.PullWarp, PullWeft: f.PullWeft, Shear: f.Shear,
		BendWarp: f.BendWarp, BendWeft: f.BendWeft, Twist: twist, BendFriction: f.BendFriction, ShearFriction: f.ShearFriction, Softening: f.BendSoftening, Lock: f.ShearLock,
	}
}
