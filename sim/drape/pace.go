package drape

import (
	"cmp"
	"math"
)

// A hand that lays folds takes a quarter of the steps of one that lets fall, as it
// stretches nothing on the way, and takes them on 8 mm: a step carries a wave about
// one spacing, so on a finer lattice the same hand takes more of them.
const (
	laidShare = 0.25
	laidOn    = 0.008 // m
)

// slowly returns how many of the n steps of a stage the hand takes in part k of parts.
func (d *Drape) slowly(n, k, parts int) int {
	if d.Job.Folds == 0 {
		return n / parts
	}
	all := float64(n) * laidShare * cmp.Or(d.Job.Pace, 1) * laidOn / d.Lattice.Spacing
	upTo := func(k int) int { return int(math.Round(all * float64(k) / float64(parts))) }
	return upTo(k+1) - upTo(k)
}

// loosened returns what is left of the grip at share t of letting go. A hand that
// has laid folds lets go by equal ratios: with equal steps nine tenths of the
// letting go would pass before the weight of the cloth is felt at all, and it would fall
// in the last.
func (d *Drape) loosened(t float64) float64 {
	if d.Job.Folds == 0 || t >= 1 {
		return 1 - t
	}
	return math.Pow(10, -lightness*t)
}

// lightness is by how many powers of ten a laying hand grows lighter: from
// 1 N/m to 0.1 mN/m a finger, which over a centimetre is a hundredth of what
// the cloth under a finger weighs.
const lightness = 4
