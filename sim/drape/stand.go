package drape

import (
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// slits returns the release slashes and the darts that are cut out as the lattice takes
// them: begun outside the seam they are cut from.
func slits(p draft.Cowl, spacing float64) []lattice.Slit {
	const outside = 0.005 // m
	var out []lattice.Slit
	for _, s := range p.Releases {
		d := r2.Unit(r2.Sub(s.To, s.From))
		out = append(out, lattice.Slit{From: r2.Sub(s.From, r2.Scale(outside, d)), To: s.To})
	}
	if d, open := dart(p); open {
		out = append(out, d.slits(spacing)...)
	}
	return out
}

// besideRelease is how far pins keep off the mouth of a slash, m: a pin in it
// would hold one corner of the cloth alone.
const besideRelease = 0.015

// clearOfReleases leaves out the pins in the mouths of slashes.
func (j Job) clearOfReleases(pins []pin) []pin {
	return slices.DeleteFunc(pins, func(p pin) bool {
		for _, s := range j.Cowl.Releases {
			if r2.Norm(r2.Sub(p.flat, s.From)) < besideRelease {
				return true
			}
		}
		return false
	})
}

// hem is how far inside the free edge of the facing a weight is sewn, m.
const hem = 0.005

// weigh sews the weight of the piece to its facing.
func weigh(p draft.Cowl, l *lattice.Lattice, c *sim.Cloth) {
	if p.Weight == 0 {
		return
	}
	if at, ok := l.Locate(r2.Vec{Y: p.FoldY + p.Facing - hem}); ok { // else the facing is narrower than a cell
		c.Sew(at, p.Weight*sim.Gravity)
	}
}

// PullOf returns the pull of all pins of one name together, N.
func (d *Drape) PullOf(name string) float64 { return d.pulls()[name] }

// pulls returns the pull of all pins of each name together, N.
func (d *Drape) pulls() map[string]float64 {
	out := map[string]float64{}
	for h, pull := range d.State.Pulls(d.System) {
		out[h.Name] += r3.Norm(pull)
	}
	return out
}
