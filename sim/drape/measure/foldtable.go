package measure

import (
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// Folds are the figures of a fold in result.json.
var Folds = []*FoldFigure{
	Depth, Down, Height,
	{Key: "radius_mm", Of: func(f *drape.Fold) float64 { return f.Radius }},
	{Key: "zone", Raw: func(f *drape.Fold) any { return f.Zone }},
	{Key: "kept", Raw: func(f *drape.Fold) any { return f.Kept }},
	Wide,
	{Key: LaidDown.Key, Raw: func(f *drape.Fold) any { return laidJSON(f) }},
	{Key: "survives_a", Raw: func(f *drape.Fold) any { return survivesJSON(f) }},
}

// Figures of a fold that people are told.
var (
	Depth = &FoldFigure{Key: "depth_mm", Unit: Millimetre, Of: func(f *drape.Fold) float64 { return f.Depth }}
	// the flat CF, from the edge
	Down   = &FoldFigure{Key: "cf_mm", Unit: Centimetre, Digits: 1, Of: func(f *drape.Fold) float64 { return f.CF }}
	Height = &FoldFigure{Key: "height_mm", Unit: Centimetre, Digits: 1,
		Of: func(f *drape.Fold) float64 { return f.Height }}
	Wide = &FoldFigure{Key: "width_mm", Unit: Centimetre, Digits: 1,
		Of: func(f *drape.Fold) float64 { return f.Width.Width() }}
	// 0: nobody laid it
	LaidDown = &FoldFigure{Key: "laid_cf_mm", Unit: Centimetre, Digits: 1,
		Of: func(f *drape.Fold) float64 { return f.LaidCF }}
)

// deepest returns the depth of the deepest fold above the bust, m; 0: none.
func deepest(o *drape.Outcome) float64 {
	most := 0.0
	for _, f := range o.Folds {
		if f.Zone == fold.AboveBust {
			most = max(most, f.Depth)
		}
	}
	return most
}

// survivesJSON is the hardest shake that a fold survives; nil: it was not tried.
func survivesJSON(f *drape.Fold) any {
	if f.Survives == drape.NotShaken {
		return nil
	}
	return f.Survives
}

// laidJSON is where a fold was laid; nil: nobody laid it.
func laidJSON(f *drape.Fold) any {
	if !f.Kept {
		return nil
	}
	return LaidDown.Value(f)
}
