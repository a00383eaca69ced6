package lab

import (
	"context"
	"testing"

	"cowl/sim"
)

func TestDiscX(t *testing.T) {
	m1 := sim.Stiffness{Weight: 0.13517, PullWarp: 3525, PullWeft: 1460, Shear: 23.5, BendWarp: 1.95e-6, BendWeft: .61e-6, Twist: .3e-6}
	m6 := sim.Stiffness{Weight: 0.25336, PullWarp: 2500, PullWeft: 900, Shear: 72, BendWarp: 7.43e-6, BendWeft: 3.7e-6, Twist: 2.4e-6}
	for _, s := range []sim.Stiffness{m1, m6} {
		for _, h := range []float64{0.006, 0.0045, 0.003} {
			r, err := Disc(context.Background(), s, DiscSetup{Spacing: h, Placings: 2})
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range r.Each {
				t.Logf("%g DC %.1f nodes %d %.1f E %.4f mJ %+v", h, e.Coefficient*100, len(e.Nodes), mm(e.Nodes), e.Energy*1000, e.Run)
			}
		}
	}
}
func mm(x []float64) []float64 {
	var o []float64
	for _, v := range x {
		o = append(o, v*1000)
	}
	return o
}
