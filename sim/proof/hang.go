package proof

import (
	"context"
	"fmt"
	"math"

	"cowl/sim"
	"cowl/sim/lab"
)

// hangs are sheets hung by two corners, and strips under their own weight.
func hangs() []Trial {
	var out []Trial
	for _, grain := range []float64{0, 22.5, 45} {
		out = append(out, sameDrop(grain))
	}
	return append(out, betweenBounds()...)
}

// sameDrop hangs an isotropic sheet with its yarns turned and compares its drop
// with that of the mean of the three directions.
func sameDrop(grain float64) Trial {
	s := isotropic(0.15, 60e-6, 100)
	h := lab.HangSetup{Width: 0.3, Span: 0.24, Spacing: 0.01, Placings: 1}
	c := Check{Name: fmt.Sprintf("isotropic sheet hung with its yarns at %g°: drop over that of the mean direction", grain), Want: 1, Tolerance: 0.02,
		Source: "isotropy: the drop belongs to the cloth, not to the lattice"}
	return figure(c, func(ctx context.Context) (float64, error) {
		var drops []float64
		own := 0.0
		for _, g := range []float64{0, 22.5, 45} {
			h.Grain = rad(g)
			r, err := lab.Hang(ctx, s, h)
			if err != nil {
				return 0, err
			}
			drops = append(drops, r.Drop)
			if g == grain {
				own = r.Drop
			}
		}
		return own * 3 / (drops[0] + drops[1] + drops[2]), nil
	})
}

// limpSheet is hung for its bounds.
var limpSheet = sim.Stiffness{Weight: 0.15, PullWarp: 2000, PullWeft: 2000, Shear: 50, BendWarp: 10e-6, BendWeft: 10e-6, Twist: 5e-6}

// betweenBounds hangs a limp sheet: how far its edge lies below the V, which no
// edge can, and how far above the hanging curve.
func betweenBounds() []Trial {
	const sheet = "limp sheet 600 mm square hung 480 mm apart: edge "
	below := Check{Name: sheet + "below the V", Tolerance: 3, Unit: "mm", Source: "geometry: no edge hangs deeper than a V of its length"}
	above := Check{Name: sheet + "above the hanging curve", Tolerance: 3, Unit: "mm", Source: "closed form: catenary of an edge that hangs alone",
		Note: "the edge of a sheet does not hang alone: it bellies forward, and the yarns below it carry it"}
	hang := func(ctx context.Context) (lab.HangResult, error) {
		return lab.Hang(ctx, limpSheet, lab.HangSetup{Placings: 1})
	}
	return []Trial{
		figure(below, func(ctx context.Context) (float64, error) {
			r, err := hang(ctx)
			return math.Max(0, r.Drop-r.V) * 1000, err
		}),
		figure(above, func(ctx context.Context) (float64, error) {
			r, err := hang(ctx)
			return math.Max(0, r.Curve-r.Drop) * 1000, err
		}),
	}
}
