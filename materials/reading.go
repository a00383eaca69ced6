package materials

import (
	"fmt"
	"math"
	"strconv"
)

// Reading is what repeats of one test gave, SI.
type Reading struct {
	Mean   float64
	Spread float64 // standard deviation of the repeats; 0 for one
	Digit  float64 // step in which it was read
	Count  int
}

// Uncertainty returns the standard uncertainty of the mean: the spread over
// √n, with 0.29 of the step of the scale added in quadrature (JCGM 100:2008,
// Guide to the Expression of Uncertainty in Measurement, 4.2.3 and F.2.2.1).
func (r Reading) Uncertainty() float64 {
	if r.Count == 0 {
		return 0
	}
	return math.Hypot(r.Spread/math.Sqrt(float64(r.Count)), r.Digit/math.Sqrt(12))
}

// readingOf pools repeats.
func readingOf(repeats []amount) Reading {
	r := Reading{Count: len(repeats)}
	for _, a := range repeats {
		r.Mean += a.si / float64(len(repeats))
		r.Digit = max(r.Digit, a.digit)
	}
	for _, a := range repeats {
		r.Spread += (a.si - r.Mean) * (a.si - r.Mean)
	}
	if r.Count > 1 {
		r.Spread = math.Sqrt(r.Spread / float64(r.Count-1))
	} else {
		r.Spread = 0
	}
	return r
}

// in writes the reading for people: "32 mm (3 readings, ± 1 mm)".
func (r Reading) in(scale float64, unit string) string {
	s := withUnit(toUnits(r.Mean, scale), unit)
	if r.Count > 1 {
		s += fmt.Sprintf(" (%d readings, ± %s)", r.Count, short(r.Spread/scale, unit))
	}
	return s
}

// short writes v with two figures and its unit.
func short(v float64, unit string) string {
	s := strconv.FormatFloat(v, 'g', 2, 64)
	if math.Abs(v) >= 10 {
		s = strconv.FormatFloat(v, 'f', 0, 64)
	}
	if unit == "" {
		return s
	}
	return s + " " + unit
}
