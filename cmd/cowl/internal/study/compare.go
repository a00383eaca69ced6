package study

import (
	"fmt"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/ruler"
	"cowl/sim/drape/measure"
)

// planCompare makes one case a fabric.
func planCompare(a Spec, s style.Style) (*plan, error) {
	cloths, err := a.fabrics()
	if err != nil {
		return nil, err
	}
	p := &plan{spec: a, style: s, page: comparePage, pairs: compareDiffs}
	for _, f := range cloths {
		one := s
		one.Fabric = f
		p.cases = append(p.cases, newCase(f.Name, one))
	}
	return p, nil
}

// compareDiffs compares every fabric with the first.
func compareDiffs(_ *plan, rs []caseResult) []difference {
	var out []difference
	for _, c := range rs[1:] {
		for _, m := range leadingFigures {
			out = append(out, differ(m, rs[0], c, len(rs)-1))
		}
	}
	return out
}

// comparePage makes the page.
func comparePage(p *plan, rs []caseResult) page.Page {
	ds := compareDiffs(p, rs)
	table := &page.Table{Head: []string{"Compared with the first"}, Note: statistic(p.spec.Placings, len(rs)-1)}
	for _, m := range leadingFigures {
		table.Head = append(table.Head, m.Name)
	}
	for _, row := range diffRows(ds) {
		table.Rows = append(table.Rows, page.TableRow{Cells: row})
	}
	sheet := page.Page{
		Title:    "Which cloth? " + p.style.Name,
		Lead:     fmt.Sprintf("The same piece in %d fabrics, each placed by the same %d hands.", len(rs), p.spec.Placings),
		Findings: compareFindings(rs, ds),
		Facts:    held(p.style, p.spec, "Fabric"),
		Blocks: []page.Block{
			{Heading: "Side by side: same camera, same light, the first hand", Cards: clothCards(rs)},
			{Heading: "Figures", Table: figureTable("Fabric", rs)},
			{Charts: []page.Chart{keptStack(rs), strip(depthFigure, "Deepest cowl fold", rs, false),
				strip(reachFigure, "Reach ahead of the form", rs, false), strip(dropFigure, "Edge drop", rs, false),
				countStack(rs), strip(standFigure, "Stand-off of the edge", rs, false)}},
			{Heading: "Sections on the centre front", Text: drawnOf(len(rs)),
				Charts: []page.Chart{overlay("The cowl, first hand", 140, rs), overlay("Edge to waist, first hand", 0, rs)}},
			{Heading: "What differs by more than the scatter", Table: table},
			{Heading: "The fabrics", Table: clothTable(rs)},
		},
		Cautions: append(cautionsOf(p.style), weakCloths(rs)...),
		Foot:     foot(p.spec),
	}
	sheet.Blocks = slices.Insert(sheet.Blocks, 2, leanTable("Fabric", rs)...)
	sheet.Blocks = slices.Insert(sheet.Blocks, 2, triedTable("How many folds each cloth keeps", "Fabric", rs)...)
	return sheet
}

// drawnOf says that not all sections are drawn, where they are too many.
func drawnOf(n int) []string {
	if n <= page.MostLines {
		return nil
	}
	return []string{fmt.Sprintf("The first %d of %d fabrics: more lines could not be told apart.", page.MostLines, n)}
}

// compareFindings says first what each cloth makes of the folds, then what stands out.
func compareFindings(rs []caseResult, ds []difference) []string {
	var out []string
	for _, c := range rs {
		out = append(out, keptSentence(c.Name, c))
	}
	if least, most, ok := extreme(dropFigure, rs); ok {
		a, _ := least.summary(dropFigure)
		b, _ := most.summary(dropFigure)
		out = append(out, fmt.Sprintf("The edge hangs from %s (%s) to %s (%s) below the shoulder neck points.",
			dropFigure.Amount(a), least.Name, dropFigure.Amount(b), most.Name))
	}
	return append(append(out, differing(rs[0].Name, ds)...), missingFinding(rs)...)
}

// differing says in which figures cases differ clearly from the first, and in which not;
// or that there are too few placings to tell.
func differing(first string, ds []difference) []string {
	var out, same []string
	told := false
	for _, m := range leadingFigures {
		if text := against(m, first, ds); text != "" {
			out = append(out, text)
		} else {
			same = append(same, strings.ToLower(m.Name))
		}
	}
	for _, d := range ds {
		told = told || d.verdict() != tooFew
	}
	switch {
	case len(ds) > 0 && !told:
		return []string{ruler.Capital(tooFew) + " to say what differs by more than hands do: use --placings 5 or more."}
	case len(same) > 0:
		out = append(out, fmt.Sprintf("%s from %s in %s.", ruler.Capital(noDifference), first, strings.Join(same, ", ")))
	}
	return out
}

// clothCards names the cloth under each picture.
func clothCards(rs []caseResult) []page.Card {
	out := cards(rs, func(c caseResult) string { return c.Name })
	for i := range out {
		out[i].Lines = append([]string{rs[i].style.Fabric.Title}, out[i].Lines...)
	}
	return out
}

// against says which cases differ from the first in a figure; empty: none.
func against(m *measure.Figure, first string, ds []difference) string {
	var differing []string
	for _, d := range ds {
		if d.Figure == m && d.Clear {
			differing = append(differing, d.Second+" "+m.Change(d.Mean))
		}
	}
	if len(differing) == 0 {
		return ""
	}
	return fmt.Sprintf("%s, against %s: %s.", m.Name, first, strings.Join(differing, ", "))
}

// clothTable lists the values that decide.
func clothTable(rs []caseResult) *page.Table {
	t := &page.Table{Head: []string{"Fabric", "Weight, g/m²", "Bend warp, µN·m", "Bend weft, µN·m", "Shear, N/m",
		"Bending length, mm", "Known"}}
	for _, c := range rs {
		f := c.style.Fabric
		row := []string{f.Title}
		for _, q := range style.Deciding {
			row = append(row, fmt.Sprintf("%.4g", q.InUnits(f)))
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: append(row, fmt.Sprintf("%.1f", f.GravityLength()*1000),
			style.LeastKnown(f).String())})
	}
	t.Note = "Known: how the least known of these values is known. Sources: cowl fabrics."
	return t
}
