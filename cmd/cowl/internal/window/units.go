package window

import (
	"fmt"
	"strings"

	"cowl/mesh/ruler"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Units is what lengths in the window are written in; it has its own, whatever reports
// are written in.
type Units = ruler.Units

// The units.
const (
	Centimetres = ruler.Centimetres
	Inches      = ruler.Inches
)

const inch = ruler.Inch

// figure writes an SI value of a figure.
func figure(u Units, f *measure.Figure, v float64) string {
	return amount(u, f.Metric(), f.Digits, f.Window.Signed, v)
}

// foldFigure writes a figure of a fold.
func foldFigure(u Units, f *measure.FoldFigure, of *drape.Fold) string {
	return amount(u, f.Metric(), f.Digits, false, f.SI(of))
}

// amount writes an SI value of which people are told in a unit.
func amount(u Units, people measure.Unit, digits int, withSign bool, v float64) string {
	switch people.Sign {
	case measure.Centimetre.Sign:
		return u.Length(v)
	case measure.Millimetre.Sign:
		return u.Small(v)
	case measure.SquareCentimetre.Sign:
		return u.Area(v, 1)
	}
	v = people.From(v)
	if withSign {
		return signed(v, fmt.Sprintf("%%.%df", digits), " "+people.Sign)
	}
	return noMinus(strings.TrimSuffix(fmt.Sprintf("%.*f %s", digits, v, people.Sign), " "))
}

// noMinus takes the sign off a zero.
func noMinus(s string) string {
	if strings.Trim(s, "-0. cmin²sqw") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// signed writes a number with its sign, zero without.
func signed(v float64, format, unit string) string {
	s := fmt.Sprintf(format, v) + unit
	if v > 0 {
		s = "+" + s
	}
	return noMinus(s)
}
