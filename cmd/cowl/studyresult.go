package main

import (
	"math"
	"os"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/scatter"
	"cowl/cmd/cowl/internal/trial"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// caseResult is what is known of a case.
type caseResult struct {
	studyCase
	Each    []trial.Result[hungRow] // one a placing
	Picture []byte                  // JPEG; nil: none
}

// collect deals the results out to their cases and reads the pictures.
func collect(cases []studyCase, results []trial.Result[hungRow], at []rowAt, s trial.Store) []caseResult {
	out := make([]caseResult, len(cases))
	for i, c := range cases {
		out[i].studyCase = c
	}
	for i, r := range results {
		c := &out[at[i].of]
		c.Each = append(c.Each, r)
		if k := at[i].placing; c.drawn(k) {
			c.Picture, _ = os.ReadFile(s.File(c.key(k), "jpg")) // a picture that is not there is told of on its card
		}
	}
	return out
}

// settled reports whether a placing gave a result that counts.
func settled(r trial.Result[hungRow]) bool {
	return r.Done && r.Failed == "" && r.Value.Outcome.Status == sim.Settled
}

// values lists what of takes of every placing; NaN where it gave no result.
func (c caseResult) values(of func(drape.Outcome) float64) []float64 {
	out := make([]float64, c.style.Hang.Placings)
	for k := range out {
		out[k] = math.NaN()
		if k < len(c.Each) && settled(c.Each[k]) {
			out[k] = of(c.Each[k].Value.Outcome)
		}
	}
	return out
}

// summary is mean and deviation of a figure over the placings.
func (c caseResult) summary(m figure) (mean, deviation float64) {
	return scatter.Summary(c.values(m.of))
}

// troubles counts placings without a result, and says of the first why.
func (c caseResult) troubles() (n int, why string) {
	if c.wrong != nil {
		return c.style.Hang.Placings, "cannot be cut: " + c.wrong.Error()
	}
	for _, r := range c.Each {
		if settled(r) {
			continue
		}
		n++
		switch {
		case why != "":
		case !r.Done:
			why = "not hung yet"
		case r.Failed != "":
			why = "failed: " + firstLine(r.Failed)
		default:
			why = string(r.Value.Outcome.Status) + ": " + r.Value.Outcome.Warning
		}
	}
	return n, why
}

// shown returns the row that has the picture; false if there is none.
func (c caseResult) shown() (hungRow, bool) {
	if len(c.Each) == 0 || !c.Each[0].Done || c.Each[0].Failed != "" {
		return hungRow{}, false
	}
	return c.Each[0].Value, true
}

// figure is one measure of a drape as sheets and tables show it.
type figure struct {
	key, name, unit string  // key with the unit of files, unit of the sheet
	per             float64 // units of the key in one of the sheet
	digits          int     // decimals on the sheet
	of              func(drape.Outcome) float64
}

// text is name and unit as on an axis.
func (m figure) text() string {
	if m.unit == "" {
		return m.name
	}
	return m.name + ", " + m.unit
}

// on turns values of the key into those of the sheet.
func (m figure) on(v []float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = x / m.per
	}
	return out
}

// number writes a value of the key as on the sheet, without its unit.
func (m figure) number(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	text := strconv.FormatFloat(v/m.per, 'f', m.digits, 64)
	if n, _ := strconv.ParseFloat(text, 64); n == 0 {
		return strings.TrimPrefix(text, "-")
	}
	return strings.Replace(text, "-", "−", 1)
}

// amount is number with its unit.
func (m figure) amount(v float64) string {
	if m.unit == "" {
		return m.number(v)
	}
	return m.number(v) + " " + m.unit
}

// spread writes mean ± deviation, or the mean alone where there is one value.
func (m figure) spread(mean, deviation float64, n int) string {
	if n < 2 || math.IsNaN(mean) {
		return m.number(mean)
	}
	return m.number(mean) + " ± " + m.number(deviation)
}

var (
	dropFigure  = figure{"edge_drop_mm", "Edge drop", "cm", 10, 1, func(o drape.Outcome) float64 { return o.EdgeDrop }}
	countFigure = figure{"fold_count", "Folds", "", 1, 1, func(o drape.Outcome) float64 { return float64(o.FoldCount) }}
	depthFigure = figure{"deepest_fold_mm", "Deepest fold", "mm", 1, 0, func(o drape.Outcome) float64 { return nthDepth(o, 0) }}
	standFigure = figure{"stand_off_mm", "Stand-off", "mm", 1, 0, func(o drape.Outcome) float64 { return o.StandOff }}
	twistFigure = figure{"twist_mm", "Twist", "mm", 1, 1, func(o drape.Outcome) float64 { return math.Abs(o.Twist) }}
)

// figures are what files list; the first five are on the sheet as well.
var figures = []figure{
	dropFigure, countFigure, depthFigure, standFigure, twistFigure,
	{"edge_below_neck_mm", "Edge below the front neck point", "cm", 10, 1, func(o drape.Outcome) float64 { return o.EdgeBelowNeck }},
	{"forward_mm", "Reach ahead of the form", "cm", 10, 1, func(o drape.Outcome) float64 { return o.Forward }},
	{"fold_radius_mm", "Tightest cowl fold, radius", "mm", 1, 1, func(o drape.Outcome) float64 { return orNaN(o.FoldRadius) }},
	{"wrong_side_mm2", "Wrong side seen", "cm²", 100, 1, func(o drape.Outcome) float64 { return o.WrongSide }},
	{"cf_growth_percent", "Centre front longer than cut", "%", 1, 1, func(o drape.Outcome) float64 { return o.CFGrowth }},
	{"max_strain_percent", "Largest change of a yarn", "%", 1, 1, func(o drape.Outcome) float64 { return o.MaxStrain }},
	{"shear_share", "Share of shear in the stored energy", "", 1, 2, func(o drape.Outcome) float64 { return o.ShearShare }},
}

// orNaN turns the 0 that stands for none into NaN.
func orNaN(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}

// nthDepth returns the depth of the n-th fold above the bust, from the edge
// down, mm, where n = 0 asks for the deepest; NaN: there is none.
func nthDepth(o drape.Outcome, n int) float64 {
	if n == 0 {
		return orNaN(deepest(o))
	}
	for _, f := range o.Folds {
		if f.Zone != string(fold.AboveBust) {
			continue
		}
		if n--; n == 0 {
			return f.Depth
		}
	}
	return math.NaN()
}
