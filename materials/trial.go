package materials

import (
	"slices"

	"cowl/mesh/limit"
)

// Trial names one test of a swatch. It indexes Swatch.Readings.
type Trial int

// The trials: what a sample room can do with a ruler, a scale and a weight,
// the lines of a KES-F sheet and those of a FAST sheet.
const (
	Square Trial = iota
	Mass
	GivenWeight
	OverhangWarp
	OverhangWeft
	OverhangBias
	LoopLength
	LoopWarp
	LoopWeft
	LoopBias
	BiasStretch
	BiasLoad
	WarpStretch
	WarpLoad
	WeftStretch
	WeftLoad
	GivenThickness
	DrapeShare
	DrapeSpecimen
	DrapeDisc
	DrapeNodes
	KESWeight
	KESBend
	KESBendWarp
	KESBendWeft
	KESBendBias
	KESBendLoop
	KESBendLoopWarp
	KESBendLoopWeft
	KESShear
	KESShearWarp
	KESShearWeft
	KESShearLoop
	KESShearLoopWarp
	KESShearLoopWeft
	KESStretchWarp
	KESStretchWeft
	KESLinearityWarp
	KESLinearityWeft
	KESThickness
	FASTWeight
	FASTLengthWarp
	FASTLengthWeft
	FASTLengthBias
	FASTBendWarp
	FASTBendWeft
	FASTBendBias
	FASTShear
	FASTBiasStretch
	FAST5Warp
	FAST5Weft
	FAST20Warp
	FAST20Weft
	FAST100Warp
	FAST100Weft
	FASTThickness
	numTrials
)

// trial describes a test as people write it.
type trial struct {
	key       string
	unit      string // for people; the unit of a bare number where bare is set
	scale     float64
	low, high float64 // allowed, in units
	why       string
	of        dimension
	bare      bool // a sheet of a laboratory prints numbers without units
}

const (
	overhangWhy = "half of it is the bending length, and 10 cm of that is stiffer than any cloth that is worn"
	loopWhy     = "10 to 20 cm between its clamped ends suits most cloth"
	heightWhy   = "from the clamp to the lowest point of the loop"
	stretchWhy  = "too little cannot be read, too much is no longer the cloth at rest"
	loadWhy     = "gram-force on each cm of width; 5 gf/cm is 4.903 N/m"
	kesBendWhy  = "FAST prints µN·m, 98.07 times as large: give that as fast-b-…"
	kesShearWhy = "FAST prints G in N/m, 56.19 times as large: give that as fast-g"
	fastBendWhy = "KES prints gf·cm²/cm, a 98.07th of it: give that as kes-b-…"
	linearWhy   = "area under the pull curve over that of the triangle"
	measureWhy  = "drape meters use discs of 12.7–18 cm and specimens of 24–36 cm"
	heaviestWhy = "gauze to the heaviest coating; over 1.5 kg/m² is no cloth to wear"
)

var trials = [numTrials]trial{
	Square:         {"square", "cm", 1e-2, 2, 100, "side of the cut square", lengths, false},
	Mass:           {"mass", "g", 1e-3, 0.02, 1500, heaviestWhy, masses, false},
	GivenWeight:    {"weight", "g/m²", 1e-3, 10, 1500, heaviestWhy, weights, false},
	OverhangWarp:   {"overhang-warp", "cm", 1e-2, 1, 20, overhangWhy, lengths, false},
	OverhangWeft:   {"overhang-weft", "cm", 1e-2, 1, 20, overhangWhy, lengths, false},
	OverhangBias:   {"overhang-bias", "cm", 1e-2, 1, 20, overhangWhy, lengths, false},
	LoopLength:     {"loop-length", "cm", 1e-2, 3, 50, loopWhy, lengths, false},
	LoopWarp:       {"loop-warp", "cm", 1e-2, 0.4, 25, heightWhy, lengths, false},
	LoopWeft:       {"loop-weft", "cm", 1e-2, 0.4, 25, heightWhy, lengths, false},
	LoopBias:       {"loop-bias", "cm", 1e-2, 0.4, 25, heightWhy, lengths, false},
	BiasStretch:    {"bias-stretch", "%", 1e-2, 0.1, 50, stretchWhy, shares, false},
	BiasLoad:       {"bias-load", "gf/cm", GramForcePerCm, 0.5, 100, loadWhy, loads, false},
	WarpStretch:    {"warp-stretch", "%", 1e-2, 0.05, 100, stretchWhy, shares, false},
	WarpLoad:       {"warp-load", "gf/cm", GramForcePerCm, 0.5, 500, loadWhy, loads, false},
	WeftStretch:    {"weft-stretch", "%", 1e-2, 0.05, 100, stretchWhy, shares, false},
	WeftLoad:       {"weft-load", "gf/cm", GramForcePerCm, 0.5, 500, loadWhy, loads, false},
	GivenThickness: {"thickness", "mm", 1e-3, 0.02, 6, "organza to blanket", lengths, false},
	DrapeShare:     {"drape", "%", 1e-2, 1, 100, "shadow over flat ring", shares, false},
	DrapeSpecimen:  {"specimen", "cm", 1e-2, 10, 60, measureWhy, lengths, false},
	DrapeDisc:      {"disc", "cm", 1e-2, 5, 30, measureWhy, lengths, false},
	DrapeNodes:     {"nodes", "", 1, 1, 30, "folds round the disc", numbers, true},

	KESWeight: {"kes-w", "mg/cm²", MilligramPerCm2, 1, 80,
		"FAST prints g/m², 10 times as large: give that as fast-w", weights, true},
	KESBend:          {"kes-b", "gf·cm²/cm", GramForceCm2PerCm, 5e-4, 3, kesBendWhy, rigidities, true},
	KESBendWarp:      {"kes-b-warp", "gf·cm²/cm", GramForceCm2PerCm, 5e-4, 3, kesBendWhy, rigidities, true},
	KESBendWeft:      {"kes-b-weft", "gf·cm²/cm", GramForceCm2PerCm, 5e-4, 3, kesBendWhy, rigidities, true},
	KESBendBias:      {"kes-b-bias", "gf·cm²/cm", GramForceCm2PerCm, 5e-4, 3, kesBendWhy, rigidities, true},
	KESBendLoop:      {"kes-2hb", "gf·cm/cm", GramForceCmPerCm, 5e-4, 5, "loop of the bending test", moments, true},
	KESBendLoopWarp:  {"kes-2hb-warp", "gf·cm/cm", GramForceCmPerCm, 5e-4, 5, "loop of the bending test", moments, true},
	KESBendLoopWeft:  {"kes-2hb-weft", "gf·cm/cm", GramForceCmPerCm, 5e-4, 5, "loop of the bending test", moments, true},
	KESShear:         {"kes-g", "gf/(cm·deg)", GramForcePerCmDegree, 0.04, 5, kesShearWhy, shears, true},
	KESShearWarp:     {"kes-g-warp", "gf/(cm·deg)", GramForcePerCmDegree, 0.04, 5, kesShearWhy, shears, true},
	KESShearWeft:     {"kes-g-weft", "gf/(cm·deg)", GramForcePerCmDegree, 0.04, 5, kesShearWhy, shears, true},
	KESShearLoop:     {"kes-2hg", "gf/cm", GramForcePerCm, 1e-2, 30, "loop of the shear test at 0.5°", loads, true},
	KESShearLoopWarp: {"kes-2hg-warp", "gf/cm", GramForcePerCm, 1e-2, 30, "loop of the shear test at 0.5°", loads, true},
	KESShearLoopWeft: {"kes-2hg-weft", "gf/cm", GramForcePerCm, 1e-2, 30, "loop of the shear test at 0.5°", loads, true},
	KESStretchWarp:   {"kes-emt-warp", "%", 1e-2, 0.2, 100, "EMT, stretch at 500 gf/cm", shares, true},
	KESStretchWeft:   {"kes-emt-weft", "%", 1e-2, 0.2, 100, "EMT, stretch at 500 gf/cm", shares, true},
	KESLinearityWarp: {"kes-lt-warp", "", 1, 0.3, 1, linearWhy, numbers, true},
	KESLinearityWeft: {"kes-lt-weft", "", 1, 0.3, 1, linearWhy, numbers, true},
	KESThickness:     {"kes-t", "mm", 1e-3, 0.02, 6, "organza to blanket", lengths, true},

	FASTWeight: {"fast-w", "g/m²", 1e-3, 10, 1500, "KES prints mg/cm², a 10th of it: give that as kes-w", weights,
		true},
	FASTLengthWarp: {"fast-c-warp", "mm", 1e-3, 5, 100, "bending length, half the overhang", lengths, true},
	FASTLengthWeft: {"fast-c-weft", "mm", 1e-3, 5, 100, "bending length, half the overhang", lengths, true},
	FASTLengthBias: {"fast-c-bias", "mm", 1e-3, 5, 100, "bending length, half the overhang", lengths, true},
	FASTBendWarp:   {"fast-b-warp", "µN·m", 1e-6, 0.05, 2000, fastBendWhy, rigidities, true},
	FASTBendWeft:   {"fast-b-weft", "µN·m", 1e-6, 0.05, 2000, fastBendWhy, rigidities, true},
	FASTBendBias:   {"fast-b-bias", "µN·m", 1e-6, 0.05, 2000, fastBendWhy, rigidities, true},
	FASTShear: {"fast-g", "N/m", 1, 5, 1000, "KES prints G in gf/(cm·deg), a 56.19th of it: give that as kes-g",
		shears, true},
	FASTBiasStretch: {"fast-eb5", "%", 1e-2, 0.1, 50, "bias stretch at 5 gf/cm", shares, true},
	FAST5Warp:       {"fast-e5-warp", "%", 1e-2, 0.05, 50, "stretch at 5 gf/cm", shares, true},
	FAST5Weft:       {"fast-e5-weft", "%", 1e-2, 0.05, 50, "stretch at 5 gf/cm", shares, true},
	FAST20Warp:      {"fast-e20-warp", "%", 1e-2, 0.05, 50, "stretch at 20 gf/cm", shares, true},
	FAST20Weft:      {"fast-e20-weft", "%", 1e-2, 0.05, 50, "stretch at 20 gf/cm", shares, true},
	FAST100Warp:     {"fast-e100-warp", "%", 1e-2, 0.05, 50, "stretch at 100 gf/cm", shares, true},
	FAST100Weft:     {"fast-e100-weft", "%", 1e-2, 0.05, 50, "stretch at 100 gf/cm", shares, true},
	FASTThickness:   {"fast-t2", "mm", 1e-3, 0.02, 6, "organza to blanket", lengths, true},
}

// Trials returns all trials in the order of sheets.
func Trials() []Trial {
	out := make([]Trial, numTrials)
	for i := range out {
		out[i] = Trial(i)
	}
	return out
}

// Key returns the name of the trial in sheets and, with two hyphens before it,
// on the command line.
func (t Trial) Key() string { return trials[t].key }

// trialOf is the inverse of Key.
func trialOf(key string) (Trial, error) {
	i := slices.IndexFunc(Trials(), func(t Trial) bool { return t.Key() == key })
	if i < 0 {
		return 0, limit.Errorf(key, "unknown key %q%s", key, didYouMean(key, trialKeys()))
	}
	return Trial(i), nil
}

// trialKeys returns the key of every trial.
func trialKeys() []string {
	out := make([]string, 0, numTrials)
	for _, t := range Trials() {
		out = append(out, t.Key())
	}
	return out
}

// read reads the repeats of a trial. A ruler is taken to be read to a
// millimetre even where whole centimetres are written; a load is hung, not read.
func (t Trial) read(repeats []string) (Reading, error) {
	q := trials[t]
	bare := ""
	if q.bare {
		bare = q.unit
	}
	var out []amount
	for _, text := range repeats {
		a, err := q.of.parse(text, bare)
		if err != nil {
			return Reading{}, limit.Errorf(q.key, "%v", err)
		}
		if r := rangeOf(q.key, q.unit, q.scale, toUnits(a.si, q.scale), q.low, q.high, q.why, false); r.Check() != nil {
			// its key stands before it
			return Reading{}, limit.Errorf(q.key, "%v, want %v: %v", limit.Of(r.Value, r.Unit), r.Allowed(), r.Why)
		}
		switch q.of.wanted {
		case lengths.wanted:
			a.digit = min(a.digit, 1e-3)
		case loads.wanted:
			if !q.bare {
				a.digit = 0
			}
		}
		out = append(out, a)
	}
	if len(out) == 0 {
		return Reading{}, limit.Errorf(q.key, "empty, want a reading, or several with commas between")
	}
	return readingOf(out), nil
}
