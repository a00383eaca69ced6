package proof

import (
	"context"
	"fmt"
	"math"
	"strings"
	"sync"

	"cowl/sim"
	"cowl/sim/lab"
)

// hangs are sheets hung by two corners, and strips under their own weight.
func hangs() []Trial {
	var out []Trial
	for _, grain := range []float64{0, 22.5, 45} {
		out = append(out, sameDrop(grain))
	}
	for _, l := range limpSheets() {
		out = append(append(out, l.sameEnergy()), l.bounds()...)
	}
	return out
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

// limp is a limp cloth.
var limp = sim.Stiffness{Weight: 0.15, PullWarp: 2000, PullWeft: 2000, Shear: 50, BendWarp: 10e-6, BendWeft: 10e-6, Twist: 5e-6}

// limpSheet is a sheet of it that is hung once, however many checks read it.
type limpSheet struct {
	name   string
	setup  lab.HangSetup
	once   sync.Once
	result lab.HangResult
	err    error
}

// limpSheets are hung on lattices of about 31, 61 and 121 nodes a side.
func limpSheets() []*limpSheet {
	return []*limpSheet{
		{name: "limp sheet 600 mm square hung 480 mm apart", setup: lab.HangSetup{Width: 0.6, Span: 0.48, Spacing: 0.6 / 120}},
		{name: "limp sheet 1 m square hung 600 mm apart", setup: lab.HangSetup{Width: 1, Span: 0.6, Spacing: 1. / 120}},
	}
}

// hang hangs the sheet.
func (l *limpSheet) hang(ctx context.Context) (lab.HangResult, error) {
	l.once.Do(func() { l.result, l.err = lab.Hang(ctx, limp, l.setup) })
	return l.result, l.err
}

// bounds tells how far the edge lies below the V, which no edge can, and how
// far above the hanging curve.
func (l *limpSheet) bounds() []Trial {
	below := Check{Name: l.name + ": edge below the V", Tolerance: 3, Unit: "mm", Source: "geometry: no edge hangs deeper than a V of its length"}
	above := Check{Name: l.name + ": edge above the hanging curve", Tolerance: 3, Unit: "mm", Source: "closed form: catenary of an edge that hangs alone",
		Note: "the hanging curve bounds an edge that hangs alone, not the edge of a sheet: the sheet takes up the length of its edge in folds out of the plane, and the cloth below resists being drawn in, so the edge may hang higher; kept as a miss"}
	return []Trial{
		figure(below, func(ctx context.Context) (float64, error) {
			r, err := l.hang(ctx)
			return math.Max(0, r.Drop-r.V) * 1000, err
		}),
		figure(above, func(ctx context.Context) (float64, error) {
			r, err := l.hang(ctx)
			return math.Max(0, r.Curve-r.Drop) * 1000, err
		}),
	}
}

// sameEnergy compares the least energies found on the two finest lattices.
func (l *limpSheet) sameEnergy() Trial {
	c := Check{Name: l.name + ": least energy at 61 nodes a side over that at 121", Want: 1, Tolerance: 0.01, Source: "convergence: the energy belongs to the cloth, not to the lattice"}
	return Trial{c, func(ctx context.Context) (float64, string, error) {
		r, err := l.hang(ctx)
		if err != nil {
			return 0, "", err
		}
		var parts []string
		for _, e := range r.Least {
			parts = append(parts, fmt.Sprintf("%.3f mJ at %.3g mm", e.Energy*1000, e.Spacing*1000))
		}
		n := len(r.Least)
		return r.Least[n-2].Energy / r.Least[n-1].Energy, strings.Join(parts, ", "), nil
	}}
}
