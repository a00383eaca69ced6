package toile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// column is a column of the book. Its name ends in its unit.
type column struct {
	name string
	text func(*Toile) *string  // of words
	at   func(*Toile) *float64 // of a figure; nil where a row has no such fold
	per  float64               // how many of its unit make an SI unit
}

// columns are those of a book, in the order in which they are written.
var columns = slices.Concat([]column{
	{name: "key", text: func(t *Toile) *string { return &t.Key }},
	{name: "date", text: func(t *Toile) *string { return &t.Date }},
	{name: "style", text: func(t *Toile) *string { return &t.Style }},
	{name: "fabric", text: func(t *Toile) *string { return &t.Fabric }},
	{name: "drop_cm", per: 100, at: func(t *Toile) *float64 { return &t.Drop }},
	{name: "laid", per: 1, at: func(t *Toile) *float64 { return &t.Laid }},
	{name: "kept", per: 1, at: func(t *Toile) *float64 { return &t.Kept }},
}, foldColumns(), []column{
	{name: "reach_cm", per: 100, at: func(t *Toile) *float64 { return &t.Reach }},
	{name: "photo", text: func(t *Toile) *string { return &t.Photo }},
	{name: "note", text: func(t *Toile) *string { return &t.Note }},
})

// foldColumns are depth and place of every fold.
func foldColumns() []column {
	var out []column
	for k := range MostFolds {
		of := func(t *Toile, pick func(*Fold) *float64) *float64 {
			if k >= len(t.Folds) {
				return nil
			}
			return pick(&t.Folds[k])
		}
		out = append(out,
			column{name: fmt.Sprintf("fold%d_depth_cm", k+1), per: 100,
				at: func(t *Toile) *float64 { return of(t, func(f *Fold) *float64 { return &f.Depth }) }},
			column{name: fmt.Sprintf("fold%d_at_cm", k+1), per: 100,
				at: func(t *Toile) *float64 { return of(t, func(f *Fold) *float64 { return &f.At }) }})
	}
	return out
}

// cell writes what a row holds.
func (c column) cell(t *Toile) string {
	if c.text != nil {
		return *c.text(t)
	}
	if v := c.at(t); v != nil && !math.IsNaN(*v) {
		return tidy(*v * c.per)
	}
	return ""
}

// set reads a cell into a row, whose folds are all there; comma says that decimals may
// have one.
func (c column) set(t *Toile, cell string, comma bool) error {
	cell = strings.TrimSpace(cell)
	if c.text != nil {
		*c.text(t) = cell
		return nil
	}
	v := math.NaN()
	if cell != "" {
		text := cell
		if comma {
			text = strings.Replace(text, ",", ".", 1)
		}
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return fmt.Errorf("%s %.30q, want a number, or nothing where it was not measured", c.name, cell)
		}
		v, _ = strconv.ParseFloat(tidy(x/c.per), 64)
	}
	*c.at(t) = v
	return nil
}

// tidy writes a number to nine figures: 12.5 and no 12.500000000000002.
func tidy(v float64) string { return strconv.FormatFloat(rounded(v), 'f', -1, 64) }

func rounded(v float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	return r
}

// columnNames lists them for messages.
func columnNames() string {
	var out []string
	for _, c := range columns {
		out = append(out, c.name)
	}
	return strings.Join(out, ",")
}
