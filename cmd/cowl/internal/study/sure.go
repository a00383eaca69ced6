package study

import (
	"fmt"
	"math/rand/v2"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
)

// Groups of the cases of sure.
const (
	asGiven     = "as given"
	drawnCloth  = "cloth drawn"
	oneProperty = "one property"
)

// sensitive is how many hands place the cloth at each end of each property.
const sensitive = 5

// planSure makes the case as given, one case a hand with a cloth of its own,
// and two cases a property. All lay the same number of folds, so that what differs
// is hand and cloth.
func planSure(a Spec, s style.Style) (*plan, error) {
	p := &plan{spec: a, style: s, page: surePage, pairs: sureDiffs}
	given := newCase(asGiven, s)
	given.Group, given.steady = asGiven, true
	p.cases = append(p.cases, given)
	doubts := doubtsOf(s.Fabric)
	r := rand.New(rand.NewPCG(s.Hang.Seed, 0x73757265))
	for k := range a.Placings {
		one := s
		one.Hang.Seed, one.Hang.Placings = s.Hang.Seed+uint64(k), 1
		one.Fabric = drawCloth(s.Fabric, doubts, r)
		c := newCase(fmt.Sprintf("cloth %d", k+1), one)
		c.Group, c.hide, c.steady = drawnCloth, true, true
		p.cases = append(p.cases, c)
	}
	for _, d := range doubts {
		for _, end := range []struct {
			name string
			k    float64
		}{{"least", d.least}, {"most", d.most}} {
			one := s
			one.Hang.Placings = min(sensitive, a.Placings)
			one.Fabric = d.times(s.Fabric, end.k)
			c := newCase(d.name+", "+end.name, one)
			c.Group, c.hide, c.steady = oneProperty, true, true
			if err := one.Fabric.Validate(); err != nil {
				c.wrong = err
			}
			p.cases = append(p.cases, c)
		}
	}
	return p, nil
}

// drawCloth draws every property within its doubt.
func drawCloth(f materials.Fabric, doubts []doubt, r *rand.Rand) materials.Fabric {
	for range 100 {
		g := f
		for _, d := range doubts {
			g = d.times(g, d.draw(r))
		}
		if g.Validate() == nil {
			return g
		}
	}
	return f // no draw is a possible cloth: the one as given is
}
