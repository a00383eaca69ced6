package toile

import (
	"fmt"
	"io"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/mesh/ruler"
)

// cannotTell is the answer where an interval is as wide as what was known before.
const cannotTell = "they cannot tell"

// tell prints what was found and returns the exit status.
func (f *fitting) tell(o Options, c console.Console, out string, written bool) error {
	switch {
	case o.JSON:
		if err := c.PrintJSON(f.json(out, written)); err != nil {
			return err
		}
	case !o.Quiet:
		f.report(c.Out)
		if written {
			fmt.Fprintf(c.Out, "Wrote %s: cowl drape --fabric-file %s\n", out, out)
		}
	}
	if out != "" && !written {
		fmt.Fprintf(c.Err, "cowl: %s is not written: the toiles do not tell of any property; the fabric stays as it is "+
			"known\n", out)
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}

// report prints intervals, figures and errors for people.
func (f *fitting) report(w io.Writer) {
	fmt.Fprintf(w, "What %s tell of %s\n\n", say.Several(f.toiles, "toile"), f.fabric.Name)
	for i, in := range f.result.Intervals {
		s := f.looked[i]
		fmt.Fprintf(w, "  %s\n", ruler.Capital(in.Name))
		fmt.Fprintf(w, "      known  %s (%s)\n", s.span(in.Least, in.Most), s.why)
		if in.Tells {
			fmt.Fprintf(w, "      90 %%   %s, %.0f %% of that\n", s.span(in.Low, in.High), 100*in.Share)
		} else {
			fmt.Fprintf(w, "      90 %%   %s: %s, that is as wide as what was known\n", s.span(in.Low, in.High), cannotTell)
		}
	}
	fmt.Fprintf(w, "\n  %-34s %8s %8s %8s %8s %8s\n", "Figure, "+say.Unit(), "toiles", "measured", "hands ±", "other ±",
		"lattice ±")
	for _, u := range f.result.Used {
		fmt.Fprintf(w, "  %-34s %8d %8s %8s %8s %8s\n", u.Name, u.Toiles,
			plain(say.InUnit(u.Measured/1000)), plain(say.InUnit(u.Hands/1000)), plain(say.InUnit(u.Response/1000)),
			plain(say.InUnit(u.Lattice/1000)))
	}
	for _, l := range f.result.Left {
		fmt.Fprintf(w, "  left out: %s\n", l)
	}
	fmt.Fprintf(w, "\n%s\n%s\n\n%s\n", f.how(), f.misfit(), say.Caution)
}

// how says how it was found, and what is assumed.
func (f *fitting) how() string {
	return fmt.Sprintf("Found by hanging %s in %d cloths within what is known of the fabric, by %d hands on %.3g mm, "+
		"and a straight response of every figure to bending and shear (in their logarithms) and friction of bending. "+
		"Errors: a ruler of ± %.0f mm, hands, all other properties of the cloth and what a straight response misses "+
		"(other), and the lattice, which errs alike on all toiles. The number of kept folds is not used.",
		say.Several(len(f.groups), "cut"), drawnCloths, drawnHands, f.spacing*1000, rulerError*1000)
}

// misfit says whether any cloth agrees with the toiles.
func (f *fitting) misfit() string {
	r := f.result
	if r.Agrees() {
		return fmt.Sprintf("Cloths within what is known agree with the toiles (χ² %.1f of %s; chance exceeds %.1f once "+
			"in 20 times).", r.Misfit, say.Several(len(r.Used), "figure"), r.Allowed)
	}
	return fmt.Sprintf("NO CLOTH within what is known agrees with the toiles (χ² %.1f of %s; chance exceeds %.1f once "+
		"in 20 times). The intervals are those of the least bad and say little: look for a slip in the book, another "+
		"number of folds, or a cloth that is not this one.", r.Misfit, say.Several(len(r.Used), "figure"), r.Allowed)
}

// fitJSON is a fit for programs. Values are in the unit of the key.
type fitJSON struct {
	Fabric     string         `json:"fabric"`
	Physics    string         `json:"physics"`
	Toiles     int            `json:"toiles"`
	Cuts       int            `json:"cuts"`
	Spacing    float64        `json:"spacing_mm"`
	Ruler      float64        `json:"ruler_mm"`
	Properties []intervalJSON `json:"properties"`
	Figures    []usedJSON     `json:"figures"`
	Left       []string       `json:"left_out"`
	Misfit     float64        `json:"chi_squared"`
	Allowed    float64        `json:"chi_squared_95"`
	Agrees     bool           `json:"agrees"`
	How        string         `json:"how"`
	File       string         `json:"file,omitempty"`
}

// intervalJSON is a property; of warp and weft bending the warp's.
type intervalJSON struct {
	Key      string     `json:"key"`
	Property string     `json:"property"`
	Unit     string     `json:"unit,omitempty"`
	Known    [2]float64 `json:"known"`
	Interval [2]float64 `json:"interval_90"`
	Middle   float64    `json:"middle"`
	Times    [2]float64 `json:"interval_90_times"` // its value, or the usual loop
	Share    float64    `json:"share_of_known"`
	Tells    bool       `json:"tells"`
}

// usedJSON is a figure with its errors.
type usedJSON struct {
	Figure   string  `json:"figure"`
	Toiles   int     `json:"toiles"`
	Measured float64 `json:"measured_mm"`
	Hands    float64 `json:"hands_mm"`
	Other    float64 `json:"other_mm"`
	Lattice  float64 `json:"lattice_mm"`
}

// json fills a fitJSON.
func (f *fitting) json(out string, written bool) fitJSON {
	r := f.result
	j := fitJSON{Fabric: f.fabric.Name, Physics: rows.Physics(), Toiles: f.toiles, Cuts: len(f.groups),
		Spacing: rounded(f.spacing * 1000), Ruler: 1000 * rulerError,
		Left: append([]string{}, r.Left...), Misfit: rounded(r.Misfit), Allowed: rounded(r.Allowed), Agrees: r.Agrees(),
		How: f.how()}
	if written {
		j.File = out
	}
	for i, in := range r.Intervals {
		s := f.looked[i]
		unit := func(times float64) float64 {
			g := f.fabric
			*s.fields[0].In(&g) = times * s.base[0]
			return rounded(s.fields[0].InUnits(g))
		}
		j.Properties = append(j.Properties, intervalJSON{s.fields[0].Key(), in.Name, s.fields[0].Unit(),
			[2]float64{unit(in.Least), unit(in.Most)},
			[2]float64{unit(in.Low), unit(in.High)}, unit(in.Middle), [2]float64{rounded(in.Low), rounded(in.High)},
			math.Round(in.Share*1e4) / 1e4, in.Tells})
	}
	for _, u := range r.Used {
		j.Figures = append(j.Figures, usedJSON{u.Name, u.Toiles, rounded(u.Measured), rounded(u.Hands), rounded(u.Response),
			rounded(u.Lattice)})
	}
	return j
}
