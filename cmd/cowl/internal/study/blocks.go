package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/mesh/ruler"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// cards shows the first placing of every case. A name may not repeat what the
// heading says, so title makes the title of each.
func cards(rs []caseResult, title func(caseResult) string) []page.Card {
	var out []page.Card
	for _, c := range rs {
		card := page.Card{Picture: c.Picture, Title: title(c)}
		r, ok := c.shown()
		if !ok {
			_, card.Missing = c.troubles()
			out = append(out, card)
			continue
		}
		card.Missing = r.Missing
		card.Lines = append(card.Lines, keptOf(&r.Outcome), measure.Say(&r.Outcome,
			"edge drop {edge_drop_mm}; "+foldWords(r.Outcome.FoldCount)))
		if n, why := c.troubles(); n > 0 {
			card.Lines = append(card.Lines, fmt.Sprintf("%d of %d placings without a result (%s)", n, c.style.Hang.Placings,
				shortReason(why)))
		}
		out = append(out, card)
	}
	return out
}

// keptOf says how many of the laid folds a drape keeps.
func keptOf(o *drape.Outcome) string {
	if o.Laid == 0 {
		return "no fold laid"
	}
	return fmt.Sprintf("keeps %d of %s", o.Kept, say.Several(o.Laid, "laid fold"))
}

// foldWords says n folds with the depth of the deepest, for measure.Say.
func foldWords(n int) string {
	switch {
	case n == 0:
		return "no fold"
	case n == 1:
		return "1 fold, {deepest_fold_mm} deep"
	}
	return fmt.Sprintf("%d folds, the deepest {deepest_fold_mm}", n)
}

// figureTable lists mean ± deviation of the figures of the sheet.
func figureTable(first string, rs []caseResult) *page.Table {
	t := &page.Table{Head: []string{first}}
	for _, m := range leadingFigures {
		t.Head = append(t.Head, m.Axis())
	}
	troubled := false
	for _, c := range rs {
		name := c.Name
		if n, _ := c.troubles(); n > 0 {
			name += " †"
			troubled = true
		}
		cells := []string{name}
		for _, m := range leadingFigures {
			cells = append(cells, cellOf(m, c))
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: cells})
	}
	t.Note = "Kept: a laid fold whose crest can be followed from where it was laid to where the cloth rests. Deepest " +
		"fold: above the bust. Edge drop: below the shoulder neck points, on the centre front. Stand-off: of the edge " +
		"from the form. Twist: how far the left half is from the mirror image of the right, at the mean."
	if troubled {
		t.Note += " † " + troubleNote(rs)
	}
	return t
}

// cellOf says a figure of a case: mean ± deviation, or how often a count came.
func cellOf(m *measure.Figure, c caseResult) string {
	switch m {
	case keptFigure:
		return keptBrief(c)
	case countFigure:
		return stats.Brief(c.values(m.Value))
	}
	mean, deviation := c.summary(m)
	return m.Spread(mean, deviation, c.style.Hang.Placings)
}

// troubleNote says what is wrong with the rows that lack a result.
func troubleNote(rs []caseResult) string {
	var notes []string
	for _, c := range rs {
		if n, why := c.troubles(); n > 0 {
			notes = append(notes, fmt.Sprintf("%s: %d of %d placings without a result (%s)", c.Name, n, c.style.Hang.Placings,
				say.FirstLine(why)))
		}
	}
	return strings.Join(notes, "; ") + "."
}

// shortReason is what stands before the colon.
func shortReason(why string) string {
	s, _, _ := strings.Cut(say.FirstLine(why), ":")
	return s
}

// strip draws a figure case by case; bounds draws the room between hanging
// curve and V behind it.
func strip(m *measure.Figure, title string, rs []caseResult, bounds bool) page.Strip {
	s := page.Strip{Title: title, X: m.Axis(), Rule: math.NaN(), Dots: "one placing", Mean: "mean"}
	for _, c := range rs {
		mean, _ := c.summary(m)
		row := page.StripRow{Name: c.Name, Dots: m.SpokenEach(c.values(m.Value)), Mean: m.Spoken(mean), Low: math.NaN(),
			High: math.NaN()}
		if bounds && c.wrong == nil {
			curve, v := c.bounds()
			row.Low, row.High = m.Spoken(curve), m.Spoken(v)
			s.Band = boundsName
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}

const boundsName = "edge alone in an upright plane: hanging curve to V"

// keptStack draws how often each number of laid folds was kept.
func keptStack(rs []caseResult) page.Stack {
	s := page.Stack{Title: "Laid folds kept, placing by placing", Noun: "kept"}
	for _, c := range rs {
		name := c.Name
		if laid, ok := c.laid(); ok {
			name = fmt.Sprintf("%s, %d laid", name, laid)
		}
		s.Names = append(s.Names, name)
		s.Each = append(s.Each, stats.Counts(c.values(keptFigure.Value)))
	}
	return s
}

// countStack draws how often each fold count came.
func countStack(rs []caseResult) page.Stack {
	s := page.Stack{Title: "Folds above the bust, placing by placing", Noun: "folds"}
	for _, c := range rs {
		s.Names = append(s.Names, c.Name)
		s.Each = append(s.Each, stats.Counts(c.values(countFigure.Value)))
	}
	return s
}

// overlay lays the sections of the shown placings over each other; top is how
// much is shown from the top, mm, 0: all.
func overlay(title string, top float64, rs []caseResult) page.Outlines {
	o := page.Outlines{Title: title, Top: top, Inches: ruler.Spoken() == ruler.Inches}
	for _, c := range rs {
		r, ok := c.shown()
		if !ok || len(r.Section) == 0 || len(o.Curves) == page.MostLines {
			continue
		}
		o.Curves = append(o.Curves, page.Curve{Name: c.Name, At: r.Section})
		o.Form = r.Form
	}
	return o
}

// extreme says which case has the least and which the most of a figure; false
// with fewer than two that have any.
func extreme(m *measure.Figure, rs []caseResult) (least, most caseResult, ok bool) {
	n := 0
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range rs {
		mean, _ := c.summary(m)
		if math.IsNaN(mean) {
			continue
		}
		n++
		if mean < low {
			low, least = mean, c
		}
		if mean > high {
			high, most = mean, c
		}
	}
	return least, most, n > 1
}
