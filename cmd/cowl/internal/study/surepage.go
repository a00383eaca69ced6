package study

import (
	"fmt"
	"math"
	"slices"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// effect is what one property does to the edge drop.
type effect struct {
	doubt
	low, high caseResult
	drop      difference
	folds     difference
}

// parted splits the results of sure.
func parted(p *plan, rs []caseResult) (given caseResult, clothes []caseResult, effects []effect) {
	var ends []caseResult
	for _, c := range rs {
		switch c.Group {
		case asGiven:
			given = c
		case drawnCloth:
			clothes = append(clothes, c)
		default:
			ends = append(ends, c)
		}
	}
	doubts := doubtsOf(p.style.Fabric)
	for i, d := range doubts {
		low, high := ends[2*i], ends[2*i+1]
		effects = append(effects, effect{d, low, high, differ(dropFigure, low, high, len(doubts)),
			differ(countFigure, low, high, len(doubts))})
	}
	return given, clothes, effects
}

// sureDiffs lists the differences for result.json.
func sureDiffs(p *plan, rs []caseResult) []difference {
	var out []difference
	_, _, effects := parted(p, rs)
	for _, e := range effects {
		out = append(out, e.drop, e.folds)
	}
	return out
}

// pool lists a figure over the hands that each have a cloth of their own.
func pool(clothes []caseResult, of func(*drape.Outcome) float64) []float64 {
	var out []float64
	for _, c := range clothes {
		out = append(out, c.values(of)...)
	}
	return out
}

// surePage makes the page.
func surePage(p *plan, rs []caseResult) page.Page {
	given, clothes, effects := parted(p, rs)
	count := func(m *measure.Figure, title, noun string) page.Stack {
		return page.Stack{Title: title, Noun: noun, Names: []string{"hands alone", "hands and cloth"},
			Each: [][]stats.Share{stats.Counts(given.values(m.Value)), stats.Counts(pool(clothes, m.Value))}}
	}
	return page.Page{
		Title: "How sure? " + p.style.Name,
		Lead: fmt.Sprintf("The same piece placed by %d hands; again by the same hands, each with a cloth of its own "+
			"within what is known of the fabric; then one property at a time at the ends of its range.", p.spec.Placings),
		Findings: sureFindings(given, clothes, effects),
		Facts:    held(p.style, p.spec),
		Blocks: []page.Block{
			{Heading: "The first hand", Cards: cards([]caseResult{given},
				func(caseResult) string { return p.style.Fabric.Title })},
			{Heading: "How far hand and cloth move it", Charts: []page.Chart{
				count(keptFigure, "Laid folds kept", "kept"), both(depthFigure, "Deepest cowl fold", given, clothes),
				both(reachFigure, "Reach ahead of the form", given, clothes),
				both(dropFigure, "Edge drop", given, clothes), count(countFigure, "Folds above the bust", "folds"),
				both(twistFigure, "Twist", given, clothes)}, Table: sureTable(given, clothes)},
			{Heading: "Which property matters most", Charts: []page.Chart{sensitivity(given, effects)},
				Table: effectTable(p, effects)},
		},
		Cautions: append(cautionsOf(p.style), weakCloths([]caseResult{given})...),
		Foot:     foot(p.spec),
	}
}

// both draws a figure for hands alone and for hands with cloths.
func both(m *measure.Figure, title string, given caseResult, clothes []caseResult) page.Strip {
	row := func(name string, v []float64) page.StripRow {
		mean, _ := stats.Summary(v)
		return page.StripRow{Name: name, Dots: m.SpokenEach(v), Mean: m.Spoken(mean), Low: math.NaN(), High: math.NaN()}
	}
	return page.Strip{Title: title, X: m.Axis(), Rule: math.NaN(), Dots: "one placing", Mean: "mean",
		Rows: []page.StripRow{row("hands alone", given.values(m.Value)), row("hands and cloth", pool(clothes, m.Value))}}
}

// sureFindings says how sure.
func sureFindings(given caseResult, clothes []caseResult, effects []effect) []string {
	hand, cloth := given.values(dropFigure.Value), pool(clothes, dropFigure.Value)
	m, s := stats.Summary(hand)
	mc, sc := stats.Summary(cloth)
	md, sd := stats.Summary(given.values(depthFigure.Value))
	mcd, scd := stats.Summary(pool(clothes, depthFigure.Value))
	out := []string{keptSure(given, clothes),
		fmt.Sprintf("Deepest fold %s ± %s from hand to hand; %s ± %s with the cloth as uncertain as it is known (± one "+
			"standard deviation).",
			depthFigure.Beside(md), depthFigure.Amount(sd), depthFigure.Beside(mcd), depthFigure.Amount(scd)),
		fmt.Sprintf("Edge drop %s ± %s from hand to hand; %s ± %s with the uncertain cloth.",
			dropFigure.Beside(m), dropFigure.Amount(s), dropFigure.Beside(mc), dropFigure.Amount(sc)),
		fmt.Sprintf("Above the bust %s from hand to hand; %s with the uncertain cloth.",
			stats.Spoken(given.values(countFigure.Value)), stats.Spoken(pool(clothes, countFigure.Value))),
	}
	if best := sorted(effects); len(best) > 0 {
		if d := best[0].drop; d.Clear {
			out = append(out, fmt.Sprintf("What matters most for the edge drop: %s, %s from %s.", best[0].name,
				dropFigure.Change(d.Mean), "its least to its most"))
		} else {
			out = append(out, "No property, from its least to its most, moves the edge drop clearly beyond the scatter of "+
				"the hands.")
		}
	}
	return append(out, missingFinding(append([]caseResult{given}, clothes...))...)
}

// keptSure says how sure it is that the laid folds are kept.
func keptSure(given caseResult, clothes []caseResult) string {
	laid, ok := given.laid()
	if !ok {
		return "No placing came to rest."
	}
	if laid == 0 {
		return "No fold is laid: the cloth falls."
	}
	all := func(v []float64) string {
		n := 0
		for _, s := range stats.Counts(v) {
			if s.Count == laid {
				n = s.Times
			}
		}
		return fmt.Sprintf("%d of %d", n, len(v))
	}
	return fmt.Sprintf("Of %s the cloth keeps all with %s hands; with %s where the cloth is as uncertain as it is known.",
		say.Several(laid, "laid fold"), all(given.values(keptFigure.Value)), all(pool(clothes, keptFigure.Value)))
}

// sorted lists effects, the strongest on the edge drop first.
func sorted(effects []effect) []effect {
	out := slices.Clone(effects)
	size := func(e effect) float64 {
		if math.IsNaN(e.drop.Mean) {
			return -1
		}
		return math.Abs(e.drop.Mean)
	}
	slices.SortStableFunc(out, func(a, b effect) int {
		switch x, y := size(a), size(b); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return out
}

// sureTable lists the figures.
func sureTable(given caseResult, clothes []caseResult) *page.Table {
	t := &page.Table{Head: []string{"Figure", "Hands alone", "Hands and cloth"}}
	for _, m := range leadingFigures {
		if m == countFigure || m == keptFigure {
			continue
		}
		a, sa := stats.Summary(given.values(m.Value))
		b, sb := stats.Summary(pool(clothes, m.Value))
		n := len(clothes)
		t.Rows = append(t.Rows, page.TableRow{Cells: []string{m.Axis(), m.Spread(a, sa, n), m.Spread(b, sb, n)}})
	}
	counted := func(name string, m *measure.Figure) page.TableRow {
		return page.TableRow{Cells: []string{name, stats.Brief(given.values(m.Value)), stats.Brief(pool(clothes, m.Value))}}
	}
	t.Rows = slices.Insert(t.Rows, 0, counted("Laid folds kept", keptFigure))
	t.Rows = append(t.Rows, counted("Folds above the bust", countFigure))
	return t
}

// sensitivity draws the edge drop between the ends of every property.
func sensitivity(given caseResult, effects []effect) page.Strip {
	middle, _ := given.summary(dropFigure)
	s := page.Strip{Title: "Edge drop with one property at its least and at its most", X: dropFigure.Axis() +
		"; upright line: as given", Rule: dropFigure.Spoken(middle), Band: "mean at the least to mean at the most"}
	for _, e := range sorted(effects) {
		low, _ := e.low.summary(dropFigure)
		high, _ := e.high.summary(dropFigure)
		s.Rows = append(s.Rows, page.StripRow{Name: e.name, Mean: math.NaN(), Low: dropFigure.Spoken(low),
			High: dropFigure.Spoken(high)})
	}
	return s
}

// effectTable lists the properties, the strongest first.
func effectTable(p *plan, effects []effect) *page.Table {
	n := min(sensitive, p.spec.Placings)
	t := &page.Table{Head: []string{"Property", "From least to most", "Edge drop changes by", "Folds change by",
		"Where the range is from"}, Words: true}
	for _, e := range sorted(effects) {
		row := []string{e.name, e.span(p.style.Fabric), e.drop.text(), e.folds.text(), e.why}
		if e.low.wrong != nil || e.high.wrong != nil {
			row[2], row[3] = "cannot be", "cannot be"
			row[4] += "; an end of it is no possible cloth"
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: row, Marked: e.drop.Clear})
	}
	t.Note = statistic(n, len(effects)) + " All other properties stay as given. Where a source gives neither range " +
		"nor spread, ± 10 % is assumed for a measured value, ± 20 % for a derived one and ± 40 % for one that is itself " +
		"assumed or from memory. What nobody measured and is set to none is not moved."
	return t
}
