package toile

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/mesh/ruler"
)

// page makes the sheet.
func (s overview) page() page.Page {
	return page.Page{
		Title: "Predictions held against toiles",
		Lead: fmt.Sprintf("What a ruler gave of %s, beside what %s of the program made of the same style, cloth and "+
			"number of laid folds.", say.Several(len(s.all), "toile"), say.Several(s.placings, "hand")),
		Findings: s.findings(),
		Facts:    s.facts(),
		Blocks: []page.Block{
			{Heading: "How far predictions are from toiles", Table: s.agreementTable(), Charts: s.charts()},
			{Heading: "Prediction and photograph", Cards: s.cards()},
			{Heading: "Every figure", Table: s.figureTable()},
		},
		Cautions: s.cautions(),
		Foot: fmt.Sprintf("Made by cowl toile show from %s. Every toile is hung again from its style in the folder "+
			"%s beside the book; all figures are in table.csv and result.json. Physics %s.", s.book.Path, s.book.folder(),
			rows.Physics()),
	}
}

// findings says bias and spread of every kind of figure that any toile has.
func (s overview) findings() []string {
	var out []string
	for _, a := range agreements(s.all) {
		if len(a.each) > 0 {
			out = append(out, a.finding())
		}
	}
	if len(out) == 0 {
		out = append(out, "No figure of a toile has a prediction beside it.")
	}
	if n := len(s.all); n < fewest {
		out = append(out, fmt.Sprintf("Bias and spread of %s mean little; with %d or more they begin to.",
			say.Several(n, "toile"), fewest))
	}
	for _, h := range s.all {
		if len(h.hands) < len(h.Each) {
			out = append(out, fmt.Sprintf("Toile %s: %d of %d drapes gave no result (%s).", h.Key, len(h.Each)-len(h.hands),
				len(h.Each), h.Why))
		}
	}
	return out
}

// finding says bias and spread.
func (a agreement) finding() string {
	unit := " " + say.Unit()
	if a.kind == Kept {
		unit = ""
	}
	way := fmt.Sprintf("predicted %s%s more than", a.kind.said(math.Abs(a.bias)), unit)
	switch {
	case a.kind.said(a.bias) == a.kind.said(0):
		way = "predicted the same as"
	case a.bias < 0:
		way = fmt.Sprintf("predicted %s%s less than", a.kind.said(-a.bias), unit)
	}
	if len(a.each) == 1 {
		return fmt.Sprintf("%s: %s the one that was measured.", a.kind, way)
	}
	return fmt.Sprintf("%s: %s the toiles in the mean of %d, ± %s%s from one to the next.", a.kind, way, len(a.each),
		a.kind.said(a.spread), unit)
}

// facts says what is held against what.
func (s overview) facts() []page.Fact {
	fabrics, seen := []string{}, map[string]bool{}
	for _, h := range s.all {
		if !seen[h.Fabric] {
			seen[h.Fabric] = true
			fabrics = append(fabrics, h.Fabric)
		}
	}
	return []page.Fact{
		{Name: "Book", Value: s.book.Path}, {Name: "Toiles", Value: fmt.Sprint(len(s.all))},
		{Name: "Fabrics", Value: strings.Join(fabrics, ", ")},
		{Name: "Prediction", Value: fmt.Sprintf("mean of %s, on the lattice of the style", say.Several(s.placings, "hand"))},
		{Name: "Folds laid", Value: "as many as on the toile, where that was noted"},
	}
}

// agreementTable lists bias and spread.
func (s overview) agreementTable() *page.Table {
	t := &page.Table{Head: []string{"Figure", "Measured", "Bias", "Spread"},
		Note: "Measured: how many figures have a prediction beside them; each fold counts. Bias: mean of prediction less " +
			"toile, " + say.Unit() + ", or folds. Spread: their standard deviation, which holds the hands of both, the " +
			"ruler and the model."}
	for _, a := range agreements(s.all) {
		row := []string{a.kind.String(), fmt.Sprint(len(a.each)), "–", "–"}
		if len(a.each) > 0 {
			row[2] = a.kind.said(a.bias)
		}
		if len(a.each) > 1 {
			row[3] = a.kind.said(a.spread)
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: row})
	}
	return t
}

// charts draws prediction less toile.
func (s overview) charts() []page.Chart {
	strip := page.Strip{Title: "Prediction less toile", X: say.Unit() + "; upright line: the toile", Zero: true, Rule: 0,
		Dots: "one figure of a toile", Mean: "mean"}
	for _, a := range agreements(s.all)[Drop:] {
		if len(a.each) == 0 {
			continue
		}
		row := page.StripRow{Name: a.kind.String(), Mean: asSpoken(a.bias), Low: math.NaN(), High: math.NaN()}
		for _, v := range a.each {
			row.Dots = append(row.Dots, asSpoken(v))
		}
		strip.Rows = append(strip.Rows, row)
	}
	if strip.Rows == nil {
		return nil
	}
	return []page.Chart{strip}
}

// title names a toile.
func (h held) title(i int) string {
	text := fmt.Sprintf("%d. %s, %s", i+1, h.Date, h.Fabric)
	if side := h.sideKey(); side != "" {
		text += ", at the " + side
	}
	return text
}

// cards shows the first hand of every prediction, and the photograph beside it.
func (s overview) cards() []page.Card {
	var out []page.Card
	for i, h := range s.all {
		card := page.Card{Title: h.title(i) + ": predicted", Picture: h.Picture, Missing: h.Missing,
			Lines: []string{h.line(false)}}
		if h.Picture == nil && card.Missing == "" {
			card.Missing = h.Why
		}
		photo := page.Card{Title: h.title(i) + ": toile", Lines: []string{h.line(true)}}
		if h.Note != "" {
			photo.Lines = append(photo.Lines, h.Note)
		}
		if h.Photo == "" {
			photo.Missing = "none was entered"
		} else if data, err := shown(s.book.file(h.Photo)); err == nil {
			photo.Picture = data
		} else {
			photo.Missing = say.FirstLine(err.Error())
		}
		out = append(out, card, photo)
	}
	return out
}

// line says the leading figures of a toile or of its prediction in a line.
func (h held) line(measured bool) string {
	var parts []string
	add := func(format string, f figure) {
		v := f.of(h.Reading)
		if !measured {
			v, _ = h.predicted(f)
		}
		if !math.IsNaN(v) {
			parts = append(parts, fmt.Sprintf(format, f.kind.said(v)))
		}
	}
	kept := "keeps %s folds"
	if !math.IsNaN(h.Laid) {
		kept = fmt.Sprintf("keeps %%s of %s", say.Several(int(h.Laid), "laid fold"))
	}
	add(kept, figure{Kept, 0})
	add("edge drop %s "+say.Unit(), figure{Drop, 0})
	add("first fold %s "+say.Unit()+" deep", figure{Depth, 0})
	add("reach %s "+say.Unit(), figure{Reach, 0})
	if parts == nil {
		return "no figure"
	}
	return ruler.Capital(strings.Join(parts, ", "))
}

// figureTable lists every figure that was measured, with its prediction.
func (s overview) figureTable() *page.Table {
	t := &page.Table{Head: []string{"Which", "Figure", "Predicted", "Toile", "Difference"},
		Note: say.Unit() + ", and numbers of folds. Predicted: mean ± standard deviation from hand to hand. Folds are " +
			"those of the toile from the edge down, each with the predicted fold that lies nearest in their order. Edge " +
			"drop: below the shoulder neck points, on the centre front; one that the style sets is no prediction and has " +
			"none. Depth: from the crest back to the shallower of the valleys beside it. Place: down the centre front " +
			"along the cloth, from the edge."}
	for i, h := range s.all {
		name := h.title(i)
		for _, f := range figures() {
			v := f.of(h.Reading)
			if math.IsNaN(v) {
				continue
			}
			mean, deviation := h.predicted(f)
			predicted := f.kind.said(mean)
			if s.placings > 1 && !math.IsNaN(mean) {
				predicted += " ± " + f.kind.said(deviation)
			}
			t.Rows = append(t.Rows, page.TableRow{Cells: []string{name, f.name(), predicted, f.kind.said(v),
				f.kind.said(h.off(f))}})
			name = ""
		}
	}
	return t
}

// cautions are those at the end of the sheet.
func (s overview) cautions() []string {
	return []string{
		say.Caution,
		"Bias and spread are those of these toiles, cloths and hands, and of this physics. They promise nothing of " +
			"another cut or cloth; a prediction of a new cut is still to be held against its own toile.",
		"Nothing is corrected by them: cowl toile fit says what the toiles tell of the cloth.",
	}
}

// asSpoken is a length of m as charts have it.
func asSpoken(m float64) float64 {
	v, _ := say.InUnit(m)
	return v
}
