package study

import (
	"math/rand/v2"
	"slices"

	"cowl/materials"
)

// Known is within which multiples of its value a property of a cloth is known.
type Known struct {
	Least, Most float64
	Bell        bool   // likely as a bell about 1 whose two deviations the ends are, else evenly
	Why         string // where the ends are from
}

// KnownOf says within what q is known of f, as sure draws it.
func KnownOf(f materials.Fabric, q materials.Field) Known {
	d := doubtOf(f, q)
	return Known{d.least, d.most, d.normal, d.why}
}

// Draw draws every property of f within what is known of it, as sure does, but those of
// without.
func Draw(f materials.Fabric, r *rand.Rand, without ...materials.Field) materials.Fabric {
	var doubts []doubt
	for _, d := range doubtsOf(f) {
		if !slices.ContainsFunc(d.fields, func(q materials.Field) bool { return slices.Contains(without, q) }) {
			doubts = append(doubts, d)
		}
	}
	return drawCloth(f, doubts, r)
}
