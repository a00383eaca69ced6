package study

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/sim/drape/measure"
)

// publish writes the sheet and all files of a study and prints what came out.
func (w *runner) publish(p *plan, rs []caseResult) error {
	sheet, worn := p.page(p, rs), p.style.Cut.Worn
	html, err := sheet.HTML()
	if err != nil {
		panic("the sheet of the study cannot be made\n" + err.Error())
	}
	names := p.names(rs)
	html, findings := []byte(names.HTML(string(html), worn)), names.Strings(sheet.Findings, worn)
	result, err := console.JSON(sided.JSON(p.result(rs, findings), worn))
	if err != nil {
		return err
	}
	files := append(p.files(rs), console.File{Name: "result.json", Data: result},
		console.File{Name: "index.html", Data: html})
	old := p.spec.Written
	p.spec.Written = writtenOf(files)
	spec, err := console.JSON(p.spec)
	if err != nil {
		return err
	}
	if err := console.SaveSet(w.Dir, append(files, console.File{Name: specFile, Data: spec}),
		stale(w.Dir, old, p.spec.Written)); err != nil {
		return err
	}
	return w.tell(names.Say(sheet.Title, worn), findings, result, rs)
}

// names are what the user has called style and fabrics.
func (p *plan) names(rs []caseResult) sided.Names {
	out := sided.Names{p.style.Name, p.style.Fabric.Name, p.style.Fabric.Title}
	for _, c := range rs {
		out = append(out, c.style.Fabric.Name, c.style.Fabric.Title)
	}
	return out
}

// files makes tables, pictures and style files.
func (p *plan) files(rs []caseResult) []console.File {
	said := func(table []byte) []byte { return []byte(sided.Keys(string(table), p.style.Cut.Worn)) }
	files := []console.File{{Name: "table.csv", Data: said(p.table(rs))},
		{Name: "placings.csv", Data: said(placingsTable(rs))}}
	for i, c := range rs {
		name := c.fileName(i)
		files = append(files, console.File{Name: "styles/" + name + ".yaml", Data: c.again(name + ".yaml")})
		if c.Picture != nil {
			files = append(files, console.File{Name: "pictures/" + name + ".jpg", Data: c.Picture})
		}
	}
	return files
}

// tell prints the findings and returns the exit status.
func (w *runner) tell(title string, findings []string, result []byte, rs []caseResult) error {
	switch {
	case w.JSON:
		if _, err := w.c.Out.Write(result); err != nil {
			return err
		}
	case !w.Quiet:
		fmt.Fprintf(w.c.Out, "%s\n\n", title)
		for _, f := range findings {
			fmt.Fprintf(w.c.Out, "  - %s\n", f)
		}
		fmt.Fprintf(w.c.Out, "\n%s\nWrote to %s: index.html, table.csv, placings.csv, result.json, pictures, styles\n",
			say.Caution, filepath.Clean(w.Dir))
	}
	for _, c := range rs {
		if r, ok := c.shown(); ok && r.Missing != "" {
			fmt.Fprintf(w.c.Err, "cowl: no pictures: %s; all else is written\n", r.Missing)
			break
		}
	}
	if n := unsettled(rs); n > 0 {
		fmt.Fprintf(w.c.Err, "cowl: %d drapes gave no result; the sheet marks them\n", n)
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}

// csvOf writes records; an error of a buffer cannot be.
func csvOf(records [][]string) []byte {
	var b bytes.Buffer
	if err := csv.NewWriter(&b).WriteAll(records); err != nil {
		panic("cowl: table: " + err.Error())
	}
	return b.Bytes()
}

// exact writes a value for a program to read; empty where there is none.
func exact(v float64) string {
	if math.IsNaN(v) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', 7, 64)
}

// table is table.csv: one line a case, keys with their units.
func (p *plan) table(rs []caseResult) []byte {
	head := []string{"case", "group", "fabric"}
	for _, f := range p.vary {
		head = append(head, f.column())
	}
	head = append(head, "half_edge_mm", "edge_drop_curve_mm", "edge_drop_v_mm", "placings", "without_result", "why",
		"fold_counts")
	for _, m := range measure.Columns {
		head = append(head, m.Key+"_mean", m.Key+"_spread")
	}
	records := [][]string{append(head, "style")}
	for i, c := range rs {
		records = append(records, p.line(i, c))
	}
	return csvOf(records)
}

// line is the line of the i-th case.
func (p *plan) line(i int, c caseResult) []string {
	out := []string{c.Name, c.Group, c.style.Fabric.Name}
	for k := range p.vary {
		out = append(out, exact(c.Values[k]))
	}
	half, curve, v := math.NaN(), math.NaN(), math.NaN()
	if c.wrong == nil {
		half = c.cowl.HalfEdge * 1000
		curve, v = c.bounds()
	}
	n, why := c.troubles()
	var counts []string
	for _, x := range c.values(countFigure.Value) {
		counts = append(counts, exact(x))
	}
	out = append(out, exact(half), exact(curve), exact(v), strconv.Itoa(c.style.Hang.Placings), strconv.Itoa(n), why,
		strings.Join(counts, " "))
	for _, m := range measure.Columns {
		mean, deviation := c.summary(m)
		if math.IsNaN(mean) {
			deviation = mean
		}
		out = append(out, exact(mean), exact(deviation))
	}
	return append(out, "styles/"+c.fileName(i)+".yaml")
}

// placingsTable is placings.csv: one line a drape.
func placingsTable(rs []caseResult) []byte {
	head := []string{"case", "group", "seed", "status"}
	for _, m := range measure.Columns {
		head = append(head, m.Key)
	}
	records := [][]string{head}
	for _, c := range rs {
		for k, r := range c.Each {
			status := string(r.Value.Outcome.Status)
			switch {
			case !r.Done:
				status = "not hung"
			case r.Failed != "":
				status = "failed"
			}
			line := []string{c.Name, c.Group, strconv.FormatUint(c.seed(k), 10), status}
			for _, m := range measure.Columns {
				line = append(line, exact(c.values(m.Value)[k]))
			}
			records = append(records, line)
		}
	}
	return csvOf(records)
}
