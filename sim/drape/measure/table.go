package measure

import (
	"math"
	"slices"

	"cowl/sim/drape"
	"cowl/sim/fold"
)

// Titles in the window.
const (
	edge  = "Edge"
	cloth = "Balance and cloth"
)

// All is the table, in the order of result.json. A row is all that a figure
// needs to be in files, studies, report and window.
var All = []*Figure{
	{Key: "status", Raw: func(o *drape.Outcome) any { return o.Status }},
	{Key: "warning", Raw: func(o *drape.Outcome) any { return orNil(o.Warning) }},
	{Key: "fold_count", Name: "Folds above the bust", Digits: 1, Column: 5,
		Of:     func(o *drape.Outcome) float64 { return float64(o.FoldCount) },
		Sought: &Want{Names: []string{"folds", "fold"}, High: 6, Near: 0.5, Whole: true}},
	{Key: "count_share", Unit: Percent, Of: func(o *drape.Outcome) float64 { return o.CountShare }},
	{Key: "fold_counts", Raw: func(o *drape.Outcome) any { return o.FoldCounts }},
	{Key: "fold_count_all", Of: func(o *drape.Outcome) float64 { return float64(o.FoldCountAll) }},
	{Key: "laid", Of: func(o *drape.Outcome) float64 { return float64(o.Laid) }},
	{Key: "kept", Name: "Laid folds kept", Digits: 1, Column: 1,
		Of: func(o *drape.Outcome) float64 { return float64(o.Kept) }},
	{Key: "extra", Name: "Folds nobody laid", Digits: 1, Column: 14,
		Of: func(o *drape.Outcome) float64 { return float64(o.Extra) }},
	{Key: "tried", Raw: func(o *drape.Outcome) any { return triedJSON(o.Tried) }},
	{Key: "edge_depth_set_mm", Raw: func(o *drape.Outcome) any { return setJSON(o) }},
	{Key: "taken_up_mm", Name: "Taken up at the cowl points", Unit: Centimetre, Digits: 1, Column: 15, Shown: some,
		Of:     func(o *drape.Outcome) float64 { return o.Taken },
		Window: Words{Under: edge, At: 1, Says: "Taken up at the cowl points", Below: "Let down at the cowl points"}},
	{Key: "shake_a", Of: func(o *drape.Outcome) float64 { return o.ShakeA }},
	{Key: "folds", Raw: func(o *drape.Outcome) any { return foldsJSON(o.Folds) }},
	{Key: "deepest_fold_mm", Name: "Deepest fold", Unit: Millimetre, Column: 2, Hidden: true, Of: deepest, Shown: some,
		Sought: &Want{Names: []string{"depth", "fold depth"}, Low: 0.005, High: 0.200, Near: 0.005}},
	{Key: "edge_drop_mm", Name: "Edge drop", Unit: Centimetre, Digits: 1, Column: 4,
		Of:     func(o *drape.Outcome) float64 { return o.EdgeDrop },
		Sought: &Want{Names: []string{"edge drop", "drop"}, High: 0.600, Near: 0.005},
		Window: Words{Under: edge, Says: "Drop below the neck points"}},
	{Key: "edge_drop_mean_mm", Unit: Centimetre, Digits: 1, Each: drops, Over: mean},
	{Key: "edge_drop_spread_mm", Unit: Centimetre, Digits: 1, Each: drops, Over: fold.Spread},
	{Key: "edge_drops_mm", Each: drops},
	{Key: "edge_below_neck_mm", Name: "Edge below the front neck point", Unit: Centimetre, Digits: 1, Column: 8,
		Of:     func(o *drape.Outcome) float64 { return o.EdgeBelowNeck },
		Window: Words{Under: edge, Says: "Below the front neck point", Below: "Above the front neck point"}},
	{Key: "stand_off_mm", Name: "Stand-off", Unit: Millimetre, Column: 6, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return o.StandOff },
		Report: Words{Under: "Stand-off", Says: "edge %s off the form"}, Window: Words{Under: edge,
			Says: "Stands off the form by"}},
	{Key: "forward_mm", Name: "Reach ahead of the form", Unit: Centimetre, Digits: 1, Column: 3, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return o.Forward },
		Report: Words{Under: "Stand-off", Says: "the front reaches %s ahead of the form"},
		Window: Words{Under: edge, Says: "Reaches ahead of the form"}},
	{Key: "hem_front_mm", Unit: Centimetre, Digits: 1, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return hemmed(o, o.HemFront) },
		Report: Words{Under: "Hem", Says: "%s below the waist on the centre front"},
		Window: Words{Under: cloth, Says: "Hem below the waist, centre front"}},
	{Key: "hem_sides_mm", Unit: Centimetre, Digits: 1, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return hemmed(o, o.HemSides) },
		Report: Words{Under: "Hem", Says: ", %s at the side seams"}, Window: Words{Under: cloth,
			Says: "Hem below the waist, side seams"}},
	{Key: "twist_mm", Name: "Twist", Unit: Millimetre, Digits: 1, Column: 16, Shown: math.Abs,
		Of:     func(o *drape.Outcome) float64 { return o.Twist },
		Report: Words{Under: "Balance", Says: "left and right differ by %s"},
		Window: Words{Under: cloth, Says: "Left and right differ by"}},
	{Key: "drift_mm", Unit: Millimetre, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.Drift },
		Report: Words{Under: "Balance", Says: "the edge lies %s to the wearer's left",
			Below: "the edge lies %s to the wearer's right"}, Window: Words{Under: cloth,
			Says: "Edge lies to the wearer's left", Below: "Edge lies to the wearer's right"}},
	{Key: "cf_growth_percent", Name: "Centre front longer than cut", Unit: Percent, Digits: 1, Column: 11,
		Of:     func(o *drape.Outcome) float64 { return o.CFGrowth },
		Report: growth("Cloth", "centre front hangs %s than cut"), Window: Words{Under: cloth,
			Says: "Centre front against flat", Signed: true}},
	{Key: "edge_growth_percent", Unit: Percent, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.EdgeGrowth },
		Report: growth("Seams", "edge hangs %s than cut")},
	{Key: "edge_stretch_percent", Unit: Percent, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.EdgeStretch },
		Report: growth("Seams", ", at its worst %s")},
	{Key: "shoulder_growth_percent", Unit: Percent, Digits: 1,
		Of:     func(o *drape.Outcome) float64 { return o.ShoulderGrow },
		Report: growth("Seams", "shoulders %s")},
	{Key: "shoulder_stretch_percent", Unit: Percent, Digits: 1,
		Of:     func(o *drape.Outcome) float64 { return o.ShoulderMost },
		Report: growth("Seams", ", at worst %s")},
	{Key: "tape_pull_N", Unit: Gram, Shown: some, Of: func(o *drape.Outcome) float64 { return o.TapePull },
		Report: Words{Under: "Seams", Says: "stay tape carries %s at most"}},
	{Key: "wrong_side_mm2", Name: "Wrong side seen", Unit: SquareCentimetre, Digits: 1, Column: 10,
		Of:     func(o *drape.Outcome) float64 { return o.WrongSide },
		Report: Words{Under: "Cloth", At: 1, Says: "wrong side seen %s"}, Window: Words{Under: cloth, At: 1,
			Says: "Wrong side seen"}},
	{Key: "fold_radius_mm", Name: "Tightest cowl fold, radius", Unit: Millimetre, Digits: 1, Column: 9, Shown: some,
		Of:     func(o *drape.Outcome) float64 { return o.FoldRadius },
		Report: Words{Under: "Softness", Says: "tightest cowl fold turns on a radius of %s"}},
	{Key: "kinks", Of: func(o *drape.Outcome) float64 { return float64(o.Kinks) },
		Report: Words{Under: "Softness", Says: "sharp bends down the centre front: %s"}},
	{Key: "max_strain_percent", Name: "Largest change of a yarn", Unit: Percent, Digits: 1, Column: 12,
		Of:     func(o *drape.Outcome) float64 { return o.MaxStrain },
		Report: Words{Under: "Cloth", Says: "yarns change length by %s at most"},
		Window: Words{Under: cloth, Says: "Yarns change by at most"}},
	{Key: "pin_pull_N", Name: "Hardest pulled pin", Unit: Gram, Column: 7,
		Of:     func(o *drape.Outcome) float64 { return o.PinPull },
		Report: Words{Under: "Pins", Says: "the hardest pulled carries %s"},
		Window: Words{Under: cloth, At: 2, Says: "Hardest pulled pin carries"}},
	{Key: "pin_slip_mm", Unit: Millimetre, Of: func(o *drape.Outcome) float64 { return o.PinSlip },
		Report: Words{Under: "Pins", Says: "moved at most %s off the seam"},
		Window: Words{Under: cloth, At: 2, Says: "Pins moved by at most"}},
	{Key: "inside_form_mm", Of: func(o *drape.Outcome) float64 { return o.Inside }},
	{Key: "pierced", Of: func(o *drape.Outcome) float64 { return float64(o.Pierced) }},
	{Key: "lean", Raw: func(o *drape.Outcome) any { return leanJSON(o.Lean) }},
	{Key: "bent_stand_off_mm", Name: "Edge off the form, bent forward", Unit: Millimetre, Column: 17, Hidden: true,
		Of: bent(func(l *drape.Lean) float64 { return l.Bent.StandOff })},
	{Key: "bent_opening_mm2", Name: "Open between edge and form, bent forward", Unit: SquareCentimetre, Column: 18,
		Hidden: true, Of: bent(func(l *drape.Lean) float64 { return l.Bent.Opening })},
	{Key: "kept_again", Name: "Laid folds there, upright again", Digits: 1, Column: 19, Hidden: true,
		Of: bent(func(l *drape.Lean) float64 { return float64(l.Back.Kept) })},
	{Key: "coarser", Raw: func(o *drape.Outcome) any { return coarserJSON(o.Coarser) }},
	{Key: "residual", Unit: Percent, Digits: 2, Of: func(o *drape.Outcome) float64 { return o.Residual }},
	{Key: "energy_mJ", Of: func(o *drape.Outcome) float64 { return o.Energy }},
	{Key: "energy_total_mJ", Of: func(o *drape.Outcome) float64 { return o.EnergyAll }},
	{Key: "shear_share", Name: "Share of shear in the stored energy", Digits: 2, Column: 13,
		Of: func(o *drape.Outcome) float64 { return o.ShearShare }},
	{Key: "nodes", Of: func(o *drape.Outcome) float64 { return float64(o.Nodes) }},
	{Key: "spacing_mm", Unit: Lattice, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.Spacing }},
	{Key: "iterations", Of: func(o *drape.Outcome) float64 { return float64(o.Iterations) }},
	{Key: "seconds", Of: func(o *drape.Outcome) float64 { return o.Seconds }},
	{Key: "placings", Of: func(o *drape.Outcome) float64 { return float64(o.Placings) }},
	{Key: "seed", Raw: func(o *drape.Outcome) any { return o.Seed }},
	{Key: "fabric", Raw: func(o *drape.Outcome) any { return o.Fabric }},
	{Key: "extension_mm", Unit: Centimetre, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.Extension }},
	{Key: "half_edge_mm", Of: func(o *drape.Outcome) float64 { return o.HalfEdge }},
	{Key: "grain_deg", Unit: Degree, Of: func(o *drape.Outcome) float64 { return o.Grain }},
	{Key: "cowl_point_mm", Unit: Centimetre, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.CowlPoint }},
	{Key: "facing_mm", Unit: Centimetre, Digits: 1, Of: func(o *drape.Outcome) float64 { return o.Facing }},
	{Key: "hem_mm", Of: func(o *drape.Outcome) float64 { return hemmed(o, o.Hem) }},
	{Key: "free", Raw: func(o *drape.Outcome) any { return o.Free }},
}

// growth tells a change of length.
func growth(under, says string) Words {
	return Words{Under: under, Says: worded(says, "longer"), Below: worded(says, "shorter")}
}

// some turns the 0 that stands for none into NaN.
func some(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}

// hemmed is v, or NaN where the front ends at the waist.
func hemmed(o *drape.Outcome, v float64) float64 {
	if o.Hem == 0 {
		return math.NaN()
	}
	return v
}

func orNil(text string) any {
	if text == "" {
		return nil
	}
	return text
}

// setJSON is the depth that the edge was set to; nil: it hangs as it fell.
func setJSON(o *drape.Outcome) any {
	if !o.SetEdge {
		return nil
	}
	return Millimetre.From(o.EdgeDepth)
}

func drops(o *drape.Outcome) []float64 { return o.EdgeDrops }

func mean(v []float64) float64 {
	m := 0.0
	for _, x := range v {
		m += x / float64(len(v))
	}
	return m
}

// Leading is how many columns of a study are on the sheet and compared.
const Leading = 7

// Columns are the figures of studies, in their order.
var Columns = columns()

func columns() []*Figure {
	var out []*Figure
	for _, f := range All {
		if f.Column > 0 {
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b *Figure) int { return a.Column - b.Column })
	return out
}

// Named returns the figure of a key; it panics where there is none.
func Named(key string) *Figure {
	for _, f := range All {
		if f.Key == key {
			return f
		}
	}
	panic("measure: no figure " + key)
}
