package drape

import (
	"context"
	"math"
	"slices"

	"cowl/sim"
)

// A stand that is shaken up and down with amplitude A at frequency f presses the
// cloth with its weight times 1 ± a, a = A·(2πf)²/g, seen from the stand. The way
// to rest knows no seconds, so the cloth is led under the heavier and the lighter
// weight in turn, three times as the drape test of JIS L 1096 shakes its specimen
// (from memory).
const (
	Frequency = 2.0 // Hz, of the shakes that Amplitude speaks of
	shakes    = 3
	// GentleShake is the a of the shake that every laid drape is given while it comes
	// to rest, so that what stands on an edge falls.
	GentleShake = 0.1
	gentleSteps = 200 // in which a wave crosses the cloth about twice
	// Of the shakes of Ladder every weight is held until the cloth is near rest, for
	// so many steps at most.
	nearRest     = 2e-2 // residual
	nearestSteps = 6000
)

// Ladder lists the strengths a of the shakes that folds are tried with.
var Ladder = []float64{0.1, 0.2, 0.4, 0.6, 0.8}

// Amplitude returns how far a stand shaken at Frequency goes up and down for a
// shake of strength a, m: 6 mm for 0.1.
func Amplitude(a float64) float64 {
	w := 2 * math.Pi * Frequency
	return a * sim.Gravity / (w * w)
}

// shake shakes the stand with strength a, for so many steps at most under each weight,
// and follows the folds.
func (d *Drape) shake(ctx context.Context, a float64, steps int) {
	level := d.System
	d.shook = a
	for range shakes {
		for _, weight := range [2]float64{1 + a, 1 - a} {
			if d.over() {
				break
			}
			d.System = weighted(level, weight)
			d.settle(ctx, nearRest, steps, false)
		}
	}
	d.System = level
	if !d.over() {
		d.settle(ctx, nearRest, steps, false)
		d.look()
	}
}

// weighted returns the scene with all loads times k.
func weighted(s *sim.System, k float64) *sim.System {
	c := *s.Cloth
	c.Load = slices.Clone(c.Load)
	for i := range c.Load {
		c.Load[i] *= k
	}
	out := *s
	out.Cloth = &c
	return &out
}

// survival returns for each laid fold the largest strength of the ladder at which
// it is still kept, 0 if the gentlest shake loses it. It shakes a copy.
func (d *Drape) survival(ctx context.Context) []float64 {
	out := make([]float64, len(d.track.Folds))
	c := *d
	c.State, c.Job.Report = d.State.Clone(), nil
	for i, a := range Ladder {
		d.tell("shaking", float64(i)/float64(len(Ladder)))
		c.shake(ctx, a, nearestSteps)
		kept := 0
		for k, f := range c.track.Folds {
			if f.Kept() && !c.over() {
				out[k] = a
				kept++
			}
		}
		if kept == 0 {
			break
		}
	}
	return out
}

// shakeShown tries how hard a shake the folds of the shown drape survive.
func (r *Run) shakeShown(ctx context.Context) {
	survives := r.Drape.survival(ctx)
	for k, l := range r.Drape.track.Look(r.Reading.Crests()).Folds {
		if l.Kept() {
			r.Outcome.Folds[l.Crest].Survives = survives[k]
		}
	}
}
