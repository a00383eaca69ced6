package materials

import (
	"fmt"
	"math"
	"slices"
)

// found is a value worked out of trials; kind Unknown: no trial gives it.
type found struct {
	value float64
	kind  Kind
	how   string
}

// direction is a direction of the cloth with the trials made along it.
type direction struct {
	name                   string
	bend, tensile          Field
	overhang, loop         Trial
	kesBend, c, fast       Trial
	stretch, load, emt, lt Trial
	e5, e20, e100          Trial
}

var directions = []direction{
	{"warp", BendWarp, TensileWarp, OverhangWarp, LoopWarp, KESBendWarp, FASTLengthWarp, FASTBendWarp,
		WarpStretch, WarpLoad, KESStretchWarp, KESLinearityWarp, FAST5Warp, FAST20Warp, FAST100Warp},
	{"weft", BendWeft, TensileWeft, OverhangWeft, LoopWeft, KESBendWeft, FASTLengthWeft, FASTBendWeft,
		WeftStretch, WeftLoad, KESStretchWeft, KESLinearityWeft, FAST5Weft, FAST20Weft, FAST100Weft},
	{"bias", BendBias, numFields, OverhangBias, LoopBias, KESBendBias, FASTLengthBias, FASTBendBias, 0, 0, 0, 0, 0, 0, 0},
}

// told writes a trial with its reading: "overhang-warp 3.2 cm".
func (s Swatch) told(t Trial) string {
	return t.Key() + " " + s.Readings[t].in(trials[t].scale, trials[t].unit)
}

func (s Swatch) weight(b bench) found {
	if s.done(Mass) {
		return found{b[Mass] / (b[Square] * b[Square]), Measured, "weighed: " + s.told(Mass) + ", " + s.told(Square)}
	}
	for _, t := range []Trial{GivenWeight, KESWeight, FASTWeight} {
		if s.done(t) {
			return found{b[t], Measured, s.told(t)}
		}
	}
	return found{}
}

// bend returns the rigidity along d of a cloth of that weight, kg/m².
func (s Swatch) bend(b bench, d direction, weight float64) found {
	switch {
	case s.done(d.overhang):
		return found{BendFromLength(b[d.overhang]/2, weight), Measured, "strip test: " + s.told(d.overhang) + " at 41.5°"}
	case s.done(d.loop):
		return found{BendFromLength(heartLength(b[d.loop], b[LoopLength]), weight), Measured, "heart loop: " +
			s.told(d.loop) + " of " + s.told(LoopLength)}
	case s.done(d.kesBend):
		return found{b[d.kesBend], Measured, s.told(d.kesBend)}
	case s.done(d.fast):
		return found{b[d.fast], Measured, s.told(d.fast)}
	case s.done(d.c):
		return found{BendFromLength(b[d.c], weight), Measured, s.told(d.c) + ", a bending length"}
	case s.done(KESBend) && d.bend != BendBias:
		return found{b[KESBend], Derived, s.told(KESBend) + " for both directions"}
	}
	return found{}
}

// shear returns G. A pull on the bias of a cloth that hardly stretches along
// its yarns has E45 = 4G.
func (s Swatch) shear(b bench) found {
	switch {
	case s.done(BiasStretch):
		return found{b[BiasLoad] / (4 * b[BiasStretch]), Derived, "load over four times the strain: " + s.told(BiasStretch) +
			", " + s.told(BiasLoad)}
	case s.done(FASTShear):
		return found{b[FASTShear], Measured, s.told(FASTShear)}
	case s.done(FASTBiasStretch):
		return found{ShearFromBiasStretch(b[FASTBiasStretch]), Derived, "123 over the bias stretch in %: " +
			s.told(FASTBiasStretch)}
	}
	return s.pooled(b, []Trial{KESShear, KESShearWarp, KESShearWeft})
}

// loop returns half of a KES loop, the mean of the directions given.
func (s Swatch) loop(b bench, ts ...Trial) found {
	v := s.pooled(b, ts)
	if v.kind == Unknown {
		return v
	}
	return found{v.value / 2, v.kind, "half of the loop: " + v.how}
}

// pooled returns the mean of those of ts that were done.
func (s Swatch) pooled(b bench, ts []Trial) (v found) {
	n := 0.0
	for _, t := range ts {
		if !s.done(t) {
			continue
		}
		if n > 0 {
			v.how += ", "
		}
		n++
		v.value += b[t]
		v.kind = Measured
		v.how += s.told(t)
	}
	if n > 1 {
		v.value /= n
		v.kind = Derived
		v.how += ", mean"
	}
	return v
}

// tensileCurve is the pull along one direction, and the power of its curve.
type tensileCurve struct {
	found
	power float64
}

// tensile returns the slope at drape loads along d.
func (s Swatch) tensile(b bench, d direction) tensileCurve {
	power := powerOf(b[d.lt])
	lt := fmt.Sprintf("LT %s", figures(s.Readings[d.lt].Mean))
	if s.Readings[d.lt].Digit == linearityRange {
		lt += " assumed"
	}
	from := func(load, strain float64, how string) tensileCurve {
		return tensileCurve{found{slopeAtDrape(load, strain, power), Derived,
			fmt.Sprintf("slope at %g N/m: %s, %s", DrapeLoad, how, lt)}, power}
	}
	switch {
	case s.done(d.stretch):
		return from(b[d.load], b[d.stretch], s.told(d.stretch)+", "+s.told(d.load))
	case s.done(d.emt):
		return from(KESTensileLoad, b[d.emt], s.told(d.emt))
	}
	return s.tensileFAST(b, d, from)
}

// fastLoads are the loads of a FAST pull test, gf/cm.
var fastLoads = [3]float64{5, 20, 100}

// tensileFAST takes the curve through the two least of E5, E20 and E100, or
// through one of them with the linearity.
func (s Swatch) tensileFAST(b bench, d direction,
	one func(load, strain float64, how string) tensileCurve) tensileCurve {
	var load, strain []float64
	var how string
	for i, t := range []Trial{d.e5, d.e20, d.e100} {
		if s.done(t) && len(load) < 2 {
			if how != "" {
				how += ", "
			}
			load, strain, how = append(load, fastLoads[i]*GramForcePerCm), append(strain, b[t]), how+s.told(t)
		}
	}
	switch {
	case len(load) == 0:
		return tensileCurve{}
	case len(load) == 1 || strain[1] <= strain[0]:
		return one(load[0], strain[0], how)
	}
	p := math.Log(load[1]/load[0]) / math.Log(strain[1]/strain[0])
	return tensileCurve{found{slopeAtDrape(load[0], strain[0], p), Derived,
		fmt.Sprintf("slope at %g N/m: %s", DrapeLoad, how)},
		p}
}

func (s Swatch) thickness(b bench) found {
	for _, t := range []Trial{GivenThickness, KESThickness, FASTThickness} {
		if s.done(t) {
			return found{b[t], Measured, s.told(t)}
		}
	}
	return found{}
}

// sharesOf turns variances into parts of their sum, largest first.
func sharesOf(parts []Share, spread float64) []Share {
	var out []Share
	for _, p := range parts {
		if p.Part > 0 {
			out = append(out, Share{p.Trial, p.Part / (spread * spread)})
		}
	}
	slices.SortStableFunc(out, func(a, b Share) int {
		switch {
		case a.Part > b.Part:
			return -1
		case a.Part < b.Part:
			return 1
		}
		return 0
	})
	return out
}
