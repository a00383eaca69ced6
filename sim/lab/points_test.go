package lab

import (
	"testing"

	"cowl/sim"
)

// Points is what the lattice of a test has within a fifth: the memory of a point is not
// known better. The rim has more crossings, and a swag is no trapezium.
func TestPoints(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 2000, TensileWeft: 2000, Shear: 30, BendWarp: 10e-6, BendWeft: 10e-6,
		Twist: 5e-6}
	bend, pull, hang := BendSetup{Length: 0.1, Width: 0.05, Spacing: 0.001}, TensileSetup{Spacing: 0.002},
		HangSetup{Spacing: 0.005}
	disc, swag, loop := DiscSetup{Spacing: 0.002}, SwagSetup{Spacing: 0.006}, LoopSetup{Spacing: 0.001}
	pull.defaults()
	hang.defaults()
	disc.defaults(s)
	swag.defaults()
	loop.defaults()
	for _, q := range []struct {
		name   string
		points float64
		lay    func() (*bench, error)
	}{
		{"bend", bend.Points(s), func() (*bench, error) { return bend.setUp(s, bend.Spacing) }},
		{"pull", pull.Points(s), func() (*bench, error) { return pull.setUp(s) }},
		{"hang", hang.Points(s), func() (*bench, error) { return hang.setUp(s, hang.Spacing, placings[0]) }},
		{"disc", disc.Points(s), func() (*bench, error) { return disc.setUp(s, disc.Spacing) }},
		{"swag", swag.Points(s), func() (*bench, error) {
			k, err := swag.setUp(s, swag.draft())
			return k.bench, err
		}},
		{"loop", loop.Points(s), func() (*bench, error) { return loop.setUp(s, loop.Spacing) }},
	} {
		k, err := q.lay()
		if err != nil {
			t.Fatal(err)
		}
		if n := float64(len(k.state.Pos)); q.points < 0.8*n || q.points > 1.2*n {
			t.Errorf("%s: Points() = %.0f, the lattice has %.0f", q.name, q.points, n)
		}
	}
	bend.Spacing = 1e-9
	if n := bend.Points(s); n != 0 {
		t.Errorf("Points() of a spacing out of range = %g, want 0", n)
	}
}
