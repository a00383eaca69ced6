package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/study/stats"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim/drape/measure"
)

// sweepFindings says what each line does from end to end, and where a step is
// lost in the scatter.
func sweepFindings(p *plan, rs []caseResult) []string {
	var out []string
	if p.varies("grain") {
		out = append(out, grainCaution)
	}
	for _, g := range groupsOf(p.cases) {
		line := g.pick(rs)
		in := ""
		if g.name != "" {
			in = "In " + g.name + ": "
		}
		each := keptAlong(p.vary[0], line)
		each = append(each, endToEnd(depthFigure, line), endToEnd(reachFigure, line), endToEnd(dropFigure, line),
			fmt.Sprintf("Folds above the bust: %s at %s, %s at %s.", stats.Spoken(line[0].values(countFigure.Value)),
				line[0].Name,
				stats.Spoken(line[len(line)-1].values(countFigure.Value)), line[len(line)-1].Name))
		if text := takenWords(line); text != "" {
			each = append(each, text)
		}
		if in != "" {
			each = []string{in + strings.Join(each, " ")}
		}
		out = append(out, each...)
	}
	out = append(out, betweenLines(p, rs)...)
	out = append(out, belowCurve(rs)...)
	return append(out, missingFinding(rs)...)
}

// keptAlong says what becomes of the laid folds along a line: of every row where their
// number is varied, else from end to end.
func keptAlong(f factor, line []caseResult) []string {
	var out []string
	if f.name == "folds" {
		for _, c := range line {
			out = append(out, keptSentence(ruler.Capital(c.Name)+": the cloth", c))
		}
		return out
	}
	var parts []string
	for _, c := range line {
		parts = append(parts, keptBrief(c)+" at "+c.Name)
	}
	return []string{"Laid folds kept: " + strings.Join(parts, ", ") + "."}
}

// endToEnd says how a figure changes along a line, and which steps are lost.
func endToEnd(m *measure.Figure, line []caseResult) string {
	first, last := line[0], line[len(line)-1]
	a, _ := first.summary(m)
	b, _ := last.summary(m)
	text := fmt.Sprintf("%s: %s at %s, %s at %s", m.Name, m.Amount(a), first.Name, m.Amount(b), last.Name)
	switch d := differ(m, first, last, len(line)); {
	case !d.Clear:
		text += "; end to end: " + d.text()
	case len(line) == 2:
		text += "; a clear difference"
	}
	if len(line) == 2 { // the only step is from end to end
		return text + "."
	}
	lost := map[string][]string{}
	for k := 1; k < len(line); k++ {
		if d := differ(m, line[k-1], line[k], len(line)); !d.Clear {
			lost[d.verdict()] = append(lost[d.verdict()], line[k-1].Name+" to "+line[k].Name)
		}
	}
	if len(lost) == 0 {
		return text + "; every step is clear."
	}
	for _, why := range []string{noDifference, tooFew} {
		switch n := len(lost[why]); {
		case n == len(line)-1:
			text += "; from step to step: " + why
		case n > 0:
			text += "; " + why + ": " + strings.Join(lost[why], ", ")
		}
	}
	return text + "."
}

// belowCurve says where the edge lies against the bounds of the trade.
func belowCurve(line []caseResult) []string {
	above, n, most := 0, 0, 0.0
	for _, r := range line {
		mean, _ := r.summary(dropFigure)
		if r.wrong != nil || math.IsNaN(mean) || r.style.Hang.EdgeDepth != draft.Auto {
			continue
		}
		n++
		if curve, _ := r.bounds(); mean < curve {
			above++
			most = math.Max(most, curve-mean)
		}
	}
	if n == 0 || above == 0 || line[0].style.Hang.Free {
		return nil
	}
	return []string{fmt.Sprintf("The edge hangs higher than the hanging curve at %d of %d cuts, by up to %s: over a "+
		"form it also runs forward.", above, n, dropFigure.Amount(most))}
}
