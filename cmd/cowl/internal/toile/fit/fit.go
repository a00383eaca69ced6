// Package fit says within which intervals properties of a cloth agree with what was
// measured of it. It knows no cloth: a number of cloths were drawn, each figure was
// computed for each of them by several hands, and the figure itself was measured on
// toiles. A straight response of every figure is fitted by least squares in the
// coordinates of the properties; what the response misses, what hands, ruler and lattice
// do are its errors; and the known ranges are weighed by how well the response agrees
// with what was measured. Start at Fit.
package fit

import (
	"fmt"
	"math"
)

// Property is what is looked for: how many times its value it is. A response is straight
// in the logarithm of that, or where Linear says so in itself, which may then be 0.
type Property struct {
	Name        string
	Least, Most float64 // known ends
	Bell        bool    // likely as a bell about 1 whose two deviations the ends are, else evenly
	Linear      bool
}

// Figure is one that was measured, with what the drawn cloths make of it. All lengths in
// one unit.
type Figure struct {
	Name     string
	Style    int         // figures of one style were computed by the same hands
	Kind     int         // the lattice errs alike for figures of a kind
	Measured float64     // mean over the toiles
	Toiles   int         // how many
	Ruler    float64     // standard deviation of one reading
	Lattice  float64     // standard deviation of what the lattice errs by
	Drawn    [][]float64 // one list a cloth, one value a hand; NaN: there was none
}

// Experiment is all that Fit is told.
type Experiment struct {
	Properties []Property
	Cloths     [][]float64 // one list a drawn cloth, how many times its value each property is
	Figures    []Figure
}

// Interval is what is known of a property afterwards.
type Interval struct {
	Property
	Low, Middle, High float64 // 5, 50 and 95 % of what is likely
	Share             float64 // of the known range that Low to High takes; 0.9 where nothing was learnt
	Tells             bool    // that is less than Wide
}

// Wide is the share of the known range from which on an interval tells nothing. That of
// a bell is measured by its own 90 %, which counts as 0.9.
const Wide = 0.80

// Result is what Fit found.
type Result struct {
	Intervals []Interval
	Used      []Used
	Left      []string // figures that could not be used, and why
	Misfit    float64  // χ² of the likeliest cloth
	Allowed   float64  // which chance alone exceeds in 1 of 20 experiments
}

// Used is a figure with its errors, standard deviations.
type Used struct {
	Figure
	Hands    float64   // of one hand
	Response float64   // what the straight response misses, the hands taken out
	Slopes   []float64 // of the figure from the least to the most of each property
}

// Agrees reports whether any cloth within the known ranges agrees with the toiles.
func (r Result) Agrees() bool { return r.Misfit <= r.Allowed }

// Fit finds the intervals. It is an error if no figure can be used.
func Fit(e Experiment) (Result, error) {
	if err := e.check(); err != nil {
		return Result{}, err
	}
	var out Result
	var figures []response
	for _, f := range e.Figures {
		r, err := e.respond(f)
		if err != nil {
			out.Left = append(out.Left, fmt.Sprintf("%s: %v", f.Name, err))
			continue
		}
		figures = append(figures, r)
		out.Used = append(out.Used, e.used(r))
	}
	if figures == nil {
		return out, fmt.Errorf("no figure can be used: %v", out.Left)
	}
	out.Intervals, out.Misfit = e.weigh(figures)
	out.Allowed = allowed(len(figures))
	return out, nil
}

// check refuses an experiment that is none; its lists must fit each other.
func (e Experiment) check() error {
	for _, c := range e.Cloths {
		if len(c) != len(e.Properties) {
			panic("fit: a cloth has another number of properties")
		}
	}
	for _, f := range e.Figures {
		if len(f.Drawn) != len(e.Cloths) {
			panic("fit: a figure has another number of cloths")
		}
	}
	for _, p := range e.Properties {
		if !(p.Least < p.Most) || !p.Linear && p.Least <= 0 || math.IsInf(p.Most, 0) {
			return fmt.Errorf("%s: known within %g to %g times its value, want a range", p.Name, p.Least, p.Most)
		}
	}
	if len(e.Properties) == 0 || len(e.Figures) == 0 {
		return fmt.Errorf("%d properties and %d figures, want one or more of both", len(e.Properties), len(e.Figures))
	}
	return nil
}

// coordinate is in what the response is straight.
func (p Property) coordinate(times float64) float64 {
	if p.Linear {
		return times
	}
	return math.Log(times)
}

// likely is how likely a multiple was beforehand, not normalised.
func (p Property) likely(times float64) float64 {
	if !p.Bell {
		return 1
	}
	z := (times - 1) / ((p.Most - 1) / 2)
	return math.Exp(-z * z / 2)
}
