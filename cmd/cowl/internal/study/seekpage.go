package study

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/ruler"
)

// runners is how many cuts are shown with the best.
const runners = 5

// publishSeek writes the sheet of a search: all cuts that were hung, the
// nearest first.
func (w *runner) publishSeek(spec Spec, s style.Style, goal Want, leads []*lead) error {
	p := &plan{spec: spec, style: s, vary: []factor{{quantity: quantities[0]}, {quantity: quantities[2]},
		{quantity: quantities[4]}}}
	var rs []caseResult
	for _, l := range leads {
		rs = append(rs, l.seen...)
	}
	slices.SortStableFunc(rs, func(a, b caseResult) int { return cmpFloat(goal.far(a), goal.far(b)) })
	for _, r := range rs {
		p.cases = append(p.cases, r.oneCase)
	}
	p.page = func(p *plan, rs []caseResult) page.Page { return seekPage(p, rs, goal, leads) }
	if err := w.publish(p, rs); err != nil {
		return err
	}
	for _, m := range goal.misses(rs[0]) {
		if !m.met() {
			fmt.Fprintf(w.c.Err, "cowl: %s\n", missText(m, rs))
			return console.Silent{Code: console.ExitNotSettled}
		}
	}
	return nil
}

// missText says how a want was not met, and what the cuts that were hung gave.
func missText(m miss, rs []caseResult) string {
	least, most := math.Inf(1), math.Inf(-1)
	for _, r := range rs {
		for _, v := range r.values(m.figure.Value) {
			if !math.IsNaN(v) {
				least, most = math.Min(least, v), math.Max(most, v)
			}
		}
	}
	wanted, low, high := m.figure.Amount(m.want), m.figure.Beside(least), m.figure.Amount(most)
	if m.figure == countFigure {
		wanted, low, high = fmt.Sprintf("%.0f", m.want), fmt.Sprintf("%.0f", least), fmt.Sprintf("%.0f", most)
	}
	return fmt.Sprintf("%s: %s wanted and not reached; the nearest cut gives %s, single drapes of the %d cuts %s to %s",
		m.figure.Name, wanted, m.figure.Amount(m.got), len(rs), low, high)
}

// seekPage makes the page. Of each lead the nearest cut is shown.
func seekPage(p *plan, rs []caseResult, goal Want, leads []*lead) page.Page {
	var shown []caseResult
	for _, l := range best(leads, goal)[:min(runners+1, len(leads))] {
		if c, ok := l.nearest(goal); ok {
			c.Name = fmt.Sprintf("%d. %s, %s", len(shown)+1, say.Length(c.Values[0]/100), c.style.Fabric.Name)
			shown = append(shown, c)
		}
	}
	sheet := page.Page{
		Title:    "Sought: " + goal.text() + ". " + p.style.Name,
		Lead:     soughtHow(p, rs, leads),
		Findings: seekFindings(rs, goal),
		Facts:    held(p.style, p.spec, "Extension", "Dart closed", "Cowl point", "Fabric"),
		Blocks: []page.Block{
			{Heading: "The nearest cut and the runners-up", Cards: seekCards(shown)},
			{Table: seekTable(shown, goal)},
		},
		Cautions: cautionsOf(p.style),
		Foot:     foot(p.spec),
	}
	if !math.IsNaN(goal.value(dropFigure)) {
		sheet.Blocks = append(sheet.Blocks, page.Block{Heading: "How it was found",
			Charts: []page.Chart{seekChart(leads, goal), countStack(shown)},
			Text:   []string{"Each line is one fabric, cowl point and dart share, of which only the extension was changed."}})
	}
	return sheet
}

// soughtHow says what was hung.
func soughtHow(p *plan, rs []caseResult, leads []*lead) string {
	first := 0
	for _, l := range leads {
		first += len(l.closed)
	}
	if first == 0 {
		return fmt.Sprintf("%d cuts hung, each by %s, the extension first.", len(rs), say.Several(p.spec.Placings, "hand"))
	}
	return fmt.Sprintf("The extension first: the first hand alone closed in on the drop in %d drapes; %d cuts were "+
		"then hung by all %d hands.", first, len(rs), p.spec.Placings)
}

// cutWords says a cut in the words of the table room.
func cutWords(c caseResult) string {
	return fmt.Sprintf("extension %s a half, cowl point %s from the neck point, %.0f %% of the dart closed, in %s",
		say.Length(c.Values[0]/100), say.Length(c.Values[1]/100), c.Values[2]*100, c.style.Fabric.Name)
}

// seekFindings says the best cut and how near it comes.
func seekFindings(rs []caseResult, goal Want) []string {
	c := rs[0]
	out := []string{ruler.Capital(cutWords(c)) + ".", keptSentence("It", c)}
	for _, m := range goal.misses(c) {
		_, s := c.summary(m.figure)
		switch {
		case math.IsNaN(m.got):
			out = append(out, m.figure.Name+": no placing came to rest.")
		case m.figure == countFigure:
			out = append(out, fmt.Sprintf("Folds wanted: %.0f; found: %s.", m.want, stats.Spoken(c.values(m.figure.Value))))
		default:
			out = append(out, fmt.Sprintf("%s wanted: %s; found: %s, off by %s.", m.figure.Name, m.figure.Amount(m.want),
				m.figure.Spread(m.got, s, c.style.Hang.Placings)+" "+m.figure.People().Sign, m.figure.Change(m.off())))
		}
		if !m.met() && !math.IsNaN(m.got) {
			out = append(out, ruler.Capital(missText(m, rs))+".")
		}
	}
	return out
}

// seekCards shows the cuts with their pictures.
func seekCards(shown []caseResult) []page.Card {
	out := cards(shown, func(c caseResult) string {
		return c.Name
	})
	for i, c := range shown {
		out[i].Lines = append([]string{fmt.Sprintf("extension %s a half, cowl point %s, %.0f %% of the dart closed",
			say.Length(c.Values[0]/100), say.Length(c.Values[1]/100), c.Values[2]*100)}, out[i].Lines...)
	}
	return out
}

// seekTable holds the cuts against the want.
func seekTable(shown []caseResult, goal Want) *page.Table {
	t := &page.Table{Head: []string{"Fabric", "Extension a half, " + string(ruler.Spoken()), "Cowl point, " +
		string(ruler.Spoken()), "Dart closed, %"},
		Note: fmt.Sprintf("The nearest first. Off: mean less want. Met: edge drop within %s, depth within %s, the mean "+
			"count of folds within a half. Rows are ranked by the root of the sum of squares of what they are off, each "+
			"over these limits. The last column says whether a cut is further off than the nearest, hand by hand. %s",
			say.Small(dropFigure.Sought.Near), say.Small(depthFigure.Sought.Near),
			statistic(shown[0].style.Hang.Placings, len(shown)-1))}
	for _, m := range goal.misses(shown[0]) {
		t.Head = append(t.Head, m.figure.Axis(), "off")
	}
	for i, c := range shown {
		row := []string{fmt.Sprintf("%d. %s", i+1, c.style.Fabric.Name), spokenText(c.Values[0]), spokenText(c.Values[1]),
			fmt.Sprintf("%.0f", c.Values[2]*100)}
		for _, m := range goal.misses(c) {
			mean, s := c.summary(m.figure)
			if m.figure == countFigure {
				row = append(row, stats.Brief(c.values(m.figure.Value)))
			} else {
				row = append(row, m.figure.Spread(mean, s, c.style.Hang.Placings))
			}
			off := "–"
			if !math.IsNaN(m.off()) {
				off = strings.TrimSuffix(m.figure.Change(m.off()), " "+m.figure.People().Sign)
			}
			row = append(row, off)
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: append(row, further(goal, shown[0], c, i, len(shown)-1)),
			Marked: i == 0})
	}
	t.Head = append(t.Head, "Against the nearest")
	t.Words = true
	return t
}

// spokenText writes centimetres in the unit that is spoken, with its decimals.
func spokenText(cm float64) string {
	if ruler.Spoken() == ruler.Inches {
		return fmt.Sprintf("%.2f", spokenLength(cm))
	}
	return fmt.Sprintf("%.1f", cm)
}

// further says whether the i-th cut is further off than the nearest.
func further(goal Want, nearest, c caseResult, i, of int) string {
	if i == 0 {
		return "the nearest"
	}
	switch d := stats.Compare(goal.farEach(nearest), goal.farEach(c), of); {
	case d.Clear && d.Mean > 0:
		return "further off"
	case math.IsInf(d.Limit, 1):
		return tooFew
	}
	return noDifference
}

// seekChart draws drop over extension for the best leads.
func seekChart(leads []*lead, goal Want) page.Lines {
	c := page.Lines{Title: "Edge drop of the cuts that were hung", X: "Extension a half, " + string(ruler.Spoken()),
		Y: dropFigure.People().Sign, Zero: true}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range best(leads, goal)[:min(page.MostLines, len(leads))] {
		s := page.Series{Name: fmt.Sprintf("%s, point %s", l.style.Fabric.Name, say.Length(l.style.Cut.CowlPoint))}
		if l.style.Cut.DartShare >= 0 {
			s.Name += fmt.Sprintf(", dart %.4g", l.style.Cut.DartShare)
		}
		seen := l.charted()
		slices.SortFunc(seen, func(a, b caseResult) int { return cmpFloat(a.Values[0], b.Values[0]) })
		for _, r := range seen {
			mean, d := r.summary(dropFigure)
			s.Points = append(s.Points, page.Point{X: spokenLength(r.Values[0]), Y: dropFigure.Spoken(mean),
				Half: dropFigure.Spoken(d)})
			lo, hi = math.Min(lo, spokenLength(r.Values[0])), math.Max(hi, spokenLength(r.Values[0]))
		}
		c.Series = append(c.Series, s)
	}
	w := dropFigure.Spoken(goal[dropFigure])
	near := dropFigure.Spoken(nearOf(dropFigure))
	c.Bands = []page.Band{{Low: "wanted, less " + say.Small(dropFigure.Sought.Near), High: "wanted, plus " +
		say.Small(dropFigure.Sought.Near), X: []float64{lo, hi}, LowAt: []float64{w - near, w - near},
		HighAt: []float64{w + near, w + near}}}
	return c
}
