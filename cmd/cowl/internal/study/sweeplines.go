package study

import (
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/study/page"
)

// lineDiffs compares the edge drop of every further line with the first, value
// by value.
func lineDiffs(p *plan, rs []caseResult) []difference {
	groups := groupsOf(p.cases)
	first := groups[0].pick(rs)
	of := (len(groups) - 1) * len(first)
	var out []difference
	for _, g := range groups[1:] {
		for k, c := range g.pick(rs) {
			d := differ(dropFigure, first[k], c, of)
			d.First, d.Second = groups[0].name+" "+first[k].Name, g.name+" "+c.Name
			out = append(out, d)
		}
	}
	return out
}

// linesBlock sets the differences between lines side by side; nothing where
// there is one line.
func linesBlock(p *plan, rs []caseResult) []page.Block {
	groups := groupsOf(p.cases)
	if len(groups) < 2 {
		return nil
	}
	ds, first := lineDiffs(p, rs), groups[0].pick(rs)
	t := &page.Table{Head: []string{p.vary[0].axis()}, Note: statistic(p.spec.Placings, len(ds))}
	for _, g := range groups[1:] {
		t.Head = append(t.Head, g.name)
	}
	for k, c := range first {
		row := []string{c.Name}
		for i := range groups[1:] {
			row = append(row, ds[i*len(first)+k].text())
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: row})
	}
	return []page.Block{{Heading: "Edge drop against " + groups[0].name + ", cut by cut", Table: t}}
}

// betweenLines says where lines differ from the first.
func betweenLines(p *plan, rs []caseResult) []string {
	groups := groupsOf(p.cases)
	if len(groups) < 2 {
		return nil
	}
	ds, n := lineDiffs(p, rs), len(groups[0].rs)
	var parts []string
	for i, g := range groups[1:] {
		clear := 0
		for _, d := range ds[i*n : (i+1)*n] {
			if d.Clear {
				clear++
			}
		}
		parts = append(parts, fmt.Sprintf("%s at %d of %d", g.name, clear, n))
	}
	return []string{fmt.Sprintf("The edge drop differs clearly from %s: %s cuts.", groups[0].name,
		strings.Join(parts, ", "))}
}

// groupsOf splits cases into lines, in their order.
func groupsOf(cases []oneCase) []group {
	var out []group
	for i, c := range cases {
		if n := len(out); n == 0 || out[n-1].name != c.Group {
			out = append(out, group{name: c.Group})
		}
		out[len(out)-1].rs = append(out[len(out)-1].rs, i)
	}
	return out
}

// group is the cases of one line of a chart.
type group struct {
	name string
	rs   []int // into the cases
}

// pick returns the results of a group.
func (g group) pick(rs []caseResult) []caseResult {
	var out []caseResult
	for _, i := range g.rs {
		out = append(out, rs[i])
	}
	return out
}
