package labs

import (
	"context"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/sim/lab"
	"cowl/sim/proof"
)

type swagCmd struct {
	testFlags
	Width  *flags.Length  `placeholder:"LEN" help:"Width of the board (102cm)."`
	Depth  *flags.Length  `placeholder:"LEN" help:"Finished depth in the middle; 0.45 of the width if not given. The cloth is cut twice as deep."`
	Stack  *flags.Length  `placeholder:"LEN" help:"What the pleats of a side take of the board; 0.15 of the width if not given."`
	Pleats *int           `type:"count" least:"1" most:"8" placeholder:"N" help:"Pleats a side, 1 to 8 (5)."`
	Grain  *flags.Degrees `placeholder:"DEG" help:"From the upright of the middle to the warp (45deg)."`
	Gap    *flags.Length  `placeholder:"LEN" help:"Distance kept between layers of the cloth; as in a cowl if not given."`
}

// swagJSON is what lab swag tells programs.
type swagJSON struct {
	Pleats  int        `json:"pleats"`
	Folds   []foldJSON `json:"folds"` // down the middle line
	Depth   float64    `json:"edge_depth_mm"`
	Chain   float64    `json:"chain_depth_mm"` // of a chain as long as the edge
	Long    float64    `json:"edge_length_mm"`
	Pierced int        `json:"pierced"`
	computed
}

// foldJSON is a fold of a swag.
type foldJSON struct {
	Down  float64 `json:"flat_mm"` // down the flat middle from the upper edge
	Depth float64 `json:"depth_mm"`
}

// Run hangs the swag.
func (w swagCmd) Run(ctx context.Context, c console.Console) error {
	return w.test(ctx, c, func(s specimen) (reading, error) {
		set := lab.SwagSetup{Grain: math.Pi / 4, Gap: lab.Facets + s.fabric.Thickness, Report: s.report}
		if err := w.read(&set); err != nil {
			return reading{}, err
		}
		if err := s.affordable(set, 1); err != nil {
			return reading{}, err
		}
		r, err := lab.Swag(ctx, s.Stiffness, set)
		if err != nil {
			return reading{}, err
		}
		folds, err := proof.SwagFolds(r)
		out := swagJSON{r.Pleats, []foldJSON{}, r.Sag * 1000, r.Curve * 1000, r.Long * 1000, r.Pierced, computed{}}
		deep := make([]float64, len(folds))
		for i, f := range folds {
			deep[i] = f.Depth * 1000
			out.Folds = append(out.Folds, foldJSON{f.CF * 1000, deep[i]})
		}
		return reading{r.Run, func(how computed) any { out.computed = how; return out }, []string{
			line("Folds", "%d on the middle line of %d pleats a side; %s deep", len(folds), r.Pleats, depthsText(deep)),
			line("Lower edge", "hangs %.1f mm deep; a chain of its length, %.1f mm, %.1f mm", out.Depth, out.Long, out.Chain),
			line("Pierced", "%d times", out.Pierced),
		}, nil}, err
	})
}

// read reads the flags.
func (w swagCmd) read(set *lab.SwagSetup) error {
	if w.Grain != nil {
		set.Grain = float64(*w.Grain)
	}
	if w.Pleats != nil {
		set.Pleats = *w.Pleats
	}
	return lengths(
		lengthFlag{"width", w.Width, &set.Width}, lengthFlag{"depth", w.Depth, &set.Depth},
		lengthFlag{"stack", w.Stack, &set.Stack},
		lengthFlag{"spacing", w.Spacing, &set.Spacing}, lengthFlag{"gap", w.Gap, &set.Gap},
	)
}
