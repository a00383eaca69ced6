package toile

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/mesh/draft"
)

// Kind is a sort of figure.
type Kind int

// The kinds, in the order in which they are told.
const (
	Kept Kind = iota
	Drop
	Depth
	Place
	Reach
	kinds
)

// kindNames name them; all but Kept are lengths.
var kindNames = [kinds]string{"Laid folds kept", "Edge drop", "Depth of folds", "Place of folds",
	"Reach ahead of the form"}

// String returns the name for people.
func (k Kind) String() string { return kindNames[k] }

// figure is one figure of a reading; fold counts from 0, of Depth and Place.
type figure struct {
	kind Kind
	fold int
}

// figures are all that a reading may have.
func figures() []figure {
	out := []figure{{Kept, 0}, {Drop, 0}}
	for k := range MostFolds {
		out = append(out, figure{Depth, k}, figure{Place, k})
	}
	return append(out, figure{Reach, 0})
}

// name is what people call it.
func (f figure) name() string {
	switch f.kind {
	case Depth:
		return fmt.Sprintf("Depth of fold %d", f.fold+1)
	case Place:
		return fmt.Sprintf("Place of fold %d", f.fold+1)
	}
	return f.kind.String()
}

// key is what files call it; it ends in its unit.
func (f figure) key() string {
	switch f.kind {
	case Kept:
		return "kept"
	case Drop:
		return "edge_drop_mm"
	case Depth:
		return fmt.Sprintf("fold%d_depth_mm", f.fold+1)
	case Place:
		return fmt.Sprintf("fold%d_cf_mm", f.fold+1)
	}
	return "forward_mm"
}

// of takes the figure off a reading; NaN: it has none.
func (f figure) of(r Reading) float64 {
	switch {
	case f.kind == Kept:
		return r.Kept
	case f.kind == Drop:
		return r.Drop
	case f.kind == Reach:
		return r.Reach
	case f.fold >= len(r.Folds):
		return math.NaN()
	case f.kind == Depth:
		return r.Folds[f.fold].Depth
	}
	return r.Folds[f.fold].At
}

// inFiles is a value in the unit of files, mm.
func (f figure) inFiles(v float64) float64 {
	if f.kind == Kept {
		return v
	}
	return v * 1000
}

// said writes a value for people: in the unit that is spoken, or a number of folds.
func (k Kind) said(v float64) string {
	switch {
	case math.IsNaN(v):
		return "–"
	case k == Kept && v == math.Trunc(v):
		return plain(v, 0)
	case k == Kept:
		return plain(v, 1)
	}
	return plain(say.InUnit(v))
}

// plain writes a number with a true minus and never −0.
func plain(v float64, digits int) string {
	text := fmt.Sprintf("%.*f", digits, math.Abs(v))
	if v < 0 && math.Abs(v) >= 0.5*math.Pow(10, -float64(digits)) {
		return "−" + text
	}
	return text
}

// held is a toile with its prediction.
type held struct {
	Toile
	study.Hung
	worn  draft.Side
	hands []Reading // of the hands that gave a result, their folds those of the toile
}

// hold puts a prediction beside a toile, which is worn at a side.
func hold(t Toile, worn draft.Side, h study.Hung) held {
	out := held{Toile: t, Hung: h, worn: worn}
	for _, o := range h.Each {
		if o == nil {
			continue
		}
		r := readingOf(o)
		r.Folds = alongside(t.Folds, r.Folds)
		out.hands = append(out.hands, r)
	}
	return out
}

// predicted is mean and deviation of a figure over the hands that have it; NaN: none has.
func (h held) predicted(f figure) (mean, deviation float64) {
	var v []float64
	for _, r := range h.hands {
		v = append(v, f.of(r))
	}
	return stats.Summary(v)
}

// off is prediction less toile; NaN where one of them is missing.
func (h held) off(f figure) float64 {
	mean, _ := h.predicted(f)
	return mean - f.of(h.Reading)
}

// agreement is how far the predictions of a kind of figure are from the toiles.
type agreement struct {
	kind         Kind
	each         []float64 // prediction less toile
	bias, spread float64   // their mean and standard deviation; bias NaN: there are none
}

// agreements sums up all toiles, one a kind.
func agreements(all []held) []agreement {
	out := make([]agreement, kinds)
	for k := range out {
		out[k].kind = Kind(k)
	}
	for _, h := range all {
		for _, f := range figures() {
			if v := h.off(f); !math.IsNaN(v) {
				out[f.kind].each = append(out[f.kind].each, v)
			}
		}
	}
	for k := range out {
		out[k].bias, out[k].spread = stats.Summary(out[k].each)
	}
	return out
}

// sideKey is the side of a toile as files have it; empty: the front.
func (h held) sideKey() string {
	if h.worn == draft.AtFront {
		return ""
	}
	return h.worn.String()
}
