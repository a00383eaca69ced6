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

	"cowl/mesh/ruler"
	"cowl/sim/drape"
)

// Figure is one measure of a drape, FoldFigure one of a fold.
type (
	Figure     = Measure[drape.Outcome]
	FoldFigure = Measure[drape.Fold]
)

// Measure is a row of a table.
type Measure[T any] struct {
	Key    string // in files; what follows the last _ is the unit there, if it is one
	Name   string // on sheets; empty: not on any
	Unit   Unit   // for people; zero: that of files
	Digits int    // decimals for people

	Of     func(*T) float64        // SI; NaN: there is none, and it is left out of result.json
	Each   func(*T) []float64      // instead of Of: SI, one a placing,
	Over   func([]float64) float64 // and what is made of them in the unit of files; nil: they are listed
	Raw    func(*T) any            // instead of Of: what is no measure; nil: left out of result.json
	Shown  func(float64) float64   // what people and studies are given of the value, see some; nil: the value
	Hidden bool                    // not in result.json, which tells it otherwise
	OnForm bool                    // means nothing on a free hang, and people are not told it

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
// and how near is met: patterns are cut to half a centimetre, folds are whole. SI.
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
func (m *Measure[T]) SI(of *T) float64 {
	if m.Shown != nil {
		return m.Shown(m.Of(of))
	}
	return m.Of(of)
}

// Value is SI in the unit of files.
func (m *Measure[T]) Value(of *T) float64 {
	if m.Over != nil {
		return m.Over(each(m.Each(of), m.In))
	}
	return m.In(m.SI(of))
}

// In turns an SI value into the unit of files.
func (m *Measure[T]) In(si float64) float64 { return m.file().From(si) }

// Metric is the unit for people who measure in centimetres.
func (m *Measure[T]) Metric() Unit {
	if m.Unit.Sign == "" {
		return m.file()
	}
	return m.Unit
}

// People is the unit for people, in the units that are spoken.
func (m *Measure[T]) People() Unit { return m.Metric().in(ruler.Spoken()) }

func (m *Measure[T]) file() Unit { return inFiles[m.Key[strings.LastIndex(m.Key, "_")+1:]] }

// The functions below take values in the unit of files.

// Spoken turns a value into the unit for people.
func (m *Measure[T]) Spoken(v float64) float64 { return v / (m.file().From(1) / m.People().From(1)) }

// SpokenEach is Spoken for many values.
func (m *Measure[T]) SpokenEach(v []float64) []float64 { return each(v, m.Spoken) }

// Axis is name and unit.
func (m *Measure[T]) Axis() string {
	return strings.TrimSuffix(m.Name+", "+m.People().Sign, ", ")
}

// Number writes a value for people, without its unit; inches with decimals, since means
// and deviations stand in columns.
func (m *Measure[T]) Number(v float64) string { return m.numberIn(ruler.Spoken(), v) }

func (m *Measure[T]) numberIn(u ruler.Units, v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	unit := m.Metric().in(u)
	text := strconv.FormatFloat(v/(m.file().From(1)/unit.From(1)), 'f', m.Digits+unit.finer, 64)
	if n, _ := strconv.ParseFloat(text, 64); n == 0 {
		return strings.TrimPrefix(text, "-")
	}
	return strings.Replace(text, "-", "−", 1)
}

// Amount is a value with its unit in the units that are spoken, inches with fractions as
// on a ruler.
func (m *Measure[T]) Amount(v float64) string { return m.AmountIn(ruler.Spoken(), v) }

// Beside is a value that stands before an Amount of the same figure: the number alone, in
// inches with its unit, since a decimal beside a fraction cannot be compared.
func (m *Measure[T]) Beside(v float64) string { return m.besideIn(ruler.Spoken(), v) }

func (m *Measure[T]) besideIn(u ruler.Units, v float64) string {
	if u == ruler.Inches {
		return m.AmountIn(u, v)
	}
	return m.numberIn(u, v)
}

// AmountIn is Amount in the units of a reader.
func (m *Measure[T]) AmountIn(u ruler.Units, v float64) string {
	unit := m.Metric().in(u)
	if unit.onRuler == nil || m.Digits > 0 && unit.rough || math.IsNaN(v) {
		return m.numberIn(u, v) + unit.behind()
	}
	return strings.Replace(unit.onRuler(v/m.file().From(1)), "-", "−", 1)
}

// Spread writes mean ± deviation, or the mean alone where there is one value.
func (m *Measure[T]) Spread(mean, deviation float64, n int) string {
	if n < 2 || math.IsNaN(mean) {
		return m.Number(mean)
	}
	return m.Number(mean) + " ± " + m.Number(deviation)
}

// Change writes an amount with its sign.
func (m *Measure[T]) Change(v float64) string {
	if text := m.Amount(v); strings.HasPrefix(text, "−") {
		return text
	}
	return "+" + m.Amount(v)
}

func each(v []float64, of func(float64) float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = of(x)
	}
	return out
}
