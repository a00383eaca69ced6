package materials

import (
	"fmt"
	"math"
)

// FoldSpread returns how uncertain width and number of folds are because of
// the bending length c across them, one of Lengths, as a fraction. The width of
// folds grows with c^¾ L^¼ of a hung length L (E. Cerda, L. Mahadevan, Phys.
// Rev. Lett. 90, 074302, 2003, with the weight as the tension; recalled, an
// order of magnitude).
func FoldSpread(c Estimate) float64 { return 0.75 * c.Relative() }

// DrapeSpread returns how uncertain the drape coefficient is because of the
// bending length, as a fraction: the slope 35.6 − 7.22 c of the regression of
// G. E. Cusick on 130 fabrics, points per cm (J. Textile Inst. 56, 1965, T596,
// recalled). A drape meter itself scatters by 0.01–0.07 on one cloth.
func (m Sample) DrapeSpread() float64 {
	c := m.length()
	return math.Abs(35.6-7.22*c.Value*100) * c.Spread
}

// length is the bending length of the mean rigidity.
func (m Sample) length() Estimate { return m.Lengths[len(m.Lengths)-1] }

// unevenness is the spread of repeats over their mean that asks for a look.
const unevenness = 0.15

// stiffDress is the bending length of the stiffest denims, about 40 mm.
const stiffDress = 40e-3

// warnings returns what is odd but possible, and what was not tested.
func (s Swatch) warnings(m Sample) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for t, r := range s.Readings {
		if r.Count > 1 && r.Spread > unevenness*r.Mean {
			say("%s: readings differ by %.0f %% of their mean, look for a slip", Trial(t).Key(), 100*r.Spread/r.Mean)
		}
	}
	f := m.Fabric
	if c := f.GravityLength(); c > stiffDress {
		say("bending length %s is stiffer than denim; if the sheet is FAST, give it as fast-…", withUnit(c*1000, "mm"))
	}
	if ratio := f.BendBias / math.Sqrt(f.BendWarp*f.BendWeft); ratio < biasUsualLow || ratio > biasUsualHigh {
		say("bias bends %.2f times as stiff as warp and weft together, four fabrics in five lie at %g–%g", ratio,
			biasUsualLow, biasUsualHigh)
	}
	if _, held := f.Twist(); held {
		say("bias bends softer than a plate with this warp and weft can; the program holds the twist at its least")
	}
	for _, q := range Fields() {
		if f.Basis[q].Kind == Assumed && q != Friction && q != FrictionCloth && q != Thickness && q != BendSoftening &&
			q != ShearLock {
			say("%s was not tested, taken: %s", q, f.Basis[q].How)
		}
	}
	if once := s.once(); once != "" {
		say("%s read once: its ± holds the reading of the scale, not the unevenness of the cloth", once)
	}
	if s.printed() {
		say("figures of a sheet: their ± holds the rounding of the print, not the unevenness of the cloth")
	}
	return out
}

// printed reports whether a value comes from a sheet of KES or FAST.
func (s Swatch) printed() bool {
	for t := KESWeight; t < numTrials; t++ {
		if s.Readings[t].Count == 1 && s.Readings[t].Digit != linearityRange {
			return true
		}
	}
	return false
}

// once lists the strip and stretch tests that were read only once.
func (s Swatch) once() string {
	list := ""
	for _, t := range []Trial{OverhangWarp, OverhangWeft, OverhangBias, LoopWarp, LoopWeft, LoopBias, BiasStretch,
		WarpStretch, WeftStretch} {
		if s.Readings[t].Count == 1 {
			if list != "" {
				list += ", "
			}
			list += t.Key()
		}
	}
	return list
}
