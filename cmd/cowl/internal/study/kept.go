package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// laid returns how many folds the hands of a case laid; false if none came to rest.
// They all lay the same number.
func (c caseResult) laid() (int, bool) {
	for _, r := range c.Each {
		if settled(r) {
			return r.Value.Outcome.Laid, true
		}
	}
	return 0, false
}

// keptBrief says in a cell how many of the laid folds are kept: "2 of 2", and by how
// many hands where they differ.
func keptBrief(c caseResult) string {
	laid, ok := c.laid()
	shares := stats.Counts(c.values(keptFigure.Value))
	switch {
	case !ok:
		return "–"
	case laid == 0:
		return "none laid"
	case len(shares) == 1:
		return fmt.Sprintf("%d of %d", shares[0].Count, laid)
	}
	return fmt.Sprintf("%d of %d (%s)", shares[0].Count, laid, byHands(shares))
}

// byHands says how many hands agree on the most frequent count, and what the others
// have.
func byHands(shares []stats.Share) string {
	n := 0
	var rest []string
	for i, s := range shares {
		n += s.Times
		if i > 0 {
			rest = append(rest, fmt.Sprint(s.Count))
		}
	}
	return fmt.Sprintf("%d of %d hands, else %s", shares[0].Times, n, strings.Join(rest, " or "))
}

// keptSentence says what becomes of the folds that were laid: how many are kept, how
// deep and how far forward.
func keptSentence(name string, c caseResult) string {
	laid, ok := c.laid()
	if !ok {
		return name + " gave no result."
	}
	shares := stats.Counts(c.values(keptFigure.Value))
	text, link := "", ", "
	switch {
	case laid == 0:
		text = name + " is let fall: " + stats.Spoken(c.values(countFigure.Value)) + " above the bust"
	case shares[0].Count == 0:
		text = fmt.Sprintf("%s keeps none of %s", name, say.Several(laid, "laid fold"))
	default:
		text = fmt.Sprintf("%s keeps %d of %s", name, shares[0].Count, say.Several(laid, "laid fold"))
	}
	if laid > 0 && len(shares) > 1 {
		text, link = text+" with "+byHands(shares), "; "
	}
	if v, _ := c.summary(depthFigure); !math.IsNaN(v) {
		text, link = text+link+"the deepest "+depthFigure.Amount(v), ", "
	}
	if v, _ := c.summary(reachFigure); !math.IsNaN(v) && !c.style.Hang.Free {
		text += link + reachFigure.Amount(v) + " ahead of the form"
	}
	if n := stats.Counts(c.values(extraFigure.Value)); laid > 0 && len(n) > 0 && n[0].Count > 0 {
		text += fmt.Sprintf("; above the bust %s more that nobody laid", say.Several(n[0].Count, "fold"))
	}
	return text + "."
}

// triedTable lists what the first hand of every case found of each number of folds;
// nothing where it tried none.
func triedTable(heading, first string, rs []caseResult) []page.Block {
	most := 0
	tried := make([][]drape.Try, len(rs))
	for i, c := range rs {
		if r, ok := c.shown(); ok {
			tried[i] = r.Outcome.Tried
		}
		for _, t := range tried[i] {
			most = max(most, t.Laid)
		}
	}
	if most == 0 {
		return nil
	}
	t := &page.Table{Head: []string{first}, Words: true,
		Note: "By the first hand alone. Extra: above the bust, and nobody laid it. Shown and hung by all hands is " +
			chosenWords + "."}
	for n := 1; n <= most; n++ {
		t.Head = append(t.Head, fmt.Sprintf("%d laid", n))
	}
	for i, c := range rs {
		row := append([]string{c.Name}, make([]string, most)...)
		for n := range most {
			row[n+1] = "–"
		}
		for _, k := range tried[i] {
			if k.Laid > 0 {
				row[k.Laid] = triedCell(k)
			}
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: row})
	}
	return []page.Block{{Heading: heading, Table: t}}
}

// chosenWords is the rule by which a number of folds is shown, see drape.HangAll.
const chosenWords = "the largest number of which all are kept with no extra fold above the bust, or if there is " +
	"none, the one with most kept; it is not the only way the cloth can rest"

// triedCell says what the cloth made of a number of folds.
func triedCell(t drape.Try) string {
	text := fmt.Sprintf("%d kept", t.Kept)
	if t.Extra > 0 {
		text += fmt.Sprintf(", %d extra", t.Extra)
	}
	if !t.Settled {
		text += ", not settled"
	}
	return text
}

// takenWords says how much was taken up to set the edge, from one end of a line of
// cases to the other; empty where it was not set.
func takenWords(line []caseResult) string {
	var parts []string
	for _, c := range line {
		if c.style.Hang.EdgeDepth == draft.Auto {
			continue
		}
		if v, _ := c.summary(takenFigure); !math.IsNaN(v) {
			parts = append(parts, fmt.Sprintf("%s at %s", takenFigure.Amount(v), c.Name))
		}
	}
	if parts == nil {
		return ""
	}
	return "Taken up at either cowl point (below zero: let down out of the allowance): " + strings.Join(parts, ", ") + "."
}

// Figures of the laid folds.
var (
	keptFigure  = measure.Named("kept")
	extraFigure = measure.Named("extra")
	reachFigure = measure.Named("forward_mm")
	takenFigure = measure.Named("taken_up_mm")
)
