package materials

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// dimension is a kind of quantity with the units it may be written in.
type dimension struct {
	units   map[string]float64 // SI value of one, by plain spelling
	wanted  string             // for messages
	example string             // two or three units for a bare number
}

var (
	lengths = dimension{map[string]float64{"mm": 1e-3, "cm": 1e-2, "m": 1, "in": 0.0254}, "mm, cm, m or in", "cm mm in"}
	masses  = dimension{map[string]float64{"mg": 1e-6, "g": 1e-3, "kg": 1, "oz": 0.028349523125}, "g, mg, kg or oz",
		"g oz"}
	weights = dimension{map[string]float64{"gsm": 1e-3, "g/m2": 1e-3, "kg/m2": 1, "mg/cm2": MilligramPerCm2,
		"oz/yd2": OuncePerYard2, "momme": Momme},
		"gsm, g/m², kg/m², mg/cm², oz/yd² or momme", "gsm oz/yd² momme"}
	shares = dimension{map[string]float64{"%": 1e-2}, "%", "%"}
	loads  = dimension{map[string]float64{"gf/cm": GramForcePerCm, "g/cm": GramForcePerCm, "N/m": 1, "cN/cm": 1,
		"N/cm": 100},
		"gf/cm, cN/cm, N/cm or N/m", "gf/cm N/m"}
	rigidities = dimension{map[string]float64{"uNm": 1e-6, "mNm": 1e-3, "Nm": 1, "uNm2/m": 1e-6, "mNm2/m": 1e-3,
		"gfcm2/cm": GramForceCm2PerCm, "cNcm2/cm": 1e-4, "mgcm": MilligramCm},
		"µN·m, mN·m²/m, gf·cm²/cm, cN·cm²/cm or mg·cm", "µN·m gf·cm²/cm"}
	moments = dimension{map[string]float64{"mN": 1e-3, "N": 1, "uN": 1e-6, "mNm/m": 1e-3, "gfcm/cm": GramForceCmPerCm,
		"cNcm/cm": 1e-2},
		"mN, mN·m/m, gf·cm/cm or cN·cm/cm", "mN gf·cm/cm"}
	shears = dimension{map[string]float64{"N/m": 1, "gf/cmdeg": GramForcePerCmDegree, "gf/cm/deg": GramForcePerCmDegree,
		"cN/cmdeg": 180 / math.Pi, "cN/cm/deg": 180 / math.Pi},
		"N/m, gf/(cm·deg) or cN/(cm·deg)", "N/m gf/(cm·deg)"}
	angles  = dimension{map[string]float64{"deg": math.Pi / 180, "°": math.Pi / 180}, "degrees", "°"}
	numbers = dimension{map[string]float64{"": 1}, "a bare number", ""}
)

var (
	amountForm = regexp.MustCompile(`^([+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)\s*(\S*(?: \S+)*)$`)
	plain      = strings.NewReplacer("µ", "u", "μ", "u", "²", "2", "^", "", "·", "", "*", "", "(", "", ")", "", " ", "")
)

// amount is a number read from text.
type amount struct {
	si    float64
	digit float64 // SI value of one in the last place written
}

// parse reads a number with its unit; bare is the unit of one without, empty
// if it must have one.
func (d dimension) parse(text, bare string) (amount, error) {
	m := amountForm.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return amount{}, fmt.Errorf("%.120q is no quantity, want a number and its unit, one of %s", text, d.wanted)
	}
	unit := plain.Replace(m[2])
	if unit == "" {
		unit = plain.Replace(bare)
	}
	scale, known := d.units[unit]
	v, err := strconv.ParseFloat(m[1], 64)
	switch {
	case err != nil || math.IsInf(v*scale, 0):
		return amount{}, fmt.Errorf("%.120q is too large a number", text)
	case !known && m[2] == "":
		return amount{}, fmt.Errorf("%.120q has no unit, want it with the number: %s", text, d.spelled(m[1]))
	case !known:
		return amount{}, fmt.Errorf("%.120q has unit %.40q, want %s", text, m[2], d.wanted)
	}
	return amount{v * scale, lastPlace(m[1]) * scale}, nil
}

// spelled writes number with the usual units: "8cm, 8mm, 8in".
func (d dimension) spelled(number string) string {
	var out []string
	for _, u := range strings.Fields(d.example) {
		out = append(out, number+u)
	}
	return strings.Join(out, ", ")
}

// lastPlace returns one in the last place of a decimal number: 0.1 for 3.2.
func lastPlace(number string) float64 {
	mantissa, exponent, _ := strings.Cut(strings.ToLower(number), "e")
	e, _ := strconv.Atoi(exponent) // empty is 0; the form lets nothing else through
	if _, decimals, dot := strings.Cut(mantissa, "."); dot {
		e -= len(decimals)
	}
	return math.Pow10(e)
}
