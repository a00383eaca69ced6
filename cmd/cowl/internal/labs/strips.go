package labs

import (
	"context"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/materials"
	"cowl/sim"
	"cowl/sim/lab"
)

type bendCmd struct {
	testFlags
	Length *flags.Length  `placeholder:"LEN" help:"Overhang; without it the one at which the line from edge to tip dips 41.5°."`
	Width  *flags.Length  `placeholder:"LEN" help:"Width of the strip (25mm)."`
	Grain  *flags.Degrees `placeholder:"DEG" help:"From the length of the strip to the warp: 0 warp, 90 weft, 45 bias."`
}

// bendJSON is what lab bend tells programs.
type bendJSON struct {
	Chord         float64 `json:"chord_deg"`
	TipX          float64 `json:"tip_x_mm"`
	TipDrop       float64 `json:"tip_drop_mm"`
	BendingLength float64 `json:"bending_length_mm"` // by the heavy elastica; 0: hangs too steep to tell
	Length        float64 `json:"length_mm"`
	Plate         float64 `json:"plate_bending_length_mm"` // (B/w)^⅓ of the plate at that grain
	computed
}

// Run hangs the strip.
func (b bendCmd) Run(ctx context.Context, c console.Console) error {
	return b.test(ctx, c, func(s specimen) (reading, error) {
		set := lab.BendSetup{Grain: grainOf(b.Grain), Report: s.report}
		if err := lengths(lengthFlag{"length", b.Length, &set.Length}, lengthFlag{"width", b.Width, &set.Width},
			lengthFlag{"spacing", b.Spacing, &set.Spacing}); err != nil {
			return reading{}, err
		}
		if err := s.affordable(set, 1); err != nil {
			return reading{}, err
		}
		r, err := lab.Bend(ctx, s.Stiffness, set)
		plate := lab.GravityLength(s.Stiffness, set.Grain)
		out := bendJSON{inDegrees(r.Chord), r.TipX * 1000, r.TipDrop * 1000, r.BendingLength * 1000, r.Length * 1000,
			plate * 1000, computed{}}
		length := line("Bending length", "%.1f mm; (B/w)^⅓ at this grain is %.1f mm", out.BendingLength, out.Plate)
		if r.BendingLength == 0 {
			length = line("Bending length", "not told: the strip hangs plumb, want a shorter one")
		}
		return reading{r.Run, func(how computed) any { out.computed = how; return out }, []string{
			line("Overhang", "%.1f mm dips %.2f° from edge to tip", out.Length, out.Chord),
			line("Tip", "%.1f mm out, %.1f mm down", out.TipX, out.TipDrop),
			length,
		}, nil}, err
	})
}

// loadFlag is a force on the width, N/m.
type loadFlag float64

// UnmarshalText reads it.
func (f *loadFlag) UnmarshalText(text []byte) error {
	v, err := materials.TensileWarp.Parse(string(text))
	*f = loadFlag(v)
	return err
}

type tensileCmd struct {
	testFlags
	Length *flags.Length  `placeholder:"LEN" help:"Length of the strip between the jaws (30cm)."`
	Width  *flags.Length  `placeholder:"LEN" help:"Its width; a sixth of the length if not given."`
	Grain  *flags.Degrees `placeholder:"DEG" help:"From the length of the strip to the warp."`
	Load   *loadFlag      `placeholder:"LOAD" help:"Load on the width, 5N/m or 5gf/cm (5N/m)."`
	Free   bool           `help:"Ends free to narrow and to skew, instead of jaws that swivel: for short strips off the grain."`
}

// tensileJSON is what lab pull tells programs.
type tensileJSON struct {
	Extension float64 `json:"extension_percent"` // from jaw to jaw
	Modulus   float64 `json:"modulus_N_per_m"`   // load over the strain of the middle third
	Shear     float64 `json:"shear_deg"`         // in the central zone
	Strain    float64 `json:"strain_percent"`    // of the middle third
	Narrowing float64 `json:"narrowing_percent"` // of the width in the middle
	Kilby     float64 `json:"kilby_N_per_m"`     // off-axis modulus for small strain
	Load      float64 `json:"load_N_per_m"`
	computed
}

// Run draws the strip.
func (p tensileCmd) Run(ctx context.Context, c console.Console) error {
	return p.test(ctx, c, func(s specimen) (reading, error) {
		set := lab.TensileSetup{Grain: grainOf(p.Grain), Free: p.Free, Load: 5, Report: s.report}
		if p.Load != nil {
			set.Load = float64(*p.Load)
		}
		if err := lengths(lengthFlag{"length", p.Length, &set.Length}, lengthFlag{"width", p.Width, &set.Width},
			lengthFlag{"spacing", p.Spacing, &set.Spacing}); err != nil {
			return reading{}, err
		}
		if err := s.affordable(set, 1); err != nil {
			return reading{}, err
		}
		r, err := lab.Tensile(ctx, s.Stiffness, set)
		out := tensileJSON{r.Extension * 100, r.Modulus, inDegrees(r.Shear), r.Strain * 100, r.Narrowing * 100,
			lab.OffAxisModulus(s.Stiffness, set.Grain), set.Load, computed{}}
		return reading{r.Run, func(how computed) any { out.computed = how; return out }, []string{
			line("Extension", "%.3f %% from end to end under %.4g N/m", out.Extension, out.Load),
			line("Modulus", "%.1f N/m in the middle third; Kilby's rule for small strain %.1f N/m", out.Modulus, out.Kilby),
			line("Shear", "%.2f° in the central zone; the middle narrows by %.2f %%", out.Shear, out.Narrowing),
		}, nil}, err
	})
}

type hangCmd struct {
	testFlags
	Length   *flags.Length  `placeholder:"LEN" help:"Height of the sheet; as wide if not given."`
	Width    *flags.Length  `placeholder:"LEN" help:"Width of the edge between the points (60cm)."`
	Span     *flags.Length  `placeholder:"LEN" help:"Distance of the two points; 0.8 of the width if not given."`
	Grain    *flags.Degrees `placeholder:"DEG" help:"From the upright to the warp."`
	Placings *int           `type:"count" least:"1" most:"12" placeholder:"N" help:"Ways to bring the corners together, 1 to 12 (12): the state of least energy is told."`
	Shakes   int            `type:"count" least:"0" most:"500" placeholder:"N" help:"Times the best is shaken and hung again on the coarse lattice, 0 to 500 (0): limp cloth has many states of rest."`
	Gap      *flags.Length  `placeholder:"LEN" help:"Distance kept between layers of the cloth."`
}

// hangJSON is what lab hang tells programs.
type hangJSON struct {
	Drop    float64       `json:"edge_drop_mm"`
	Low     float64       `json:"lower_bound_mm"` // of an edge alone, in a hanging curve
	High    float64       `json:"upper_bound_mm"` // of an edge drawn into a V
	Energy  float64       `json:"energy_mJ"`      // stored and of height; 0: flat and upright, edge level with the points
	Stored  float64       `json:"stored_mJ"`
	Forward float64       `json:"forward_mm"` // of the middle of the edge
	Least   []leastJSON   `json:"least"`      // on each lattice, coarse to fine
	Each    []hangingJSON `json:"each"`
	computed
}

// leastJSON is the least energy found on a lattice.
type leastJSON struct {
	Spacing float64 `json:"spacing_mm"`
	Nodes   int     `json:"nodes"`
	Energy  float64 `json:"energy_mJ"`
}

// hangingJSON is one placing.
type hangingJSON struct {
	Placing string     `json:"placing"`
	Spacing float64    `json:"spacing_mm"`
	Drop    float64    `json:"edge_drop_mm"`
	Forward float64    `json:"forward_mm"`
	Energy  float64    `json:"energy_mJ"`
	Status  sim.Status `json:"status"`
}

// Run hangs the sheet.
func (h hangCmd) Run(ctx context.Context, c console.Console) error {
	return h.test(ctx, c, func(s specimen) (reading, error) {
		set, err := h.setup()
		if err != nil {
			return reading{}, err
		}
		set.Report = s.report
		if err := s.affordable(set, carriedSheets); err != nil {
			return reading{}, err
		}
		r, err := lab.Hang(ctx, s.Stiffness, set)
		out := hangJSON{r.Drop * 1000, r.Curve * 1000, r.V * 1000, r.Energy * 1000, r.Stored * 1000, r.Forward * 1000, nil,
			nil, computed{}}
		lines := []string{
			line("Edge drop", "%.1f mm, %.1f mm out of the plane; alone in the plane the edge would hang %.1f mm (curve) to "+
				"%.1f mm (V)", out.Drop, out.Forward, out.Low, out.High),
			line("Energy", "%.3f mJ, %.3f mJ of it in the cloth; 0 is the flat sheet upright", out.Energy, out.Stored),
		}
		for _, l := range r.Least {
			out.Least = append(out.Least, leastJSON{l.Spacing * 1000, l.Nodes, l.Energy * 1000})
			lines = append(lines, line("", "least of all at %.3g mm %33.3f mJ", l.Spacing*1000, l.Energy*1000))
		}
		for _, e := range r.Each {
			out.Each = append(out.Each, hangingJSON{e.Name, e.Spacing * 1000, e.Drop * 1000, e.Forward * 1000, e.Energy * 1000,
				e.Status})
			lines = append(lines, line("", "%-26s %6.1f mm  %8.3f mJ at %.2g mm  %s", e.Name, e.Drop*1000, e.Energy*1000,
				e.Spacing*1000, e.Status))
		}
		return reading{r.Run, func(how computed) any { out.computed = how; return out }, lines, nil}, err
	})
}

// setup reads the flags.
func (h hangCmd) setup() (lab.HangSetup, error) {
	set := lab.HangSetup{Grain: grainOf(h.Grain), Shakes: h.Shakes}
	if err := lengths(
		lengthFlag{"length", h.Length, &set.Height}, lengthFlag{"width", h.Width, &set.Width},
		lengthFlag{"span", h.Span, &set.Span},
		lengthFlag{"spacing", h.Spacing, &set.Spacing}, lengthFlag{"gap", h.Gap, &set.Gap},
	); err != nil {
		return set, err
	}
	set.Placings = countOf(h.Placings)
	return set, nil
}
