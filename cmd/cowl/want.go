package main

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/style"
)

// want is what seek is asked for, in the units of the figures; NaN: not asked.
type want struct {
	drop  float64 // mm
	folds float64
	depth float64 // mm
}

// How far a figure may be off to be called met. Patterns are cut to half a
// centimetre, folds are whole.
const (
	dropNear  = 5.0 // mm
	foldsNear = 0.5
	depthNear = 5.0 // mm
)

const wantForm = `want it like "edge drop 12cm, folds 3, depth 25mm"`

// parseWant reads a list of wants.
func parseWant(text string) (want, error) {
	w := want{math.NaN(), math.NaN(), math.NaN()}
	for _, part := range strings.Split(text, ",") {
		words := strings.Fields(part)
		if len(words) < 2 {
			return w, fmt.Errorf("--want: %q is no want: %s", strings.TrimSpace(part), wantForm)
		}
		name, value := strings.ToLower(strings.Join(words[:len(words)-1], " ")), words[len(words)-1]
		var err error
		switch name {
		case "edge drop", "drop":
			w.drop, err = wantedLength(value, name, 0, 600, w.drop)
		case "depth", "fold depth":
			w.depth, err = wantedLength(value, name, 5, 200, w.depth)
		case "folds", "fold":
			w.folds, err = parseNumber(value)
			if err == nil && (w.folds != math.Trunc(w.folds) || w.folds < 0 || w.folds > 6) {
				err = fmt.Errorf("folds %s, want a whole number from 0 to 6", value)
			}
		default:
			err = fmt.Errorf("%q is not known: %s", name, wantForm)
		}
		if err != nil {
			return w, fmt.Errorf("--want: %w", err)
		}
	}
	return w, nil
}

// wantedLength reads a length in mm within a range; given is what was read
// before.
func wantedLength(text, name string, low, high, given float64) (float64, error) {
	if !math.IsNaN(given) {
		return 0, fmt.Errorf("%s is wanted twice", name)
	}
	v, err := style.ParseLength(text)
	if err == nil && !(v*1000 >= low && v*1000 <= high) {
		err = fmt.Errorf("%s %s, want %g–%g mm", name, text, low, high)
	}
	return v * 1000, err
}

// miss is how far a cut is from a want.
type miss struct {
	figure figure
	want   float64
	got    float64 // mean over the placings
	near   float64
}

// off is how far, in the units of the figure; NaN if there is nothing.
func (m miss) off() float64 { return m.got - m.want }

// met reports whether the cut counts as what was wanted.
func (m miss) met() bool { return math.Abs(m.off()) <= m.near }

// misses holds a result against the want.
func (w want) misses(c caseResult) []miss {
	var out []miss
	for _, x := range []miss{
		{dropFigure, w.drop, 0, dropNear}, {countFigure, w.folds, 0, foldsNear}, {depthFigure, w.depth, 0, depthNear},
	} {
		if math.IsNaN(x.want) {
			continue
		}
		x.got, _ = c.summary(x.figure)
		if x.figure.key == depthFigure.key && math.IsNaN(x.got) && unsettled([]caseResult{c}) < c.style.Hang.Placings {
			x.got = 0 // no fold has no depth
		}
		out = append(out, x)
	}
	return out
}

// far adds the misses up: the root of the sum of their squares, each over what
// counts as near; +Inf where a figure is missing.
func (w want) far(c caseResult) float64 {
	sum := 0.0
	for _, m := range w.misses(c) {
		if math.IsNaN(m.got) {
			return math.Inf(1)
		}
		sum += (m.off() / m.near) * (m.off() / m.near)
	}
	return math.Sqrt(sum)
}

// farEach is far for every placing by itself; NaN where it gave no result.
func (w want) farEach(c caseResult) []float64 {
	out := make([]float64, c.style.Hang.Placings)
	for _, m := range w.misses(c) {
		for k, v := range c.values(m.figure.of) {
			out[k] += (v - m.want) / m.near * (v - m.want) / m.near
		}
	}
	for k := range out {
		out[k] = math.Sqrt(out[k])
	}
	return out
}

// text says what is wanted.
func (w want) text() string {
	var out []string
	if !math.IsNaN(w.drop) {
		out = append(out, "edge drop "+dropFigure.amount(w.drop))
	}
	if !math.IsNaN(w.folds) {
		out = append(out, fmt.Sprintf("%.0f folds", w.folds))
	}
	if !math.IsNaN(w.depth) {
		out = append(out, "deepest fold "+depthFigure.amount(w.depth))
	}
	return strings.Join(out, ", ")
}
