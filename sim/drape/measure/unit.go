package measure

import (
	"math"

	"cowl/mesh/ruler"
	"cowl/sim"
)

// Unit is what numbers are written in. The zero Unit is that of pure numbers.
type Unit struct {
	Sign    string                // behind the number
	from    func(float64) float64 // SI
	inch    *Unit                 // instead of it for people who measure in inches; nil: it stays
	finer   int                   // decimals more than the table has, which are those of the metric unit
	onRuler func(float64) string  // how an amount is written, SI; nil: number and sign
	rough   bool                  // where the table has decimals, a fraction is too rough
}

// The units for people.
var (
	Centimetre       = Unit{Sign: "cm", from: func(m float64) float64 { return m * 100 }, inch: &eighths}
	Millimetre       = Unit{Sign: "mm", from: func(m float64) float64 { return m * 1000 }, inch: &thirtySeconds}
	SquareCentimetre = Unit{Sign: "cm²", from: func(m2 float64) float64 { return m2 * 100 * 100 }, inch: &squareInches}
	Lattice          = Unit{Sign: "mm", from: Millimetre.from} // of the spacing of yarns, which stays
	Percent          = Unit{Sign: "%", from: func(share float64) float64 { return share * 100 }}
	// that pulls as hard
	Gram   = Unit{Sign: "g", from: func(n float64) float64 { return n / sim.Gravity * 1000 }}
	Degree = Unit{Sign: "°", from: func(rad float64) float64 { return rad * 180 / math.Pi }}
)

// What stands for them where people measure in inches.
var (
	eighths       = Unit{Sign: "in", from: inInches, finer: 1, onRuler: ruler.Inches.Length}
	thirtySeconds = Unit{Sign: "in", from: inInches, finer: 2, onRuler: ruler.Inches.Small, rough: true}
	squareInches  = Unit{Sign: "sq in", from: func(m2 float64) float64 { return m2 / ruler.Inch / ruler.Inch }, finer: 1}
)

func inInches(m float64) float64 { return m / ruler.Inch }

// in is what stands for the unit in the units of a reader.
func (u Unit) in(r ruler.Units) Unit {
	if r == ruler.Inches && u.inch != nil {
		return *u.inch
	}
	return u
}

// inFiles are the units that keys end in.
var inFiles = map[string]Unit{
	"mm": Millimetre, "mm2": {Sign: "mm²", from: func(m2 float64) float64 { return m2 * 1000 * 1000 }}, "percent": Percent,
	"deg": Degree, "N": {Sign: "N"}, "mJ": {Sign: "mJ", from: func(j float64) float64 { return j * 1000 }},
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
