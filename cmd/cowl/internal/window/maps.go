package window

import (
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh/limit"
	"cowl/sim/drape"
)

// mapKind is what the cloth shows.
type mapKind int

// What can be shown on the cloth.
const (
	mapOwn mapKind = iota
	mapPlain
	mapYarns
	mapStretch
	mapShear
	mapClear
)

// mapChoice is a kind of map with its words.
type mapChoice struct {
	kind      mapKind
	name      string
	help      limit.Words
	legend    string
	low, high float64 // SI
	ramp      stage.Ramp
	value     func(*drape.Frame) []float64
	label     func(Units, float64) string
}

// maps lists them in the order offered. Both ramps change evenly in lightness,
// so they are told apart without colour.
var maps = []mapChoice{
	{kind: mapOwn, name: "As the cloth looks", help: limit.Say("Colour, sheen and sheerness of the fabric: invented, " +
		"to tell cloths apart; never measured.")},
	{kind: mapPlain, name: "Plain cloth", help: limit.Say("As a toile, the wrong side darker.")},
	{kind: mapYarns, name: "Grain lines", help: limit.Say("Every %.0f a warp yarn (dark) and a weft yarn (light), to "+
		"see where the grain runs.", limit.Metres(0.02))},
	{
		kind: mapStretch, name: "Stretch", legend: "yarns eased or stretched", ramp: twoWays, low: -0.03, high: 0.03,
		help:  limit.Say("How far the yarns are stretched (orange) or eased (blue), in percent."),
		value: func(f *drape.Frame) []float64 { return f.Strain },
		label: func(_ Units, v float64) string { return signed(v*100, "%.0f", " %") },
	},
	{
		kind: mapShear, name: "Shear", legend: "turn of the yarns to each other", ramp: twoWays, low: -20 * degree,
		high:  20 * degree,
		help:  limit.Say("By how many degrees warp and weft have left the right angle: that is how bias moves."),
		value: func(f *drape.Frame) []float64 { return f.Shear },
		label: func(_ Units, v float64) string { return signed(v/degree, "%.0f", "°") },
	},
	{
		kind: mapClear, name: "Distance from the form", legend: "distance from the form", ramp: oneWay, low: 0, high: 0.08,
		help:  limit.Say("How far the cloth stands off the form."),
		value: func(f *drape.Frame) []float64 { return f.Clear },
		label: func(u Units, v float64) string { return u.Length(v) },
	},
}

const degree = math.Pi / 180

// Yarn colours: dark blue for the warp, light orange for the weft. They differ
// in lightness as well.
var yarnColours = stage.Yarns{Warp: color.RGBA{0x1B, 0x3A, 0x5C, 0xFF}, Weft: color.RGBA{0xD9, 0x82, 0x2B, 0xFF}}

// oneWay runs from dark blue over grey to light yellow, rising evenly in
// lightness, which every kind of colour vision sees alike; after the idea of
// J. Nuñez, C. Anderton, R. Renslow, PLoS ONE 13 (2018) e0199239.
var oneWay = stage.Ramp{
	{0x0B, 0x22, 0x4A, 0xFF}, {0x1E, 0x38, 0x62, 0xFF}, {0x3C, 0x4D, 0x6C, 0xFF}, {0x57, 0x62, 0x74, 0xFF},
	{0x72, 0x77, 0x78, 0xFF}, {0x8F, 0x8E, 0x76, 0xFF}, {0xB0, 0xA7, 0x6C, 0xFF}, {0xD2, 0xC1, 0x59, 0xFF},
	{0xF5, 0xDD, 0x42, 0xFF},
}

// twoWays runs from blue over near white to orange: a pair that red-green blind
// eyes tell apart (B. Wong, Nature Methods 8 (2011) 441), darkest at both ends.
var twoWays = stage.Ramp{
	{0x0F, 0x4C, 0x81, 0xFF}, {0x3E, 0x78, 0xA8, 0xFF}, {0x7C, 0xA6, 0xC8, 0xFF}, {0xB9, 0xCF, 0xE0, 0xFF},
	{0xF2, 0xF1, 0xEE, 0xFF}, {0xF0, 0xCF, 0xA5, 0xFF}, {0xE0, 0xA2, 0x5C, 0xFF}, {0xC4, 0x73, 0x22, 0xFF},
	{0x93, 0x4B, 0x06, 0xFF},
}
