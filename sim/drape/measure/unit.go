package measure

import (
	"math"

	"cowl/sim"
)

// Unit is what numbers are written in. The zero Unit is that of pure numbers.
type Unit struct {
	Sign string                // behind the number
	from func(float64) float64 // SI
}

// The units for people.
var (
	Centimetre       = Unit{"cm", func(m float64) float64 { return m * 100 }}
	Millimetre       = Unit{"mm", func(m float64) float64 { return m * 1000 }}
	SquareCentimetre = Unit{"cm²", func(m2 float64) float64 { return m2 * 100 * 100 }}
	Percent          = Unit{"%", func(share float64) float64 { return share * 100 }}
	Gram             = Unit{"g", func(n float64) float64 { return n / sim.Gravity * 1000 }} // that pulls as hard
	Degree           = Unit{"°", func(rad float64) float64 { return rad * 180 / math.Pi }}
)

// inFiles are the units that keys end in.
var inFiles = map[string]Unit{
	"mm": Millimetre, "mm2": {"mm²", func(m2 float64) float64 { return m2 * 1000 * 1000 }}, "percent": Percent,
	"deg": Degree, "N": {Sign: "N"}, "mJ": {"mJ", func(j float64) float64 { return j * 1000 }},
}

// From turns an SI value into the unit.
func (u Unit) From(si float64) float64 {
	if u.from == nil {
		return si
	}
	return u.from(si)
}

// behind is what stands behind a number.
func (u Unit) behind() string {
	if u.Sign == "" || u.Sign == Degree.Sign {
		return u.Sign
	}
	return " " + u.Sign
}
