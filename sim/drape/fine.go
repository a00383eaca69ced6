package drape

import (
	"context"
	"time"

	"cowl/mesh/limit"
	"cowl/sim"
)

// A lattice shows in folds that are narrow beside it, so figures want a quarter of
// the bending length. Cloth at rest is carried on to halved lattices for it, and
// what the last halving has moved says how far the figures still follow the lattice.
const (
	finestCarried = 0.003 // m; finer takes many minutes
	nearEnough    = 1.4   // times a quarter of the bending length: halving would be no nearer to it
)

// goesOn reports whether cloth on a spacing (m) is to be carried on to half of it: once
// at least, then until it is near a quarter of the bending length.
func (j Job) goesOn(spacing float64) bool {
	return spacing/2 >= finestCarried && (spacing == j.Spacing || spacing > nearEnough*j.Fabric.GravityLength()/4)
}

// FinestSpacing returns the spacing of the lattice on which the cloth ends, m.
func (j Job) FinestSpacing() float64 {
	h := j.Spacing
	for j.Fine && j.goesOn(h) {
		h /= 2
	}
	return h
}

// checkFine refuses to carry on what is as fine as can be waited for.
func (j Job) checkFine() error {
	if !j.Fine || j.goesOn(j.Spacing) {
		return nil
	}
	return limit.Errorf("fine", "fine on a spacing of %v, want %v or more: it is halved, and below %v a drape takes "+
		"many minutes",
		limit.Metres(j.Spacing), limit.Metres(2*finestCarried), limit.Metres(finestCarried))
}

// refined carries a drape at rest on to finer lattices if its job asks for it. Its
// outcome tells what the last halving moved.
func (h hung) refined(ctx context.Context) (hung, error) {
	for h.drape.Job.Fine && h.outcome.Status == sim.Settled && h.drape.Job.goesOn(h.drape.Lattice.Spacing) {
		start, coarser := time.Now(), h.outcome
		d, err := h.drape.finer()
		if err != nil {
			return h, err
		}
		h.drape = d
		d.finish(ctx) // it was shaken where it was laid
		if h.outcome, h.reading, err = d.outcome(coarser.Seconds + time.Since(start).Seconds()); err != nil {
			return h, err
		}
		coarser.Coarser = nil
		h.outcome.Coarser = &coarser
	}
	return h, nil
}
