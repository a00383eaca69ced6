// Package ruler writes and reads lengths as a reader has them on the ruler: centimetres,
// or inches with fractions. Values are SI. Start at [Units].
package ruler

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/mesh/limit"
)

// Units is what lengths are written in: centimetres or inches.
type Units string

// The units.
const (
	Centimetres Units = "cm"
	Inches      Units = "in"
)

// Inch is an inch in m, exact by definition (NIST SP 811, 2008, appendix B.6).
const Inch = 0.0254

// PerMetre is how many of the unit make a metre.
func (u Units) PerMetre() float64 {
	if u == Inches {
		return 1 / Inch
	}
	return 100
}

// Length writes a length in m with its unit: inches in eighths, as rulers have them.
func (u Units) Length(m float64) string {
	if u == Inches {
		return inches(m, 8)
	}
	return noMinus(fmt.Sprintf("%.1f cm", m*100))
}

// Small writes a small length in m: millimetres, or below an inch thirty-seconds of it.
func (u Units) Small(m float64) string {
	if u == Inches && math.Abs(m) < Inch {
		return inches(m, 32)
	}
	if u == Inches {
		return inches(m, 8)
	}
	return noMinus(fmt.Sprintf("%.0f mm", m*1000))
}

// Fine writes a length in m that is compared with another: to a tenth of a millimetre, or
// in thirty-seconds of an inch.
func (u Units) Fine(m float64) string {
	if u == Inches {
		return inches(m, 32)
	}
	return noMinus(fmt.Sprintf("%.2f cm", m*100))
}

// Slight writes how far something is off, in m: tenths of a millimetre, or thousandths of
// an inch, since a fraction would make nothing of it.
func (u Units) Slight(m float64) string {
	if u == Inches {
		return noMinus(fmt.Sprintf("%.3f in", m/Inch))
	}
	return noMinus(fmt.Sprintf("%.1f mm", m*1000))
}

// Round writes a length in m of which only the round figure counts, such as a width of
// cloth: whole centimetres, or half inches.
func (u Units) Round(m float64) string {
	if u == Inches {
		return inches(m, 2)
	}
	return noMinus(fmt.Sprintf("%.0f cm", m*100))
}

// Enough writes a length in m that must not come out short: the next whole centimetre, or
// half inch.
func (u Units) Enough(m float64) string {
	step := 0.01
	if u == Inches {
		step = Inch / 2
	}
	return u.Round(math.Ceil(m/step-1e-9) * step)
}

// inches writes a length in m in whole inches and a fraction of so many parts, as small
// as it goes: 3 1/8 in.
func inches(m float64, parts int) string {
	n := int(math.Round(math.Abs(m) / Inch * float64(parts)))
	sign := ""
	if m < 0 && n > 0 {
		sign = "-"
	}
	whole, up := n/parts, n%parts
	if up == 0 {
		return fmt.Sprintf("%s%d in", sign, whole)
	}
	for up%2 == 0 {
		up, parts = up/2, parts/2
	}
	if whole == 0 {
		return fmt.Sprintf("%s%d/%d in", sign, up, parts)
	}
	return fmt.Sprintf("%s%d %d/%d in", sign, whole, up, parts)
}

// Apart writes the spacing of a lattice, m.
func (u Units) Apart(m float64) string {
	if u == Inches {
		return u.Small(m)
	}
	return strconv.FormatFloat(math.Round(m*1e4)/10, 'f', -1, 64) + " mm"
}

// Area writes an area in m², square centimetres with so many decimals, square inches with
// one more.
func (u Units) Area(m2 float64, digits int) string {
	if u == Inches {
		return noMinus(fmt.Sprintf("%.*f sq in", digits+1, m2/Inch/Inch))
	}
	return noMinus(fmt.Sprintf("%.*f cm²", digits, m2*1e4))
}

// Cloth writes the area of a length of cloth in m²: square metres or square yards.
func (u Units) Cloth(m2 float64) string {
	if u == Inches {
		return fmt.Sprintf("%.2f sq yd", m2/(36*Inch)/(36*Inch))
	}
	return fmt.Sprintf("%.2f m²", m2)
}

// Limit is the unit that messages are read in.
func (u Units) Limit() limit.Units { return limit.Units(u == Inches) }

// Said writes a text with its lengths in u.
func (u Units) Said(w limit.Words) string { return w.In(u.Limit()) }

// Words writes an error on one line.
func (u Units) Words(err error) string {
	return strings.ReplaceAll(limit.In(err, u.Limit()), "\n", "; ")
}

// Step is that of a slider for a length, m.
func (u Units) Step() float64 {
	if u == Inches {
		return Inch / 8
	}
	return 0.005
}

// noMinus takes the sign off a zero.
func noMinus(s string) string {
	if strings.Trim(s, "-0. cmin²sq") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}
