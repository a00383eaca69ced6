package materials

import (
	"math"

	"cowl/mesh/limit"
)

// Swatch is what tests on a piece of cloth gave, in a sample room or on a
// mill's sheet. Of the ways to test one property only one may be used.
//
// An overhang is the length of a strip pushed over a table edge until the
// chord from edge to tip dips 41.5° (ISO 9073-7). A loop is that of HeartDepth,
// for cloth that hangs too limp over an edge or curls there. A stretch is the strain of a
// strip under a load on each unit of its width.
type Swatch struct {
	Name     string // as of a Fabric; empty: swatch
	Title    string
	Fibre    string
	Weave    string
	Note     string
	Readings [numTrials]Reading // by Trial; Count 0: not done
}

// Sample is a swatch worked out.
type Sample struct {
	Fabric   Fabric
	Lengths  []Estimate // bending length along warp, weft, bias, and of the mean rigidity, m
	Shares   []Share    // what the uncertainty of the last length comes from, largest first
	Warnings []string   // what is odd but not impossible, and what was not tested
}

// Estimate is a value with one standard uncertainty.
type Estimate struct{ Value, Spread float64 }

// Relative returns the uncertainty as a fraction of the value.
func (e Estimate) Relative() float64 { return e.Spread / e.Value }

// Share is the part of a variance that comes from one trial.
type Share struct {
	Trial Trial
	Part  float64 // 0–1
}

// Set stores the repeats of the trial named key, each with its unit. A later
// call replaces an earlier one. The error says value and allowed range.
func (s *Swatch) Set(key string, repeats []string) error {
	t, err := trialOf(key)
	if err != nil {
		return err
	}
	s.Readings[t], err = t.read(repeats)
	return err
}

// Measure works the swatch out. The error lists what is missing, given twice
// or impossible for a woven cloth. Uncertainties are those of the readings,
// taken through the whole calculation by moving one at a time by ± its own
// (JCGM 100:2008, 5.1.3 note 2).
func (s Swatch) Measure() (Sample, error) {
	if s.Name == "" {
		s.Name = "swatch"
	}
	if err := s.checkTrials(); err != nil {
		return Sample{}, limit.Errorf("", "swatch: %v", err)
	}
	s = s.completed()
	b := s.means()
	f := s.fabric(b)
	if err := s.checkFabric(b, f); err != nil {
		return Sample{}, limit.Errorf("", "swatch: %v", err)
	}
	out := Sample{Fabric: f}
	s.propagate(&out, b)
	out.Warnings = s.warnings(out)
	return out, nil
}

// linearityRange is the width of 0.60–0.75 about TypicalLinearity; no sheet
// prints a last digit of that size.
const linearityRange = 0.15

// completed fills in the usual load and the linearity where none was tested.
func (s Swatch) completed() Swatch {
	if s.done(BiasStretch) && !s.done(BiasLoad) {
		s.Readings[BiasLoad] = Reading{Mean: 5 * GramForcePerCm, Count: 1}
	}
	for _, t := range []Trial{KESLinearityWarp, KESLinearityWeft} {
		if !s.done(t) {
			s.Readings[t] = Reading{Mean: TypicalLinearity, Digit: linearityRange, Count: 1}
		}
	}
	return s
}

func (s Swatch) done(t Trial) bool { return s.Readings[t].Count > 0 }

// bench holds the value of every trial, SI; 0: not done.
type bench [numTrials]float64

func (s Swatch) means() (b bench) {
	for t, r := range s.Readings {
		b[t] = r.Mean
	}
	return b
}

// fabric works out the cloth; checkTrials must have passed.
func (s Swatch) fabric(b bench) Fabric {
	f := Fabric{Name: s.Name, Title: s.Title, Fibre: s.Fibre, Weave: s.Weave, Note: s.Note, Source: "tests on a swatch"}
	put := func(q Field, v found) {
		if v.kind != Unknown {
			*quantities[q].at(&f) = v.value
			f.Basis[q] = Evidence{v.kind, v.how}
		}
	}
	put(Weight, s.weight(b))
	for _, d := range directions {
		put(d.bend, s.bend(b, d, f.Weight))
	}
	put(Shear, s.shear(b))
	for _, d := range directions[:2] {
		put(d.tensile, s.tensile(b, d).found)
	}
	put(Thickness, s.thickness(b))
	put(BendFriction, s.loop(b, KESBendLoop, KESBendLoopWarp, KESBendLoopWeft))
	if f.Basis[BendFriction].Kind == Unknown && (s.done(KESBend) || s.done(KESBendWarp) && s.done(KESBendWeft)) {
		put(BendFriction, found{LoopOverBend / 2 * (f.BendWarp + f.BendWeft) / 2, Assumed,
			"no loop given; 2HB of 0.458/cm of B, the mean of 214 suitings (Kawabata 1980, from memory)"})
	}
	put(ShearFriction, s.loop(b, KESShearLoop, KESShearLoopWarp, KESShearLoopWeft))
	fillDefaults(&f)
	f.Drape = s.drape(b)
	f.Confidence = Medium
	if f.Complete() {
		f.Confidence = High
	}
	return f
}

// drape returns the reading of a drape meter, nil if there is none.
func (s Swatch) drape(b bench) *DrapeMeter {
	if !s.done(DrapeShare) {
		return nil
	}
	return &DrapeMeter{
		Coefficient: b[DrapeShare], Disc: b[DrapeDisc], Specimen: b[DrapeSpecimen], Nodes: b[DrapeNodes],
		Note: "own test, read as " + s.Readings[DrapeShare].in(1e-2, "%"),
	}
}

// lengthsOf returns the bending lengths along warp, weft and bias, and of the
// mean rigidity of warp and weft.
func lengthsOf(f Fabric) []float64 {
	return []float64{BendingLength(f.BendWarp, f.Weight), BendingLength(f.BendWeft, f.Weight),
		BendingLength(f.BendBias, f.Weight), f.GravityLength()}
}

// biasScatter is the scatter of PeirceBias about measured values.
const biasScatter = 0.4

// propagate fills in the uncertainties of out.
func (s Swatch) propagate(out *Sample, b bench) {
	for _, v := range lengthsOf(out.Fabric) {
		out.Lengths = append(out.Lengths, Estimate{Value: v})
	}
	last := len(out.Lengths) - 1
	for t, r := range s.Readings {
		u := r.Uncertainty()
		if u == 0 {
			continue
		}
		up, down := b, b
		up[t] += u
		down[t] = max(down[t]-u, down[t]/10)
		high, low := s.fabric(up), s.fabric(down)
		for _, q := range Fields() {
			out.Fabric.Spread[q] = math.Hypot(out.Fabric.Spread[q], (q.Value(high)-q.Value(low))/2)
		}
		above, below := lengthsOf(high), lengthsOf(low)
		for i := range out.Lengths {
			out.Lengths[i].Spread = math.Hypot(out.Lengths[i].Spread, (above[i]-below[i])/2)
		}
		out.Shares = append(out.Shares, Share{Trial(t), (above[last] - below[last]) * (above[last] - below[last]) / 4})
	}
	out.Shares = sharesOf(out.Shares, out.Lengths[last].Spread)
	out.forgetAssumed()
}

// forgetAssumed leaves no spread on what was not tested but for the bias,
// whose rule has a known scatter.
func (out *Sample) forgetAssumed() {
	f := &out.Fabric
	for _, q := range Fields() {
		if f.Basis[q].Kind == Assumed {
			f.Spread[q] = 0
		}
	}
	if f.Basis[BendBias].Kind == Assumed {
		f.Spread[BendBias] = biasScatter * f.BendBias
		out.Lengths[2].Spread = biasScatter / 3 * out.Lengths[2].Value
	}
}

// oneLine returns nil or all errors on one line.
func oneLine(errs []error) error {
	var out error
	for _, e := range errs {
		switch {
		case e == nil:
		case out == nil:
			out = e
		default:
			out = limit.Errorf("", "%v; %v", out, e)
		}
	}
	return out
}
