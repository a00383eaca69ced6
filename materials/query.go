package materials

import (
	"cmp"
	"slices"
	"strings"
)

// Query picks fabrics of a library. The zero Query picks all.
type Query struct {
	Words  string   // each must occur in name, title, fibre or weave; case does not matter
	Weight Interval // kg/m²; a fabric known as a range counts if the two meet
	Length Interval // GravityLength, m
	Limp   bool     // limpest first, instead of the order of list
}

// Pick returns those of list that fit.
func (q Query) Pick(list []Fabric) []Fabric {
	var out []Fabric
	for _, f := range list {
		c := f.GravityLength()
		if q.named(f) && q.Weight.meets(f.extent(Weight)) && q.Length.meets(Interval{c, c}) {
			out = append(out, f)
		}
	}
	if q.Limp {
		slices.SortStableFunc(out, func(a, b Fabric) int { return cmp.Compare(a.GravityLength(), b.GravityLength()) })
	}
	return out
}

// named reports whether every word occurs in f.
func (q Query) named(f Fabric) bool {
	text := strings.ToLower(strings.Join([]string{f.Name, f.Title, f.Fibre, f.Weave}, " "))
	for _, w := range strings.Fields(strings.ToLower(q.Words)) {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// extent returns the range of a field, its value at both ends if there is none.
func (f Fabric) extent(q Field) Interval {
	if f.Range[q].Known() {
		return f.Range[q]
	}
	return Interval{q.Value(f), q.Value(f)}
}

// meets reports whether two ranges share a value; the zero i meets all.
func (i Interval) meets(o Interval) bool {
	const slack = 1e-9 // a bound typed as the value itself
	return !i.Known() || i.Low <= o.High*(1+slack) && o.Low <= i.High*(1+slack)
}
