package measure

import "cowl/sim/fold"

// FoldFigure is one measure of a fold.
type FoldFigure struct {
	Quantity
	Of func(fold.Fold) float64 // SI
}

// Folds are the figures of a fold in result.json, which the zone follows.
var Folds = []*FoldFigure{Depth, Down, Height, {Quantity{Key: "radius_mm"}, func(f fold.Fold) float64 { return f.Radius }}}

// Figures of a fold that people are told.
var (
	Depth  = &FoldFigure{Quantity{Key: "depth_mm", Unit: Millimetre}, func(f fold.Fold) float64 { return f.Depth }}
	Down   = &FoldFigure{Quantity{Key: "cf_mm", Unit: Centimetre, Digits: 1}, func(f fold.Fold) float64 { return f.CF }} // the flat CF, from the edge
	Height = &FoldFigure{Quantity{Key: "height_mm", Unit: Centimetre, Digits: 1}, func(f fold.Fold) float64 { return f.Height }}
)

// Amount writes the figure of a fold for people.
func (q *FoldFigure) Amount(f fold.Fold) string { return q.Quantity.Amount(q.In(q.Of(f))) }

// foldObjects are folds as result.json has them.
func foldObjects(folds []fold.Fold) []object {
	out := []object{}
	for _, f := range folds {
		var o object
		for _, q := range Folds {
			o = append(o, entry{q.Key, q.In(q.Of(f))})
		}
		out = append(out, append(o, entry{"zone", f.Zone}))
	}
	return out
}

// deepest returns the depth of the deepest fold above the bust, m; 0: none.
func deepest(folds []fold.Fold) float64 {
	most := 0.0
	for _, f := range folds {
		if f.Zone == fold.AboveBust {
			most = max(most, f.Depth)
		}
	}
	return most
}
