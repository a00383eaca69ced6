// Package measure is the one table of the figures of a drape: what each is
// called in files, on sheets, in the report and in the window, in which unit,
// with how many decimals. A drape.Outcome is SI; here is the edge at which it
// becomes millimetres. Files keep to the unit at the end of a key, people are
// told in the unit of the figure, and the scale from one to the other follows
// from the two units. It decides nothing that a row of a study keeps, so it
// lies outside the physics that name the rows. Start at All and Figure.
package measure

import (
	"math"
	"strconv"
	"strings"

	"cowl/sim/drape"
)

// Quantity is a number with its units.
type Quantity struct {
	Key    string // in files; what follows the last _ is their unit, if it is one
	Name   string // on sheets; empty: not on any
	Unit   Unit   // for people; zero: that of files
	Digits int    // decimals for people
}

// Figure is one measure of a drape.
type Figure struct {
	Quantity
	Of     func(*drape.Outcome) float64   // SI
	Each   func(*drape.Outcome) []float64 // instead of Of: SI, one a placing,
	Over   func([]float64) float64        // and what is made of them in the unit of files; nil: they are listed
	Raw    func(*drape.Outcome) any       // instead of Of: what is no measure; nil: left out of result.json
	Shown  func(float64) float64          // what people and studies are given of the value, see size and some; nil: the value
	Hidden bool                           // not in result.json, which tells it otherwise
	OnForm bool                           // means nothing on a free hang, and people are not told it

	Column int   // among those of a study, 1 first; up to Leading it is on the sheet and compared; 0: none
	Sought *Want // how seek is asked for it; nil: it cannot be
	Report Words
	Window Words
}

// Words tell a figure to people, with others under one title.
type Words struct {
	Under  string // title; those of one title stand together
	At     int    // place under the title, where it is not that of the table
	Says   string // in the report with %s for the amount; empty: it is not told
	Below  string // the same for values below 0, which are told by their size; empty: with their sign
	Signed bool   // told with its sign above 0 too
}

// Want is how seek is asked for a figure: by which names, within which values,
// and how near is met. SI.
type Want struct {
	Names           []string
	Low, High, Near float64
	Whole           bool // a whole number, not a length
}

// Pick returns the words for a value, and what of the value goes with them.
func (w Words) Pick(v float64) (string, float64) {
	if w.Below != "" && v < 0 {
		return w.Below, -v
	}
	return w.Says, v
}

// SI returns what people and studies are given, in SI; NaN: there is none.
func (f *Figure) SI(o *drape.Outcome) float64 {
	if f.Shown != nil {
		return f.Shown(f.Of(o))
	}
	return f.Of(o)
}

// Value is SI in the unit of files.
func (f *Figure) Value(o *drape.Outcome) float64 {
	if f.Over != nil {
		return f.Over(f.inEach(f.Each(o)))
	}
	return f.In(f.SI(o))
}

// In turns an SI value into the unit of files.
func (q *Quantity) In(si float64) float64 { return q.file().From(si) }

func (q *Quantity) inEach(si []float64) []float64 {
	out := make([]float64, len(si))
	for i, v := range si {
		out[i] = q.In(v)
	}
	return out
}

// The functions below take values in the unit of files.

// Sheet turns a value into the unit for people.
func (q *Quantity) Sheet(v float64) float64 { return v / (q.file().From(1) / q.People().From(1)) }

// SheetEach is Sheet for many values.
func (q *Quantity) SheetEach(v []float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = q.Sheet(x)
	}
	return out
}

// Axis is name and unit.
func (q *Quantity) Axis() string {
	if q.People().Sign == "" {
		return q.Name
	}
	return q.Name + ", " + q.People().Sign
}

// Number writes a value for people, without its unit.
func (q *Quantity) Number(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	text := strconv.FormatFloat(q.Sheet(v), 'f', q.Digits, 64)
	if n, _ := strconv.ParseFloat(text, 64); n == 0 {
		return strings.TrimPrefix(text, "-")
	}
	return strings.Replace(text, "-", "−", 1)
}

// Amount is Number with its unit.
func (q *Quantity) Amount(v float64) string { return q.Number(v) + q.People().behind() }

// Spread writes mean ± deviation, or the mean alone where there is one value.
func (q *Quantity) Spread(mean, deviation float64, n int) string {
	if n < 2 || math.IsNaN(mean) {
		return q.Number(mean)
	}
	return q.Number(mean) + " ± " + q.Number(deviation)
}

// Change writes an amount with its sign.
func (q *Quantity) Change(v float64) string {
	text := q.Amount(v)
	if !strings.HasPrefix(text, "−") {
		text = "+" + text
	}
	return text
}
