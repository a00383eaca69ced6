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
	raw("status", func(o *drape.Outcome) any { return o.Status }),
	raw("warning", func(o *drape.Outcome) any { return orNil(o.Warning) }),
	{
		Quantity: Quantity{Key: "fold_count", Name: "Folds", Digits: 1}, Column: 2,
		Of:     func(o *drape.Outcome) float64 { return float64(o.FoldCount) },
		Sought: &Want{Names: []string{"folds", "fold"}, High: 6, Near: 0.5, Whole: true},
	},
	{Quantity: Quantity{Key: "count_share", Unit: Percent}, Of: func(o *drape.Outcome) float64 { return o.CountShare }},
	raw("fold_counts", func(o *drape.Outcome) any { return o.FoldCounts }),
	raw("folds", func(o *drape.Outcome) any { return foldObjects(o.Folds) }),
	{
		Quantity: Quantity{"deepest_fold_mm", "Deepest fold", Millimetre, 0}, Column: 3, Hidden: true,
		Of: func(o *drape.Outcome) float64 { return deepest(o.Folds) }, Shown: some,
		Sought: &Want{Names: []string{"depth", "fold depth"}, Low: 0.005, High: 0.200, Near: 0.005},
	},
	{
		Quantity: Quantity{"edge_drop_mm", "Edge drop", Centimetre, 1}, Column: 1,
		Of:     func(o *drape.Outcome) float64 { return o.EdgeDrop },
		Sought: &Want{Names: []string{"edge drop", "drop"}, High: 0.600, Near: 0.005}, // patterns are cut to half a centimetre
		Window: Words{Under: edge, Says: "Drop below the neck points"},
	},
	{Quantity: Quantity{Key: "edge_drop_mean_mm", Unit: Centimetre, Digits: 1}, Each: drops, Over: mean},
	{Quantity: Quantity{Key: "edge_drop_spread_mm", Unit: Centimetre, Digits: 1}, Each: drops, Over: fold.Spread},
	{Quantity: Quantity{Key: "edge_drops_mm"}, Each: drops},
	{
		Quantity: Quantity{"edge_below_neck_mm", "Edge below the front neck point", Centimetre, 1}, Column: 6,
		Of:     func(o *drape.Outcome) float64 { return o.EdgeBelowNeck },
		Window: Words{Under: edge, Says: "Below the front neck point", Below: "Above the front neck point"},
	},
	{
		Quantity: Quantity{"stand_off_mm", "Stand-off", Millimetre, 0}, Column: 4, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return o.StandOff },
		Report: Words{Under: "Stand-off", Says: "edge %s off the form"},
		Window: Words{Under: edge, Says: "Stands off the form by"},
	},
	{
		Quantity: Quantity{"forward_mm", "Reach ahead of the form", Centimetre, 1}, Column: 7, OnForm: true,
		Of:     func(o *drape.Outcome) float64 { return o.Forward },
		Report: Words{Under: "Stand-off", Says: "the front reaches %s ahead of the form"},
		Window: Words{Under: edge, Says: "Reaches ahead of the form"},
	},
	{
		Quantity: Quantity{"twist_mm", "Twist", Millimetre, 1}, Column: 5, Shown: math.Abs,
		Of:     func(o *drape.Outcome) float64 { return o.Twist },
		Report: Words{Under: "Balance", Says: "left and right differ by %s"},
		Window: Words{Under: cloth, Says: "Left and right differ by"},
	},
	{
		Quantity: Quantity{Key: "drift_mm", Unit: Millimetre, Digits: 1},
		Of:       func(o *drape.Outcome) float64 { return o.Drift },
		Report:   Words{Under: "Balance", Says: "the edge lies %s to the wearer's left", Below: "the edge lies %s to the wearer's right"},
		Window:   Words{Under: cloth, Says: "Edge lies to the wearer's left", Below: "Edge lies to the wearer's right"},
	},
	{
		Quantity: Quantity{"cf_growth_percent", "Centre front longer than cut", Percent, 1}, Column: 10,
		Of:     func(o *drape.Outcome) float64 { return o.CFGrowth },
		Report: growth("Cloth", "centre front hangs %s than cut"),
		Window: Words{Under: cloth, Says: "Centre front against flat", Signed: true},
	},
	{
		Quantity: Quantity{Key: "edge_growth_percent", Unit: Percent, Digits: 1},
		Of:       func(o *drape.Outcome) float64 { return o.EdgeGrowth },
		Report:   growth("Seams", "edge hangs %s than cut"),
	},
	{
		Quantity: Quantity{Key: "edge_stretch_percent", Unit: Percent, Digits: 1},
		Of:       func(o *drape.Outcome) float64 { return o.EdgeStretch },
		Report:   growth("Seams", ", at worst 3 cm of it %s"),
	},
	{
		Quantity: Quantity{Key: "shoulder_growth_percent", Unit: Percent, Digits: 1},
		Of:       func(o *drape.Outcome) float64 { return o.ShoulderGrow },
		Report:   growth("Seams", "shoulders %s"),
	},
	{
		Quantity: Quantity{Key: "shoulder_stretch_percent", Unit: Percent, Digits: 1},
		Of:       func(o *drape.Outcome) float64 { return o.ShoulderMost },
		Report:   growth("Seams", ", at worst %s"),
	},
	{
		Quantity: Quantity{Key: "tape_pull_N", Unit: Gram}, Shown: some,
		Of:     func(o *drape.Outcome) float64 { return o.TapePull },
		Report: Words{Under: "Seams", Says: "stay tape carries %s at most"},
	},
	{
		Quantity: Quantity{"wrong_side_mm2", "Wrong side seen", SquareCentimetre, 1}, Column: 9,
		Of:     func(o *drape.Outcome) float64 { return o.WrongSide },
		Report: Words{Under: "Cloth", At: 1, Says: "wrong side seen %s"},
		Window: Words{Under: cloth, At: 1, Says: "Wrong side seen"},
	},
	{
		Quantity: Quantity{"fold_radius_mm", "Tightest cowl fold, radius", Millimetre, 1}, Column: 8, Shown: some,
		Of:     func(o *drape.Outcome) float64 { return o.FoldRadius },
		Report: Words{Under: "Softness", Says: "tightest cowl fold turns on a radius of %s"},
	},
	{
		Quantity: Quantity{Key: "kinks"}, Of: func(o *drape.Outcome) float64 { return float64(o.Kinks) },
		Report: Words{Under: "Softness", Says: "sharp bends down the centre front: %s"},
	},
	{
		Quantity: Quantity{"max_strain_percent", "Largest change of a yarn", Percent, 1}, Column: 11,
		Of:     func(o *drape.Outcome) float64 { return o.MaxStrain },
		Report: Words{Under: "Cloth", Says: "yarns change length by %s at most"},
		Window: Words{Under: cloth, Says: "Yarns change by at most"},
	},
	{
		Quantity: Quantity{Key: "pin_pull_N", Unit: Gram}, Of: func(o *drape.Outcome) float64 { return o.PinPull },
		Report: Words{Under: "Pins", Says: "the hardest pulled carries %s"},
		Window: Words{Under: cloth, At: 2, Says: "Hardest pulled pin carries"},
	},
	{
		Quantity: Quantity{Key: "pin_slip_mm", Unit: Millimetre}, Of: func(o *drape.Outcome) float64 { return o.PinSlip },
		Report: Words{Under: "Pins", Says: "moved at most %s off the seam"},
		Window: Words{Under: cloth, At: 2, Says: "Pins moved by at most"},
	},
	{Quantity: Quantity{Key: "inside_form_mm"}, Of: func(o *drape.Outcome) float64 { return o.Inside }},
	number("pierced", func(o *drape.Outcome) float64 { return float64(o.Pierced) }),
	{Quantity: Quantity{Key: "residual", Unit: Percent, Digits: 2}, Of: func(o *drape.Outcome) float64 { return o.Residual }},
	number("energy_mJ", func(o *drape.Outcome) float64 { return o.Energy }),
	{Quantity: Quantity{Key: "shear_share", Name: "Share of shear in the stored energy", Digits: 2}, Column: 12, Of: func(o *drape.Outcome) float64 { return o.ShearShare }},
	number("nodes", func(o *drape.Outcome) float64 { return float64(o.Nodes) }),
	{Quantity: Quantity{Key: "spacing_mm", Unit: Millimetre, Digits: 1}, Of: func(o *drape.Outcome) float64 { return o.Spacing }},
	number("iterations", func(o *drape.Outcome) float64 { return float64(o.Iterations) }),
	number("seconds", func(o *drape.Outcome) float64 { return o.Seconds }),
	number("placings", func(o *drape.Outcome) float64 { return float64(o.Placings) }),
	raw("seed", func(o *drape.Outcome) any { return o.Seed }),
	raw("fabric", func(o *drape.Outcome) any { return o.Fabric }),
	{Quantity: Quantity{Key: "extension_mm", Unit: Centimetre, Digits: 1}, Of: func(o *drape.Outcome) float64 { return o.Extension }},
	number("half_edge_mm", func(o *drape.Outcome) float64 { return o.HalfEdge }),
	{Quantity: Quantity{Key: "grain_deg", Unit: Degree}, Of: func(o *drape.Outcome) float64 { return o.Grain }},
	{Quantity: Quantity{Key: "cowl_point_mm", Unit: Centimetre, Digits: 1}, Of: func(o *drape.Outcome) float64 { return o.CowlPoint }},
	{Quantity: Quantity{Key: "facing_mm", Unit: Centimetre, Digits: 1}, Of: func(o *drape.Outcome) float64 { return o.Facing }},
	raw("free", func(o *drape.Outcome) any { return o.Free }),
}

// raw is a row of what is no measure.
func raw(key string, of func(*drape.Outcome) any) *Figure {
	return &Figure{Quantity: Quantity{Key: key}, Raw: of}
}

// number is a row for files alone.
func number(key string, of func(*drape.Outcome) float64) *Figure {
	return &Figure{Quantity: Quantity{Key: key}, Of: of}
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

func orNil(text string) any {
	if text == "" {
		return nil
	}
	return text
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
const Leading = 5

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
