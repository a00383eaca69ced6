package drape

import (
	"runtime"
	"slices"

	"cowl/materials"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// onLattice puts the flat piece on a lattice of the given spacing, upright before the form.
func (j Job) onLattice(spacing float64) (*Drape, error) {
	j.Folds = j.laid()
	p := j.Cowl
	l, err := lattice.Cut(cut(p), lattice.Options{Spacing: spacing, Grain: p.Grain, Origin: r2.Vec{Y: p.FoldY},
		Slits: slits(p, spacing)})
	if err != nil {
		return nil, err
	}
	d := &Drape{Job: j, Lattice: l, Skin: l.Skin()}
	// A watched drape leaves the second of two cores to whoever draws it.
	d.System = &sim.System{Cloth: sim.NewCloth(l, Stiffness(j.Fabric)), Friction: j.Fabric.Friction,
		Rub: j.Fabric.FrictionCloth, Gap: j.gap(), Alone: j.Alone || (j.watch != nil && runtime.NumCPU() < 4),
		Clock: j.Clock}
	weigh(p, l, d.System.Cloth)
	if !j.Free {
		d.System.Obstacle = j.Form
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = j.start(q)
	}
	d.pins = j.pins()
	d.fingers = j.fingers(handOf(j.Seed))
	if d.System.Holds, err = j.holds(l); err != nil {
		return nil, err
	}
	if d.System.Ties, err = j.ties(l); err != nil {
		return nil, err
	}
	sewn, err := j.stitches(l, d.System.Cloth)
	if err != nil {
		return nil, err
	}
	if dart, open := dart(p); open {
		d.System.Closed = dart.closed(l)
	}
	d.tapes, d.System.Ties = len(d.System.Ties), append(d.System.Ties, sewn...)
	d.State = sim.NewState(d.System, pos)
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

// finer carries the drape to a lattice of half the spacing; d stays as it is.
func (d *Drape) finer() (*Drape, error) {
	f, err := d.Job.onLattice(d.Lattice.Spacing / 2)
	if err != nil {
		return nil, err
	}
	f.State.Take(f.Lattice, d.State, d.Lattice, nil)
	f.Steps, f.track, f.shook, f.smoothing, f.Result = d.Steps, d.track, d.shook, d.smoothing, d.Result
	f.pins = slices.Clone(d.pins)
	f.pinAll()
	f.unpick()
	return f, nil
}

// Stiffness takes from a fabric what the solver needs.
func Stiffness(f materials.Fabric) sim.Stiffness {
	twist, _ := f.Twist()
	return sim.Stiffness{
		Weight: f.Weight, TensileWarp: f.TensileWarp, TensileWeft: f.TensileWeft, Shear: f.Shear,
		BendWarp: f.BendWarp, BendWeft: f.BendWeft, Twist: twist, BendFriction: f.BendFriction,
		ShearFriction: f.ShearFriction, Softening: f.BendSoftening, Lock: f.ShearLock,
	}
}
