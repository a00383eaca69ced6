package measure

import (
	"encoding/json"
	"math"
	"strconv"

	"cowl/sim/drape"
)

// JSON writes an outcome as result.json has it, and after it the fields of
// more, a struct or nil.
func JSON(o *drape.Outcome, more any) ([]byte, error) {
	head, err := object(All, o)
	if err != nil || more == nil {
		return head, err
	}
	rest, err := json.Marshal(more)
	if err != nil || len(rest) <= len("{}") {
		return head, err
	}
	return append(append(head[:len(head)-1], ','), rest[1:]...), nil
}

// object writes the measures of one thing, in the order of their table.
func object[T any](all []*Measure[T], of *T) ([]byte, error) {
	b := []byte{'{'}
	for _, m := range all {
		v := m.inFile(of)
		if v == nil {
			continue
		}
		text, err := json.Marshal(v)
		if err != nil {
			return nil, err
		}
		if len(b) > 1 {
			b = append(b, ',')
		}
		b = append(append(strconv.AppendQuote(b, m.Key), ':'), text...)
	}
	return append(b, '}'), nil
}

// inFile is what a file holds of a measure; nil: nothing.
func (m *Measure[T]) inFile(of *T) any {
	switch {
	case m.Hidden:
		return nil
	case m.Raw != nil:
		return m.Raw(of)
	case m.Over != nil:
		return m.Value(of)
	case m.Each != nil:
		return each(m.Each(of), m.In)
	}
	if v := m.In(m.Of(of)); !math.IsNaN(v) {
		return v
	}
	return nil
}

// foldJSON is a fold as result.json has it.
type foldJSON drape.Fold

// MarshalJSON writes the figures of the fold.
func (f foldJSON) MarshalJSON() ([]byte, error) { return object(Folds, (*drape.Fold)(&f)) }

func foldsJSON(folds []drape.Fold) []foldJSON {
	out := []foldJSON{}
	for _, f := range folds {
		out = append(out, foldJSON(f))
	}
	return out
}

// tryJSON is a number of folds that was tried as result.json has it.
type tryJSON struct {
	Laid    int  `json:"laid"`
	Kept    int  `json:"kept"`
	Extra   int  `json:"extra"`
	Settled bool `json:"settled"`
}

func triedJSON(tries []drape.Try) any {
	if tries == nil {
		return nil
	}
	out := []tryJSON{}
	for _, t := range tries {
		out = append(out, tryJSON(t))
	}
	return out
}

// coarserKeys are the figures that are told of the lattice of twice the spacing.
var coarserKeys = []string{"spacing_mm", "kept", "extra", "edge_drop_mm", "forward_mm", "energy_mJ"}

// coarser is an outcome before the last halving as result.json has it.
type coarser drape.Outcome

// MarshalJSON writes the figures that halving may move.
func (c coarser) MarshalJSON() ([]byte, error) {
	all := append(figures(coarserKeys), Named("folds"))
	return object(all, (*drape.Outcome)(&c))
}

func coarserJSON(o *drape.Outcome) any {
	if o == nil {
		return nil
	}
	return coarser(*o)
}

// figures returns those of the keys.
func figures(keys []string) []*Figure {
	var out []*Figure
	for _, k := range keys {
		out = append(out, Named(k))
	}
	return out
}
