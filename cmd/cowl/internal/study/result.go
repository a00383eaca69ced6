package study

import (
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/materials/infile"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fold"
)

// caseResult is what is known of a case.
type caseResult struct {
	oneCase
	Each    []rows.Result[Row] // one a placing
	Picture []byte             // JPEG; nil: none
}

// collect deals the results out to their cases and reads the pictures.
func collect(cases []oneCase, results []rows.Result[Row], at []rowAt, s rows.Store) []caseResult {
	out := make([]caseResult, len(cases))
	for i, c := range cases {
		out[i].oneCase = c
	}
	for i, r := range results {
		c := &out[at[i].of]
		c.Each = append(c.Each, r)
		if k := at[i].placing; c.drawn(k) {
			// a picture that is not there is told of on its card
			c.Picture, _ = infile.Read(s.File(c.key(k), "jpg"), "a picture", infile.Picture)
		}
	}
	return out
}

// settled reports whether a placing gave a result that counts.
func settled(r rows.Result[Row]) bool {
	return r.Done && r.Failed == "" && r.Value.Outcome.Status == sim.Settled
}

// values lists what of takes of every placing, in the unit of files; NaN where it gave no result.
func (c caseResult) values(of func(*drape.Outcome) float64) []float64 {
	out := make([]float64, c.style.Hang.Placings)
	for k := range out {
		out[k] = math.NaN()
		if k < len(c.Each) && settled(c.Each[k]) {
			out[k] = of(&c.Each[k].Value.Outcome)
		}
	}
	return out
}

// summary is mean and deviation of a figure over the placings.
func (c caseResult) summary(m *measure.Figure) (mean, deviation float64) {
	return stats.Summary(c.values(m.Value))
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
			why = "failed: " + say.FirstLine(r.Failed)
		default:
			why = string(r.Value.Outcome.Status) + ": " + r.Value.Outcome.Warning
		}
	}
	return n, why
}

// shown returns the row that has the picture; false if there is none.
func (c caseResult) shown() (Row, bool) {
	if len(c.Each) == 0 || !c.Each[0].Done || c.Each[0].Failed != "" {
		return Row{}, false
	}
	return c.Each[0].Value, true
}

// Figures that sheets are built about.
var (
	dropFigure  = measure.Named("edge_drop_mm")
	countFigure = measure.Named("fold_count")
	depthFigure = measure.Named("deepest_fold_mm")
	standFigure = measure.Named("stand_off_mm")
	twistFigure = measure.Named("twist_mm")
)

// leadingFigures are listed and compared in tables.
var leadingFigures = measure.Columns[:measure.Leading]

// nthDepth returns the depth of the n-th fold above the bust, from the edge
// down, mm; NaN: there is none.
func nthDepth(o *drape.Outcome, n int) float64 {
	for _, f := range o.Folds {
		if f.Zone != fold.AboveBust {
			continue
		}
		if n--; n == 0 {
			return measure.Depth.In(f.Depth)
		}
	}
	return math.NaN()
}

// unsettled counts placings without a result.
func unsettled(rs []caseResult) int {
	n := 0
	for _, c := range rs {
		k, _ := c.troubles()
		n += k
	}
	return n
}

// again is the style file of a case, which hangs all its placings again.
func (c caseResult) again(file string) []byte {
	s := c.style
	if r, ok := c.shown(); ok && c.steady {
		s.Hang.Folds = r.Outcome.Laid
	}
	return append([]byte("# One row of a study by cowl. Hang it again:  cowl drape --style "+file+"\n"), s.YAML()...)
}
