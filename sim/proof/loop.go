package proof

import (
	"context"
	"fmt"

	"cowl/materials"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/lab"
)

const heart = `closed form: heavy elastica with B(a) = B1·cos⁴ + B2·sin⁴ + (4·B45 − B1 − B2)·cos²·sin²; hanging heart loop of F. T. Peirce, J. Textile Institute 21 (1930) T377, from memory`

// loops are tight folds along, across and between the yarns: heart loops of a
// limp, a middle and a stiff cloth against the heavy elastica.
func loops() []Pending {
	var out []Pending
	for _, name := range []string{"polyester-twill", "cotton-polyester-twill", "cotton-broad"} {
		for _, length := range []float64{0.2, 0.15, 0.1} {
			for _, grain := range []float64{0, 22.5, 45} {
				out = append(out, heartLoop(name, length, grain))
			}
		}
	}
	return out
}

// heartLoop hangs a loop of a fabric of the library, taken as elastic, as the
// elastica is.
func heartLoop(name string, length, grain float64) Pending {
	c := Check{Name: fmt.Sprintf("heart loop of %.0f cm, %s at %g°: depth", length*100, name, grain), Unit: "mm",
		Source: heart}
	f, err := materials.Find(name)
	if err != nil {
		return figure(c, func(context.Context) (float64, error) { return 0, err })
	}
	s := drape.Stiffness(f)
	s.BendFriction, s.ShearFriction, s.Softening = 0, 0, 0
	own := lab.GravityLength(s, rad(grain))
	c.Want = materials.HeartDepth(length/own) * length * 1000
	c.Tolerance = 0.03 * c.Want
	return Pending{c, func(ctx context.Context) (float64, string, error) {
		r, err := lab.Loop(ctx, s, lab.LoopSetup{Length: length, Grain: rad(grain)})
		if err == nil && r.Status != sim.Settled {
			return r.Depth * 1000, fmt.Sprintf("not settled: %s", r.Status), nil
		}
		return r.Depth * 1000, fmt.Sprintf("bending length %.1f mm read, %.1f mm given", r.BendingLength*1000, own*1000), err
	}}
}
