// Package csv reads points from a table: a block by the names of its points,
// or pieces by their outlines. The head of the table names its columns; those
// of the places end in their unit. Commas, semicolons and tabs part the cells;
// with semicolons a decimal comma is read too. Start at Points and Read.
package csv

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"cowl/mesh/draft"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// row is one line of the table.
type row struct {
	number            int // in the file
	piece, line, name string
	at                r2.Vec // m
}

// Points returns the named points of a block (m), as draft.FromPoints takes
// them. Its columns are name, x and y with a unit: x_mm, x_cm or x_in. A name
// that no block has is an error.
func Points(r io.Reader, said outline.Unit) (map[string][]r2.Vec, error) {
	rows, err := table(r, said)
	if err != nil {
		return nil, fmt.Errorf("csv: %w", err)
	}
	known := map[string]bool{}
	for _, n := range draft.PointNames() {
		known[n] = true
	}
	out := map[string][]r2.Vec{}
	for _, w := range rows {
		if !known[w.name] {
			return nil, fmt.Errorf("csv: line %d: point %.40q, want one of %s", w.number, w.name,
				strings.Join(draft.PointNames(), ", "))
		}
		out[w.name] = append(out[w.name], w.at)
	}
	return out, nil
}

const longestLine = 4096 // letters

// table reads the rows of a file.
func table(r io.Reader, said outline.Unit) ([]row, error) {
	c, err := Cells(r)
	if err != nil {
		return nil, err
	}
	head, err := c.Read()
	if errors.Is(err, io.EOF) {
		return nil, errors.New("empty file, want a head such as name,x_mm,y_mm and a point a line")
	}
	if err != nil {
		return nil, err
	}
	cols, err := columnsOf(head, said)
	if err != nil {
		return nil, err
	}
	var out []row
	for {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		if len(out) == outline.MostPoints {
			return nil, fmt.Errorf("more than %d points, want one pattern of one size", outline.MostPoints)
		}
		line, _ := c.FieldPos(0)
		w, err := cols.row(cells, c.Comma == ';')
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", line, err)
		}
		w.number = line
		out = append(out, w)
	}
}

// Cells returns a reader of the cells of a table that is text of a sane width and no
// larger than outline.MostBytes. Its Comma is what parts the cells.
func Cells(r io.Reader) (*csv.Reader, error) {
	data, err := outline.Bytes(r)
	if err != nil {
		return nil, err
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return nil, errors.New("not UTF-8 text, want a table of comma-separated values")
	}
	for line := range bytes.Lines(data) {
		if len(line) > longestLine {
			return nil, fmt.Errorf("a line of %d letters, want at most %d", len(line), longestLine)
		}
	}
	first, _, _ := bytes.Cut(data, []byte("\n"))
	c := csv.NewReader(bytes.NewReader(data))
	c.Comma = separator(string(first))
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = true
	return c, nil
}

// separator returns what parts the cells of the head.
func separator(head string) rune {
	for _, sep := range []rune{';', '\t'} {
		if strings.ContainsRune(head, sep) {
			return sep
		}
	}
	return ','
}

// columns says where in a row things stand; -1: nowhere.
type columns struct {
	piece, line, name, x, y int
	unit                    outline.Unit
}

// columnsOf reads the head.
func columnsOf(head []string, said outline.Unit) (columns, error) {
	c := columns{-1, -1, -1, -1, -1, 0}
	var units [2]outline.Unit
	for i, h := range head {
		name, unit, has := strings.Cut(strings.ToLower(strings.TrimSpace(h)), "_")
		switch {
		case name == "x" || name == "y":
			u, err := outline.ParseUnit(unit)
			if err != nil {
				return c, fmt.Errorf("column %.20q: %w", h, err)
			}
			units[name[0]-'x'] = u
			if name == "x" {
				c.x = i
			} else {
				c.y = i
			}
		case has:
		case name == "piece":
			c.piece = i
		case name == "line":
			c.line = i
		case name == "name":
			c.name = i
		}
	}
	if c.x < 0 || c.y < 0 {
		return c, errors.New("no columns x and y, want a head such as name,x_mm,y_mm (or _cm, _in)")
	}
	if units[0] != units[1] {
		return c, fmt.Errorf("x in %v and y in %v, want the same unit for both", units[0], units[1])
	}
	u, err := outline.Agree(units[0], said)
	c.unit = u
	return c, err
}

// row reads the cells of a line.
func (c columns) row(cells []string, decimalComma bool) (row, error) {
	cell := func(i int) string {
		if i < 0 || i >= len(cells) {
			return ""
		}
		return strings.TrimSpace(cells[i])
	}
	w := row{piece: cell(c.piece), line: strings.ToLower(cell(c.line)), name: cell(c.name)}
	for _, to := range []struct {
		column int
		at     *float64
	}{{c.x, &w.at.X}, {c.y, &w.at.Y}} {
		text := cell(to.column)
		if decimalComma {
			text = strings.Replace(text, ",", ".", 1)
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return w, fmt.Errorf("%.30q, want a number", text)
		}
		*to.at = v * float64(c.unit)
	}
	if !(abs(w.at.X) < 1e6 && abs(w.at.Y) < 1e6) {
		return w, fmt.Errorf("point (%g, %g) m, want finite numbers", w.at.X, w.at.Y)
	}
	return w, nil
}

func abs(v float64) float64 { return max(v, -v) }
