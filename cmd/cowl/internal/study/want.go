package study

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Want is what seek is asked for: figures with their values in the unit of
// files.
type Want map[*measure.Figure]float64

const wantForm = `want it like "edge drop 12cm, folds 3, depth 25mm"`

// ParseWant reads a list of wants.
func ParseWant(text string) (Want, error) {
	w := Want{}
	for _, part := range strings.Split(text, ",") {
		words := strings.Fields(part)
		if len(words) < 2 {
			return w, fmt.Errorf("--want: %q is no want: %s", strings.TrimSpace(part), wantForm)
		}
		name, value := strings.ToLower(strings.Join(words[:len(words)-1], " ")), words[len(words)-1]
		k := slices.IndexFunc(measure.Columns, func(f *measure.Figure) bool {
			return f.Sought != nil && slices.Contains(f.Sought.Names, name)
		})
		if k < 0 {
			return w, fmt.Errorf("--want: %q is not known: %s", name, wantForm)
		}
		f := measure.Columns[k]
		v, err := wanted(f, name, value)
		if first, twice := w[f]; twice && err == nil {
			err = fmt.Errorf("%s and %s: %s is wanted twice, want it once", wantedOf(f, first), wantedOf(f, v),
				strings.ToLower(f.Name))
		}
		if err != nil {
			return w, fmt.Errorf("--want: %w", err)
		}
		w[f] = v
	}
	return w, nil
}

// wanted reads the value of a figure: a whole number or a length within a range.
func wanted(f *measure.Figure, name, text string) (float64, error) {
	low, high := f.In(f.Sought.Low), f.In(f.Sought.High)
	if f.Sought.Whole {
		v, err := parseNumber(text)
		if err == nil && !(v == math.Trunc(v) && v >= low && v <= high) {
			err = fmt.Errorf("%s %s, want a whole number from %g to %g", name, text, low, high)
		}
		return v, err
	}
	v, err := style.ParseLength(text)
	if err == nil && !(f.In(v) >= low && f.In(v) <= high) {
		err = fmt.Errorf("%s %s, want %s to %s", name, text, f.Amount(low), f.Amount(high))
	}
	return f.In(v), err
}

// against refuses wants that cannot be met together, and what the style holds that takes
// away what would have to be changed to meet one; both are named.
func (w Want) against(s style.Style) error {
	n, folds := w[countFigure]
	if depth, ok := w[depthFigure]; ok && folds && n == 0 {
		return fmt.Errorf("--want: %s and %s contradict each other: no fold has no depth; leave one out",
			wantedOf(countFigure, n), wantedOf(depthFigure, depth))
	}
	if folds && s.Hang.Folds != drape.Auto && s.Hang.Folds != int(n) {
		return fmt.Errorf("--want: %s, and folds %d are to be laid by style or --folds: they contradict each other, for "+
			"the hand lays what is wanted; leave one out", wantedOf(countFigure, n), s.Hang.Folds)
	}
	if drop, ok := w[dropFigure]; ok && s.Hang.EdgeDepth != draft.Auto {
		return fmt.Errorf("--want: %s, and edge depth %s of style or --edge-depth: both place the edge, the second "+
			"whatever the cut; leave one out", wantedOf(dropFigure, drop), say.Length(s.Hang.EdgeDepth))
	}
	return nil
}

// wantedOf says one want.
func wantedOf(f *measure.Figure, v float64) string { return Want{f: v}.text() }

// value is what is wanted of a figure; NaN: not asked.
func (w Want) value(f *measure.Figure) float64 {
	if v, ok := w[f]; ok {
		return v
	}
	return math.NaN()
}

// nearOf is how far a figure may be off to be called met, in the unit of files.
func nearOf(f *measure.Figure) float64 { return f.In(f.Sought.Near) }

// miss is how far a cut is from a want.
type miss struct {
	figure *measure.Figure
	want   float64
	got    float64 // mean over the placings
	near   float64
}

// off is how far, in the units of the figure; NaN if there is nothing.
func (m miss) off() float64 { return m.got - m.want }

// met reports whether the cut counts as what was wanted.
func (m miss) met() bool { return math.Abs(m.off()) <= m.near }

// misses holds a result against the want.
func (w Want) misses(c caseResult) []miss {
	var out []miss
	for _, f := range measure.Columns {
		v, asked := w[f]
		if !asked {
			continue
		}
		x := miss{figure: f, want: v, near: nearOf(f)}
		x.got, _ = c.summary(x.figure)
		if x.figure == depthFigure && math.IsNaN(x.got) && unsettled([]caseResult{c}) < c.style.Hang.Placings {
			x.got = 0 // no fold has no depth
		}
		out = append(out, x)
	}
	return out
}

// far adds the misses up: the root of the sum of their squares, each over what
// counts as near; +Inf where a figure is missing.
func (w Want) far(c caseResult) float64 {
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
func (w Want) farEach(c caseResult) []float64 {
	out := make([]float64, c.style.Hang.Placings)
	for _, m := range w.misses(c) {
		for k, v := range c.values(m.figure.Value) {
			out[k] += (v - m.want) / m.near * (v - m.want) / m.near
		}
	}
	for k := range out {
		out[k] = math.Sqrt(out[k])
	}
	return out
}

// text says what is wanted, as it is spoken.
func (w Want) text() string { return w.textIn(ruler.Spoken()) }

// textIn is text in the units of a reader.
func (w Want) textIn(u ruler.Units) string {
	var out []string
	for _, f := range measure.Columns {
		switch v, asked := w[f]; {
		case asked && f.Sought.Whole:
			out = append(out, fmt.Sprintf("%.0f %s", v, strings.ToLower(f.Name)))
		case asked:
			out = append(out, strings.ToLower(f.Name)+" "+f.AmountIn(u, v))
		}
	}
	return strings.Join(out, ", ")
}
