package materials

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"cowl/materials/scalar"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// Interval is a range a value lies in, SI. The zero Interval is none.
type Interval struct{ Low, High float64 }

// Known reports whether there is a range.
func (i Interval) Known() bool { return i != Interval{} }

// Ranges holds the range of every field, indexed by Field.
type Ranges [numFields]Interval

// Spreads holds one standard uncertainty of every field, SI, indexed by Field;
// 0 where none is known.
type Spreads [numFields]float64

// RangeInUnits returns the range of q in f in Unit; both zero if there is none.
func (q Field) RangeInUnits(f Fabric) Interval {
	i := f.Range[q]
	return Interval{toUnits(i.Low, quantities[q].scale), toUnits(i.High, quantities[q].scale)}
}

// SpreadInUnits returns the spread of q in f in Unit; 0 if none is known.
func (q Field) SpreadInUnits(f Fabric) float64 { return toUnits(f.Spread[q], quantities[q].scale) }

// toUnits divides and rounds to 12 figures, as inUnits does.
func toUnits(si, scale float64) float64 {
	v, _ := strconv.ParseFloat(figures(si/scale), 64)
	return v
}

// limits reads ranges or spreads of values the file gives.
func (r *reader) limits(f *Fabric, e entry) {
	for _, v := range r.mapping(e.value, e.key) {
		fields := []Field{BendWarp, BendWeft}
		if v.key != keyBendMean {
			i := slices.IndexFunc(Fields(), func(q Field) bool { return q.Key() == v.key })
			if i < 0 {
				r.fail(v.line, v.key, "%s: unknown key %q%s", e.key, v.key, didYouMean(v.key, append(numberKeys(), keyBendMean)))
				continue
			}
			fields = []Field{Field(i)}
		}
		for _, q := range fields {
			r.limit(f, q, e.key, v)
		}
	}
}

// limit reads the range or the spread of q.
func (r *reader) limit(f *Fabric, q Field, what string, v entry) {
	scale := quantities[q].scale
	switch {
	case f.Basis[q].Kind == Unknown:
		r.fail(v.line, v.key, "%s: %s has no value in the file", what, v.key)
	case what == "range":
		low, high, ok := r.pair(v)
		f.Range[q] = Interval{low * scale, high * scale}
		if ok {
			if err := f.checkRange(q); err != nil {
				r.refuse(v.line, err)
			}
		}
	default:
		x, ok := r.float(v)
		f.Spread[q] = x * scale
		if ok {
			if err := f.checkSpread(q); err != nil {
				r.refuse(v.line, err)
			}
		}
	}
}

// pair reads [low, high].
func (r *reader) pair(e entry) (low, high float64, ok bool) {
	list, isList := e.value.(*ast.SequenceNode)
	if !isList || len(list.Values) != 2 {
		r.fail(e.line, e.key, "%s is %s, want [low, high]", e.key, scalar.Shown(e.value))
		return 0, 0, false
	}
	low, first := r.float(entry{e.key, e.line, list.Values[0]})
	high, second := r.float(entry{e.key, e.line, list.Values[1]})
	return low, high, first && second
}

// checkRanges returns what is wrong with ranges and spreads.
func (f Fabric) checkRanges() []error {
	var errs []error
	for _, q := range Fields() {
		errs = append(errs, f.checkRange(q), f.checkSpread(q))
	}
	return errs
}

// checkRange demands allowed ends on both sides of the value.
func (f Fabric) checkRange(q Field) error {
	if !f.Range[q].Known() {
		return nil
	}
	i, v := q.RangeInUnits(f), q.InUnits(f)
	for _, end := range []float64{i.Low, i.High} {
		if err := quantities[q].check(end); err != nil {
			return limit.Errorf(q.Key(), "range: %v", err)
		}
	}
	if !(i.Low <= v && v <= i.High) {
		return limit.Errorf(q.Key(), "range: %s %s–%s does not hold its value %s", q.Key(), figures(i.Low),
			withUnit(i.High, q.Unit()), q.Format(f))
	}
	return nil
}

// checkSpread demands a spread that is no larger than the largest value.
func (f Fabric) checkSpread(q Field) error {
	s := q.SpreadInUnits(f)
	if s >= 0 && s <= quantities[q].high && !math.IsNaN(s) {
		return nil
	}
	return limit.Errorf(q.Key(), "spread: %s %s, want 0–%s", q.Key(), withUnit(s, q.Unit()),
		withUnit(quantities[q].high, q.Unit()))
}

// writeLimits writes ranges and spreads where there are any.
func writeLimits(b *strings.Builder, f Fabric) {
	var ranges, spreads strings.Builder
	for _, q := range Fields() {
		if f.Range[q].Known() {
			i := q.RangeInUnits(f)
			fmt.Fprintf(&ranges, "  %s: [%s, %s]\n", q.Key(), figures(i.Low), figures(i.High))
		}
		if s := q.SpreadInUnits(f); s != 0 {
			fmt.Fprintf(&spreads, "  %s: %s\n", q.Key(), figures(s))
		}
	}
	if ranges.Len() > 0 {
		b.WriteString("range:\n" + ranges.String())
	}
	if spreads.Len() > 0 {
		b.WriteString("spread:\n" + spreads.String())
	}
}
