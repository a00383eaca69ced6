package materials

import (
	"fmt"
	"strconv"

	"cowl/mesh/limit"
)

// quantity describes a number of a Fabric as people write it.
type quantity struct {
	key       string    // in files, ends in the unit
	unit      string    // for people
	scale     float64   // SI value of one unit
	low, high float64   // allowed, in units, both ends included
	why       string    // what the limits stand for
	optional  bool      // zero means unknown
	of        dimension // how it may be written in text
	at        func(*Fabric) *float64
}

// drapeQuantities are the numbers of a DrapeMeter; f.Drape must not be nil.
var drapeQuantities = []quantity{
	{key: "coefficient_pct", unit: "%", scale: 1e-2, low: 1, high: 100, why: "shadow over flat ring",
		at: func(f *Fabric) *float64 { return &f.Drape.Coefficient }},
	{key: "disc_mm", unit: "mm", scale: 1e-3, low: 50, high: 300, why: "drapemeters use 127 and 180 mm", optional: true,
		at: func(f *Fabric) *float64 { return &f.Drape.Disc }},
	{key: "specimen_mm", unit: "mm", scale: 1e-3, low: 100, high: 600, why: "drapemeters use 240–360 mm", optional: true,
		at: func(f *Fabric) *float64 { return &f.Drape.Specimen }},
	{key: "nodes", scale: 1, low: 1, high: 30, why: "folds round the disc", optional: true,
		at: func(f *Fabric) *float64 { return &f.Drape.Nodes }},
}

// inUnits returns the value in units, rounded to 12 figures.
func (q quantity) inUnits(f *Fabric) float64 {
	v, _ := strconv.ParseFloat(figures(*q.at(f)/q.scale), 64)
	return v
}

// set stores v, given in units.
func (q quantity) set(f *Fabric, v float64) { *q.at(f) = v * q.scale }

// limits returns v, in units, with what it may be.
func (q quantity) limits(v float64) limit.Range {
	return rangeOf(q.key, q.unit, q.scale, v, q.low, q.high, q.why, q.optional)
}

// check returns an error unless v, in units, lies within the allowed range.
func (q quantity) check(v float64) error { return q.limits(v).Check() }

// allowed returns the range with its unit, like "10–1500 g/m²".
func (q quantity) allowed() limit.Words { return q.limits(0).Allowed() }

// rangeOf makes a range of numbers in a unit of which one is scale in SI.
func rangeOf(field, unit string, scale, v, low, high float64, why string, none bool) limit.Range {
	return limit.Range{Field: field, Value: v * scale, Lo: low * scale, Hi: high * scale, Unit: unitOf(unit, scale),
		Why: limit.Say("%s", why), None: none}
}

// unitOf is a unit of which one is scale in SI.
func unitOf(name string, scale float64) limit.Unit {
	if name != "" {
		name = " " + name
	}
	return limit.Unit{Name: name, PerSI: 1 / scale, Value: limit.Figures, End: limit.Figures}
}

// withUnit formats v to four figures, whole numbers in full.
func withUnit(v float64, unit string) string {
	return fmt.Sprint(limit.Of(v, unitOf(unit, 1)))
}

// figures formats v to 12 figures, enough to return to the number typed.
func figures(v float64) string { return strconv.FormatFloat(v, 'g', 12, 64) }
