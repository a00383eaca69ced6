// Package study is the one place that wires a draft, a fabric and a dress form
// to the cloth solver and reads the outcome. Command line and window go
// through it. Start at Job and HangAll.
package study

import (
	"context"
	"errors"
	"fmt"
	"runtime"

	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Job is one drape: the piece, the cloth, the form and the hand.
type Job struct {
	Piece   draft.Piece
	Fabric  materials.Fabric
	Form    *form.Form // dress form of the body; also gives the shoulder points of a free hang
	Free    bool       // no form: hang from the two cowl points
	Spacing float64    // m, between yarn crossings
	Seed    uint64     // which hand places the cloth; same seed, same bits
	Alone   bool       // keep to one core, as one of many drapes at a time; the bits are the same
	Report  func(Progress)

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

	pins []pin // where the pins have come to sit
}

// placing is the spacing on which the guiding hand works, m. One spacing for
// all, so that a finer lattice starts from the same fall of the cloth.
const placing = 0.012

// Coarsest and Finest bound the spacing, m: below 2 mm the lattice is as fine
// as the yarns of a loose cloth, above 20 mm a facing has too few cells to roll.
const (
	Coarsest = 0.020
	Finest   = 0.002
)

// Hang places the cloth by hand, lets go and brings it to rest.
func Hang(ctx context.Context, j Job) (*Drape, error) {
	if err := j.check(); err != nil {
		return nil, err
	}
	d, err := j.lay(max(j.Spacing, placing))
	if err != nil {
		return nil, err
	}
	d.place(ctx)
	return d.rest(ctx)
}

// check refuses a spacing out of range, and pleats that nothing holds.
func (j Job) check() error {
	if j.Free && j.Piece.Pleats != nil {
		return errors.New("drape: a piece hung free has no shoulder to fold its pleats on: hang it on the form, or without pleats")
	}
	if !(j.Spacing >= Finest && j.Spacing <= Coarsest) {
		return fmt.Errorf("drape: spacing %.1f mm, want %.0f–%.0f mm: 8 mm for a look, a quarter of the bending length for figures",
			j.Spacing*1000, Finest*1000, Coarsest*1000)
	}
	return nil
}

// rest brings cloth that has been let go to rest, coarse to fine.
func (d *Drape) rest(ctx context.Context) (*Drape, error) {
	for d.Lattice.Spacing > d.Job.Spacing && !d.over() {
		d.settle(ctx, roughly, roughSteps, false)
		if d.over() {
			break
		}
		var err error
		if d, err = d.finer(max(d.Job.Spacing, d.Lattice.Spacing/1.6)); err != nil {
			return nil, err
		}
		d.unpick()
	}
	d.finish(ctx)
	return d, nil
}

// On a lattice that is only on the way the cloth need not come to rest: what is
// left are ripples of that lattice.
const (
	roughly    = 5e-2 // residual
	roughSteps = 4000
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
	for k := range n {
		d.settle(ctx, settled, round, k%2 == 1)
		if d.over() || (d.Result.Status == sim.Settled && !d.unpick()) {
			return
		}
	}
}

// A drape is given up after this many rounds of this many steps.
const (
	rounds = 6
	round  = 15_000
)

// lay puts the flat piece on a lattice of the given spacing, upright before the form.
func (j Job) lay(spacing float64) (*Drape, error) {
	p := j.Piece
	l, err := lattice.Cut(relieved(p), lattice.Options{Spacing: spacing, Grain: p.Grain, Origin: r2.Vec{Y: p.FoldY}, Slits: slits(p)})
	if err != nil {
		return nil, err
	}
	d := &Drape{Job: j, Lattice: l, Skin: l.Skin()}
	// A watched drape leaves the second of two cores to whoever draws it.
	d.Scene = &sim.Scene{Cloth: sim.NewCloth(l, Stiffness(j.Fabric)), Friction: j.Fabric.Friction, Gap: Gap, Alone: j.Alone || (j.watch != nil && runtime.NumCPU() < 4)}
	weigh(p, l, d.Scene.Cloth)
	if !j.Free {
		d.Scene.Obstacle = j.Form
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = j.start(q)
	}
	d.pins = j.pins()
	if d.Scene.Holds, err = j.holds(l); err != nil {
		return nil, err
	}
	if d.Scene.Ties, err = j.ties(l); err != nil {
		return nil, err
	}
	d.State = sim.NewState(d.Scene, pos)
	return d, nil
}

// Gap is the distance kept between the middle surfaces of two layers, m: room
// for the thickness of cloth and for the flat facets of the lattice.
const Gap = 2.5e-3

// finer carries the drape to a lattice of another spacing.
func (d *Drape) finer(spacing float64) (*Drape, error) {
	f, err := d.Job.lay(spacing)
	if err != nil {
		return nil, err
	}
	for i, q := range f.Lattice.Rest {
		if p, ok := d.Lattice.Locate(q); ok {
			f.State.Pos[i] = p.At(d.State.Pos)
		}
	}
	f.Steps, f.pins = d.Steps, d.pins
	f.pinAll()
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
	if d.Job.watch != nil {
		o.Watch = func(w *sim.Stepper) { d.Job.watch(d, w) }
	}
	d.Result = sim.Relax(ctx, d.Scene, d.State, o)
	d.Steps += d.Result.Steps
}

// Stiffness takes from a fabric what the solver needs.
func Stiffness(f materials.Fabric) sim.Stiffness {
	twist, _ := f.Twist()
	return sim.Stiffness{
		Weight: f.Weight, PullWarp: f.PullWarp, PullWeft: f.PullWeft, Shear: f.Shear,
		BendWarp: f.BendWarp, BendWeft: f.BendWeft, Twist: twist, BendFriction: f.BendFriction,
	}
}
