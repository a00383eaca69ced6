package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// sweepPage makes the page.
func sweepPage(p *plan, rs []caseResult) page.Page {
	var names []string
	for _, f := range p.vary {
		names = append(names, f.label)
	}
	sheet := page.Page{
		Title:    fmt.Sprintf("What %s does. %s", strings.Join(names, " and "), p.style.Name),
		Lead:     fmt.Sprintf("%d cuts, each placed by the same %d hands.", len(rs), p.spec.Placings),
		Findings: sweepFindings(p, rs),
		Facts:    p.heldFacts(),
		Blocks:   []page.Block{{Heading: "What follows from it", Charts: sweepCharts(p, rs)}},
		Cautions: cautionsOf(p.style),
		Foot:     foot(p.spec),
	}
	if p.varies("grain") {
		sheet.Cautions = append([]string{grainCaution}, sheet.Cautions...)
	}
	sheet.Blocks = append(sheet.Blocks, linesBlock(p, rs)...)
	for _, g := range groupsOf(p.cases) {
		sheet.Blocks = append(sheet.Blocks, sweepGroup(p, g, g.pick(rs))...)
	}
	return sheet
}

// sweepCharts draws the figures over the first factor.
func sweepCharts(p *plan, rs []caseResult) []page.Chart {
	groups := groupsOf(p.cases)
	drop := p.lines(dropFigure, "Edge drop", rs)
	drop.Bands = p.bands(groups, rs)
	reach, stand, twist := p.lines(reachFigure, "Reach ahead of the form", rs),
		p.lines(standFigure, "Stand-off of the edge", rs), p.lines(twistFigure, "Twist", rs)
	drop.Zero, reach.Zero, stand.Zero, twist.Zero = true, true, true, true
	rest := []page.Chart{p.depths(groups, rs), reach, drop}
	if p.varies("edge-depth") {
		rest = append(rest, p.lines(takenFigure, "Taken up at either cowl point", rs))
	}
	if len(groups) == 1 {
		drop.Series[0].Name = "hung: mean ± standard deviation"
		return append(append([]page.Chart{keptStack(rs)}, rest...), countStack(rs), stand, twist)
	}
	kept, count := p.lines(keptFigure, "Laid folds kept, mean", rs), p.lines(countFigure, "Folds above the bust, mean", rs)
	kept.Whole, count.Whole = true, true
	return append(append([]page.Chart{kept}, rest...), count, stand, twist)
}

// lines draws mean and ± one deviation of a figure, one line a group, with the
// placings as dots.
func (p *plan) lines(m *measure.Figure, title string, rs []caseResult) page.Lines {
	c := page.Lines{Title: title, X: p.vary[0].axis(), Y: m.People().Sign}
	for _, g := range groupsOf(p.cases) {
		s := page.Series{Name: g.name}
		for _, r := range g.pick(rs) {
			mean, deviation := r.summary(m)
			s.Points = append(s.Points, page.Point{X: p.vary[0].spoken(r.Values[0]), Y: m.Spoken(mean),
				Half: m.Spoken(deviation), Dots: m.SpokenEach(r.values(m.Value))})
		}
		c.Series = append(c.Series, s)
	}
	return c
}

// bands returns the bounds of the trade over the first factor. They depend on
// the cut and not on the cloth, so they are drawn where all lines share them. An
// edge that is set has others, by what is taken up.
func (p *plan) bands(groups []group, rs []caseResult) []page.Band {
	var out []page.Band
	for i, g := range groups {
		b := page.Band{Low: "hanging curve, edge alone", High: "V, edge alone"}
		for _, r := range g.pick(rs) {
			if r.wrong != nil {
				continue
			}
			if r.style.Hang.EdgeDepth != draft.Auto {
				return nil
			}
			curve, v := r.bounds()
			b.X = append(b.X, p.vary[0].spoken(r.Values[0]))
			b.LowAt, b.HighAt = append(b.LowAt, dropFigure.Spoken(curve)), append(b.HighAt, dropFigure.Spoken(v))
		}
		if i > 0 && fmt.Sprint(b) != fmt.Sprint(out[0]) {
			return nil
		}
		out = append(out[:0], b)
	}
	return out
}

// mostFolds is how many folds, from the edge down, are drawn by themselves.
const mostFolds = 4

// depths draws the depth of each cowl fold. With several lines there is room
// for the deepest alone.
func (p *plan) depths(groups []group, rs []caseResult) page.Chart {
	if len(groups) > 1 {
		c := p.lines(depthFigure, "Depth of the deepest cowl fold", rs)
		c.Zero = true
		return c
	}
	c := page.Lines{Title: "Depth of each cowl fold", X: p.vary[0].axis(), Y: depthFigure.People().Sign, Zero: true}
	for n := 1; n <= mostFolds; n++ {
		s := page.Series{Name: fmt.Sprintf("fold %d from the edge", n)}
		any := false
		for _, r := range rs {
			each := r.values(func(o *drape.Outcome) float64 { return nthDepth(o, n) })
			mean, deviation := stats.Summary(each)
			any = any || !math.IsNaN(mean)
			s.Points = append(s.Points, page.Point{X: p.vary[0].spoken(r.Values[0]), Y: depthFigure.Spoken(mean),
				Half: depthFigure.Spoken(deviation), Dots: depthFigure.SpokenEach(each)})
		}
		if any {
			c.Series = append(c.Series, s)
		}
	}
	return c
}

// sweepGroup shows film strip, figures and differences of one line.
func sweepGroup(p *plan, g group, rs []caseResult) []page.Block {
	in := ""
	if g.name != "" {
		in = ": " + g.name
	}
	diffs := &page.Table{Head: []string{"Step"}, Note: statistic(p.spec.Placings, len(rs))}
	for _, m := range leadingFigures {
		diffs.Head = append(diffs.Head, m.Name)
	}
	one := &plan{spec: p.spec, vary: p.vary}
	for _, r := range rs {
		one.cases = append(one.cases, r.oneCase)
	}
	for _, row := range diffRows(sweepDiffs(one, rs)) {
		diffs.Rows = append(diffs.Rows, page.TableRow{Cells: row})
	}
	var stacks []page.Chart
	if g.name != "" {
		stacks = append(stacks, countStack(rs))
	}
	blocks := []page.Block{{Heading: "Film strip" + in + " (same camera, same light, the first hand)",
		Cards: cards(rs, func(c caseResult) string { return c.Name })}}
	blocks = append(blocks, triedTable("How many folds each cut keeps"+in, p.vary[0].axis(), rs)...)
	return append(blocks,
		page.Block{Heading: "Figures" + in, Charts: stacks, Table: figureTable(p.vary[0].axis(), rs)},
		page.Block{Heading: "Step by step" + in, Table: diffs},
	)
}
