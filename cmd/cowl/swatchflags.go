package main

import (
	"fmt"
	"reflect"
	"slices"

	"cowl/materials"
)

// testFlags are the tests of a swatch that the help shows, by the keys of their
// trials; the others have a flag that is named there.
var testFlags = []flagRow{
	{group: sampleRoom, name: "square", holder: "LEN", help: "Side of the cut square that was weighed, 10.0cm."},
	{group: sampleRoom, name: "mass", holder: "MASS", help: "Mass of that square, 1.35g."},
	{group: sampleRoom, name: "weight", holder: "W", help: "Weight instead of square and mass: 135gsm, 4oz/yd2, 16momme."},
	{group: sampleRoom, name: "overhang-warp", holder: "LEN", help: "Strip along the warp pushed over an edge until edge to tip dips 41.5°: 3.2cm,3.3cm,3.1cm."},
	{group: sampleRoom, name: "overhang-weft", holder: "LEN", help: "The same along the weft."},
	{group: sampleRoom, name: "overhang-bias", holder: "LEN", help: "The same at 45°. Without it a rule, ±40 %."},
	{group: sampleRoom, name: "loop-length", holder: "LEN", help: "Instead of an overhang, for limp or curling cloth: length of a strip between its two ends, clamped together pointing up so that it falls over on both sides, 15cm."},
	{group: sampleRoom, name: "loop-warp", holder: "LEN", help: "Height of that heart-shaped loop along the warp, from the clamp down to its lowest point: 5.1cm,5.0cm."},
	{group: sampleRoom, name: "loop-weft", holder: "LEN", help: "The same along the weft."},
	{group: sampleRoom, name: "loop-bias", holder: "LEN", help: "The same at 45°."},
	{group: sampleRoom, name: "bias-stretch", holder: "PCT", help: "Stretch of a bias strip under --bias-load: 5%."},
	{group: sampleRoom, name: "bias-load", holder: "LOAD", help: "Load on the width of the bias strip (5gf/cm)."},
	{group: sampleRoom, name: "warp-stretch", holder: "PCT", help: "Stretch along the warp under --warp-load."},
	{group: sampleRoom, name: "warp-load", holder: "LOAD", help: "Load on the width of the warp strip, 50gf/cm."},
	{group: sampleRoom, name: "weft-stretch", holder: "PCT", help: "Stretch along the weft under --weft-load."},
	{group: sampleRoom, name: "weft-load", holder: "LOAD", help: "Load on the width of the weft strip."},
	{group: sampleRoom, name: "thickness", holder: "LEN", help: "Thickness, 0.31mm."},
	{group: sampleRoom, name: "drape", holder: "PCT", help: "Drape coefficient read on a drape meter, kept beside the values: 22%."},
	{group: sampleRoom, name: "specimen", holder: "LEN", help: "Diameter of its cloth, 30cm."},
	{group: sampleRoom, name: "disc", holder: "LEN", help: "Diameter of its support, 18cm."},
	{group: sampleRoom, name: "nodes", holder: "N", help: "Folds counted on it."},

	{group: kesSheet, name: "kes-w", holder: "W", help: "Weight, mg/cm²."},
	{group: kesSheet, name: "kes-b", holder: "B", help: "Bending, one value for both directions, gf·cm²/cm; or"},
	{group: kesSheet, name: "kes-b-warp", holder: "B", help: "bending along the warp,"},
	{group: kesSheet, name: "kes-b-weft", holder: "B", help: "along the weft,"},
	{group: kesSheet, name: "kes-b-bias", holder: "B", help: "and at 45°."},
	{group: kesSheet, name: "kes-2hb", holder: "2HB", help: "Loop of the bending, gf·cm/cm; also --kes-2hb-warp, --kes-2hb-weft."},
	{group: kesSheet, name: "kes-g", holder: "G", help: "Shear, gf/(cm·deg), 0.2 to 3 for most cloth. NOT the G of FAST: 1 gf/(cm·deg) is 56.19 N/m. Also --kes-g-warp, --kes-g-weft."},
	{group: kesSheet, name: "kes-2hg", holder: "2HG", help: "Loop of the shear at 0.5°, gf/cm; also --kes-2hg-warp, --kes-2hg-weft."},
	{group: kesSheet, name: "kes-emt-warp", holder: "EMT", help: "Stretch at 500 gf/cm along the warp, %."},
	{group: kesSheet, name: "kes-emt-weft", holder: "EMT", help: "The same along the weft."},
	{group: kesSheet, name: "kes-lt-warp", holder: "LT", help: "Linearity of that pull (0.65)."},
	{group: kesSheet, name: "kes-lt-weft", holder: "LT", help: "The same along the weft."},
	{group: kesSheet, name: "kes-t", holder: "T", help: "Thickness, mm."},

	{group: fastSheet, name: "fast-w", holder: "W", help: "Weight, g/m²."},
	{group: fastSheet, name: "fast-c-warp", holder: "C", help: "Bending length along the warp, mm: half the overhang."},
	{group: fastSheet, name: "fast-c-weft", holder: "C", help: "The same along the weft."},
	{group: fastSheet, name: "fast-c-bias", holder: "C", help: "The same at 45°."},
	{group: fastSheet, name: "fast-b-warp", holder: "B", help: "Bending along the warp, µN·m."},
	{group: fastSheet, name: "fast-b-weft", holder: "B", help: "The same along the weft."},
	{group: fastSheet, name: "fast-b-bias", holder: "B", help: "The same at 45°."},
	{group: fastSheet, name: "fast-g", holder: "G", help: "Shear, N/m, 15 to 100 for most cloth. NOT the G of KES."},
	{group: fastSheet, name: "fast-eb5", holder: "EB5", help: "Bias stretch at 5 gf/cm, %; G is 123 over it."},
	{group: fastSheet, name: "fast-e5-warp", holder: "E", help: "Stretch at 5 gf/cm along the warp, %; also -e20-, -e100-, and -weft."},
	{group: fastSheet, name: "fast-t2", holder: "T", help: "Thickness at 2 gf/cm², mm."},
}

// The groups of tests in the help.
const (
	sampleRoom = "Sample room"
	kesSheet   = "KES-F sheet, bare numbers in its units"
	fastSheet  = "FAST sheet, bare numbers in its units"
)

// testRows are the flags of all trials.
func testRows() []flagRow {
	out := slices.Clone(testFlags)
	for _, t := range materials.Trials() {
		if !slices.ContainsFunc(testFlags, func(r flagRow) bool { return r.name == t.Key() }) {
			out = append(out, flagRow{name: t.Key(), hidden: true})
		}
	}
	for i := range out {
		out[i].of = reflect.TypeFor[[]string]()
	}
	return out
}

// setTests puts what was given on the command line over the tests of a sheet.
func setTests(s *materials.Swatch, flags any) error {
	for key, readings := range given(flags) {
		if err := s.Set(key, readings.Interface().([]string)); err != nil {
			return fmt.Errorf("--%s: %w", key, err)
		}
	}
	return nil
}
