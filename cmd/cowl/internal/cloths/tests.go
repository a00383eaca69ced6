package cloths

import (
	"fmt"
	"reflect"
	"slices"

	"cowl/cmd/cowl/internal/flags"
	"cowl/materials"
)

// testFlags are the tests of a swatch that the help shows, by the keys of their
// trials; the others have a flag that is named there.
var testFlags = []flags.Row{
	{Group: sampleRoom, Name: "square", Holder: "LEN", Help: "Side of the cut square that was weighed, 10.0cm."},
	{Group: sampleRoom, Name: "mass", Holder: "MASS", Help: "Mass of that square, 1.35g."},
	{Group: sampleRoom, Name: "weight", Holder: "W", Help: "Weight instead of square and mass: 135gsm, 4oz/yd2, 16momme."},
	{Group: sampleRoom, Name: "overhang-warp", Holder: "LEN",
		Help: "Strip along the warp pushed over an edge until edge to tip dips 41.5°: 3.2cm,3.3cm,3.1cm."},
	{Group: sampleRoom, Name: "overhang-weft", Holder: "LEN", Help: "The same along the weft."},
	{Group: sampleRoom, Name: "overhang-bias", Holder: "LEN", Help: "The same at 45°. Without it a rule, ±40 %."},
	{Group: sampleRoom, Name: "loop-length", Holder: "LEN",
		Help: "Instead of an overhang, for limp or curling cloth: length of a strip between its two ends, clamped " +
			"together pointing up so that it falls over on both sides, 15cm."},
	{Group: sampleRoom, Name: "loop-warp", Holder: "LEN",
		Help: "Height of that heart-shaped loop along the warp, from the clamp down to its lowest point: 5.1cm,5.0cm."},
	{Group: sampleRoom, Name: "loop-weft", Holder: "LEN", Help: "The same along the weft."},
	{Group: sampleRoom, Name: "loop-bias", Holder: "LEN", Help: "The same at 45°."},
	{Group: sampleRoom, Name: "bias-stretch", Holder: "PCT", Help: "Stretch of a bias strip under --bias-load: 5%."},
	{Group: sampleRoom, Name: "bias-load", Holder: "LOAD", Help: "Load on the width of the bias strip (5gf/cm)."},
	{Group: sampleRoom, Name: "warp-stretch", Holder: "PCT", Help: "Stretch along the warp under --warp-load."},
	{Group: sampleRoom, Name: "warp-load", Holder: "LOAD", Help: "Load on the width of the warp strip, 50gf/cm."},
	{Group: sampleRoom, Name: "weft-stretch", Holder: "PCT", Help: "Stretch along the weft under --weft-load."},
	{Group: sampleRoom, Name: "weft-load", Holder: "LOAD", Help: "Load on the width of the weft strip."},
	{Group: sampleRoom, Name: "thickness", Holder: "LEN", Help: "Thickness, 0.31mm."},
	{Group: sampleRoom, Name: "drape", Holder: "PCT",
		Help: "Drape coefficient read on a drape meter, kept beside the values: 22%."},
	{Group: sampleRoom, Name: "specimen", Holder: "LEN", Help: "Diameter of its cloth, 30cm."},
	{Group: sampleRoom, Name: "disc", Holder: "LEN", Help: "Diameter of its support, 18cm."},
	{Group: sampleRoom, Name: "nodes", Holder: "N", Help: "Folds counted on it."},

	{Group: kesGroup, Name: "kes-w", Holder: "W", Help: "Weight, mg/cm²."},
	{Group: kesGroup, Name: "kes-b", Holder: "B", Help: "Bending, one value for both directions, gf·cm²/cm; or"},
	{Group: kesGroup, Name: "kes-b-warp", Holder: "B", Help: "bending along the warp,"},
	{Group: kesGroup, Name: "kes-b-weft", Holder: "B", Help: "along the weft,"},
	{Group: kesGroup, Name: "kes-b-bias", Holder: "B", Help: "and at 45°."},
	{Group: kesGroup, Name: "kes-2hb", Holder: "2HB",
		Help: "Loop of the bending, gf·cm/cm; also --kes-2hb-warp, --kes-2hb-weft."},
	{Group: kesGroup, Name: "kes-g", Holder: "G",
		Help: "Shear, gf/(cm·deg), 0.2 to 3 for most cloth. NOT the G of FAST: 1 gf/(cm·deg) is 56.19 N/m. Also " +
			"--kes-g-warp, --kes-g-weft."},
	{Group: kesGroup, Name: "kes-2hg", Holder: "2HG",
		Help: "Loop of the shear at 0.5°, gf/cm; also --kes-2hg-warp, --kes-2hg-weft."},
	{Group: kesGroup, Name: "kes-emt-warp", Holder: "EMT", Help: "Stretch at 500 gf/cm along the warp, %."},
	{Group: kesGroup, Name: "kes-emt-weft", Holder: "EMT", Help: "The same along the weft."},
	{Group: kesGroup, Name: "kes-lt-warp", Holder: "LT", Help: "Linearity of that pull (0.65)."},
	{Group: kesGroup, Name: "kes-lt-weft", Holder: "LT", Help: "The same along the weft."},
	{Group: kesGroup, Name: "kes-t", Holder: "T", Help: "Thickness, mm."},

	{Group: fastGroup, Name: "fast-w", Holder: "W", Help: "Weight, g/m²."},
	{Group: fastGroup, Name: "fast-c-warp", Holder: "C", Help: "Bending length along the warp, mm: half the overhang."},
	{Group: fastGroup, Name: "fast-c-weft", Holder: "C", Help: "The same along the weft."},
	{Group: fastGroup, Name: "fast-c-bias", Holder: "C", Help: "The same at 45°."},
	{Group: fastGroup, Name: "fast-b-warp", Holder: "B", Help: "Bending along the warp, µN·m."},
	{Group: fastGroup, Name: "fast-b-weft", Holder: "B", Help: "The same along the weft."},
	{Group: fastGroup, Name: "fast-b-bias", Holder: "B", Help: "The same at 45°."},
	{Group: fastGroup, Name: "fast-g", Holder: "G", Help: "Shear, N/m, 15 to 100 for most cloth. NOT the G of KES."},
	{Group: fastGroup, Name: "fast-eb5", Holder: "EB5", Help: "Bias stretch at 5 gf/cm, %; G is 123 over it."},
	{Group: fastGroup, Name: "fast-e5-warp", Holder: "E",
		Help: "Stretch at 5 gf/cm along the warp, %; also -e20-, -e100-, and -weft."},
	{Group: fastGroup, Name: "fast-t2", Holder: "T", Help: "Thickness at 2 gf/cm², mm."},
}

// The groups of tests in the help.
const (
	sampleRoom = "Sample room"
	kesGroup   = "KES-F sheet, bare numbers in its units"
	fastGroup  = "FAST sheet, bare numbers in its units"
)

// Tests are the flags of all trials, for flags.NewParser under the name "tests".
func Tests() []flags.Row {
	out := slices.Clone(testFlags)
	for _, t := range materials.Trials() {
		if !slices.ContainsFunc(testFlags, func(r flags.Row) bool { return r.Name == t.Key() }) {
			out = append(out, flags.Row{Name: t.Key(), Hidden: true})
		}
	}
	for i := range out {
		out[i].Of = reflect.TypeFor[[]string]()
	}
	return out
}

// setTests puts what was given on the command line over the tests of a sheet.
func setTests(s *materials.Swatch, tests any) error {
	for key, readings := range flags.Given(tests) {
		if err := s.Set(key, readings.Interface().([]string)); err != nil {
			return fmt.Errorf("--%s: %w", key, err)
		}
	}
	return nil
}
