package materials

import (
	"math"
	"strings"

	"cowl/mesh/limit"
)

// ways lists, for each property, the ways to test it. The trials of one way
// may stand together, two ways may not.
var ways = []struct {
	property string
	need     bool
	trials   [][]Trial
}{
	{"weight", true, [][]Trial{{Mass, Square}, {GivenWeight}, {KESWeight}, {FASTWeight}}},
	{"bending of the warp", true, [][]Trial{{OverhangWarp}, {LoopWarp}, {KESBendWarp}, {KESBend},
		{FASTBendWarp, FASTLengthWarp}}},
	{"bending of the weft", true, [][]Trial{{OverhangWeft}, {LoopWeft}, {KESBendWeft}, {KESBend},
		{FASTBendWeft, FASTLengthWeft}}},
	{"bending of the bias", false, [][]Trial{{OverhangBias}, {LoopBias}, {KESBendBias}, {FASTBendBias, FASTLengthBias}}},
	{"shear", false, [][]Trial{{BiasStretch}, {KESShear}, {KESShearWarp, KESShearWeft}, {FASTShear, FASTBiasStretch}}},
	{"pull of the warp", false, [][]Trial{{WarpStretch}, {KESStretchWarp}, {FAST5Warp, FAST20Warp, FAST100Warp}}},
	{"pull of the weft", false, [][]Trial{{WeftStretch}, {KESStretchWeft}, {FAST5Weft, FAST20Weft, FAST100Weft}}},
	{"thickness", false, [][]Trial{{GivenThickness}, {KESThickness}, {FASTThickness}}},
	{"bending loop", false, [][]Trial{{KESBendLoop}, {KESBendLoopWarp, KESBendLoopWeft}}},
	{"shear loop", false, [][]Trial{{KESShearLoop}, {KESShearLoopWarp, KESShearLoopWeft}}},
}

// partners are trials that say nothing without one another.
var partners = []struct{ trial, with Trial }{
	{Mass, Square}, {Square, Mass}, {BiasLoad, BiasStretch},
	{LoopWarp, LoopLength}, {LoopWeft, LoopLength}, {LoopBias, LoopLength},
	{WarpStretch, WarpLoad}, {WarpLoad, WarpStretch}, {WeftStretch, WeftLoad}, {WeftLoad, WeftStretch},
	{KESLinearityWarp, KESStretchWarp}, {KESLinearityWeft, KESStretchWeft},
	{DrapeShare, DrapeSpecimen}, {DrapeShare, DrapeDisc},
	{DrapeSpecimen, DrapeShare}, {DrapeDisc, DrapeShare}, {DrapeNodes, DrapeShare},
}

// checkTrials returns what is missing or given twice.
func (s Swatch) checkTrials() error {
	var errs []error
	if !nameForm.MatchString(s.Name) {
		errs = append(errs, limit.Errorf("name", "name %.120q, %s", s.Name, nameWanted))
	}
	for _, p := range partners {
		if s.done(p.trial) && !s.done(p.with) {
			errs = append(errs, limit.Errorf(p.trial.Key(), "%s without %s, want both", p.trial.Key(), p.with.Key()))
		}
	}
	for _, w := range ways {
		var used, all []string
		for _, way := range w.trials {
			all = append(all, way[0].Key())
			for _, t := range way {
				if s.done(t) {
					used = append(used, t.Key())
					break
				}
			}
		}
		switch {
		case len(used) > 1:
			errs = append(errs, limit.Errorf(w.property, "%s is given twice, by %s, want one", w.property,
				strings.Join(used, " and ")))
		case len(used) == 0 && w.need:
			errs = append(errs, limit.Errorf(w.property, "%s is missing, want one of %s", w.property, strings.Join(all, ", ")))
		}
	}
	return oneLine(append(errs, s.checkLoops()))
}

// Bending lengths of wovens: the limpest yarn direction of 251 fabrics lies
// near 7 mm (Feng et al., ACM Trans. Graph. 41(6), 2022), 100 mm is stiffer
// than any cloth that is worn.
const (
	limpest  = 5e-3
	stiffest = 100e-3
)

// biasOverYarns is the most by which the bias of a woven may bend stiffer than
// its stiffer yarns. In cantilever data of 251 fabrics the bias over the
// geometric mean of warp and weft lies at 0.54–1.67 from the 10th to the 90th
// hundredth (Feng et al. 2022).
const (
	biasOverYarns = 2.0
	biasUsualLow  = 0.54
	biasUsualHigh = 1.67
)

// checkFabric returns what no woven cloth can be.
func (s Swatch) checkFabric(b bench, f Fabric) error {
	if quantities[Weight].check(Weight.InUnits(f)) != nil {
		return limit.Errorf(Weight.Key(), "weight %s, want %v: %s (%s)", Weight.Format(f), quantities[Weight].allowed(),
			heaviestWhy, f.Basis[Weight].How)
	}
	errs := []error{s.checkAgree(b, f), s.checkFAST(b), s.checkBiasTensile(b, f)}
	for _, d := range directions {
		errs = append(errs, s.checkLength(d, f))
	}
	if top := max(f.BendWarp, f.BendWeft); f.BendBias > biasOverYarns*top {
		errs = append(errs, limit.Errorf(BendBias.Key(),
			"bias bends %.1f times as stiff as the stiffer of warp and weft (%s beside %s), want at most %g: yarns that "+
				"cross at an angle bend softer; were strips mixed up?",
			f.BendBias/top, BendBias.Format(f), withUnit(top*1e6, "µN·m"), biasOverYarns))
	}
	if err := oneLine(errs); err != nil {
		return err
	}
	return f.Validate()
}

// checkLength demands a bending length that cloth has, and asks whether the
// units of KES and FAST were mixed up where that would explain it.
func (s Swatch) checkLength(d direction, f Fabric) error {
	bend := d.bend.Value(f)
	c := BendingLength(bend, f.Weight)
	if c >= limpest && c <= stiffest || f.Basis[d.bend].Kind == Assumed {
		return nil
	}
	hint := ""
	const ratio = GramForceCm2PerCm / 1e-6
	usual := func(bend float64) bool {
		c := BendingLength(bend, f.Weight)
		return c >= limpest && c <= 40e-3
	}
	switch kes := s.done(d.kesBend) || s.done(KESBend); {
	case kes && usual(bend/ratio):
		hint = "; was it µN·m, as on a FAST sheet? Then give it as fast-b-" + d.name
	case s.done(d.fast) && usual(bend*ratio):
		hint = "; was it gf·cm²/cm, as on a KES sheet? Then give it as kes-b-" + d.name
	}
	return limit.Errorf(d.bend.Key(), "bending length of the %s %s (%s at %s), want %g–%g mm%s",
		d.name, withUnit(c*1000, "mm"), d.bend.Format(f), Weight.Format(f), limpest*1000, stiffest*1000, hint)
}

// checkBiasTensile demands that the bias gives more than the warp at one load.
func (s Swatch) checkBiasTensile(b bench, f Fabric) error {
	p := s.tensile(b, directions[0])
	if p.kind == Unknown || f.Basis[Shear].Kind == Assumed {
		return nil
	}
	warp, bias := p.power*DrapeLoad/p.value, DrapeLoad/(4*f.Shear)
	if bias > warp {
		return nil
	}
	return limit.Errorf(Shear.Key(), "bias stretches %s at %g N/m, the warp %s, want more on the bias: a woven gives "+
		"most across its yarns; were strips mixed up?",
		withUnit(100*bias, "%"), DrapeLoad, withUnit(100*warp, "%"))
}

// checkFAST demands that more load stretches more.
func (s Swatch) checkFAST(b bench) error {
	for _, d := range directions[:2] {
		last := Trial(-1)
		for _, t := range []Trial{d.e5, d.e20, d.e100} {
			if !s.done(t) {
				continue
			}
			if last >= 0 && b[t] <= b[last] {
				return limit.Errorf(t.Key(), "%s is not above %s, want more stretch under more load", s.told(t), s.told(last))
			}
			last = t
		}
	}
	return nil
}

// checkAgree demands that what a FAST sheet prints twice agrees to a tenth.
func (s Swatch) checkAgree(b bench, f Fabric) error {
	differ := func(x, y float64) bool { return math.Abs(x-y) > 0.1*max(x, y) }
	for _, d := range directions {
		if s.done(d.fast) && s.done(d.c) && differ(b[d.fast], BendFromLength(b[d.c], f.Weight)) {
			return limit.Errorf(d.fast.Key(), "%s and %s disagree: weight times the length cubed is %s",
				s.told(d.fast), s.told(d.c), withUnit(BendFromLength(b[d.c], f.Weight)*1e6, "µN·m"))
		}
	}
	if s.done(FASTShear) && s.done(FASTBiasStretch) && differ(b[FASTShear], ShearFromBiasStretch(b[FASTBiasStretch])) {
		return limit.Errorf(FASTShear.Key(), "%s and %s disagree: 123 over it is %s",
			s.told(FASTShear), s.told(FASTBiasStretch), withUnit(ShearFromBiasStretch(b[FASTBiasStretch]), "N/m"))
	}
	return nil
}
