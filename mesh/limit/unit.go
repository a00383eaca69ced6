package limit

import (
	"fmt"
	"math"
	"strconv"
)

// Unit is what a kind of quantity is written in.
type Unit struct {
	Name       string  // as it follows a number: " cm", "°"
	PerSI      float64 // how many make one SI unit
	Value, End int     // decimals of a value and of the ends of a range; Figures: what it takes
}

// Figures writes four figures and whole numbers in full.
const Figures = -1

// The kinds of quantities of body and cut.
var (
	Share  = Unit{"", 1, 1, 1}
	Count  = Unit{"", 1, 0, 0}
	Length = Unit{" cm", 100, 1, 1}
	Small  = Unit{" mm", 1000, 1, 0}
	Angle  = Unit{"°", 180 / math.Pi, 1, 1}
	Mass   = Unit{" g", 1000, 1, 1}

	inches = Unit{" in", 1 / 0.0254, 2, 2} // exact (international inch, 1959)
)

// of returns v in the unit, to 12 figures: 8.25 and no 8.250000000000002.
func (u Unit) of(v float64) float64 {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(v*u.PerSI, 'g', 12, 64), 64)
	return x
}

// Units is what a reader wants lengths in.
type Units bool

// The units.
const (
	Centimetres Units = false
	Inches      Units = true
)

// Quantity is one or several values of a unit, which is written once, behind
// them. In a format %v gives the decimals of the unit and %.2f two; inches
// always have two.
type Quantity struct {
	layout string // %s for each value
	values []float64
	unit   Unit
	digits int
}

// Of is the quantity v, SI.
func Of(v float64, u Unit) Quantity { return Quantity{"%s", []float64{v}, u, u.Value} }

// Metres is a length, m.
func Metres(v float64) Quantity { return Of(v, Length) }

// Between is a range, SI.
func Between(lo, hi float64, u Unit) Quantity {
	return Quantity{"%s–%s", []float64{lo, hi}, u, u.End}
}

// Point is a place on the flat piece, m.
func Point(x, y float64) Quantity { return Quantity{"(%s, %s)", []float64{x, y}, Length, Length.Value} }

// in returns q with its lengths in the units of a reader.
func (q Quantity) in(u Units) Quantity {
	if u == Inches && q.unit == Length {
		q.unit = inches
	}
	return q
}

// Format writes q.
func (q Quantity) Format(f fmt.State, _ rune) {
	digits := q.digits
	if n, ok := f.Precision(); ok {
		digits = n
	}
	if q.unit == inches {
		digits = inches.Value
	}
	var out []any
	for _, v := range q.values {
		out = append(out, q.unit.written(v, digits))
	}
	fmt.Fprintf(f, q.layout+"%s", append(out, q.unit.Name)...)
}

// written is the number of v, SI, in the unit.
func (u Unit) written(v float64, digits int) string {
	x := u.of(v)
	switch {
	case digits != Figures:
		return strconv.FormatFloat(v*u.PerSI, 'f', digits, 64)
	case x == float64(int32(x)):
		return strconv.FormatInt(int64(x), 10)
	}
	return strconv.FormatFloat(x, 'g', 4, 64)
}
