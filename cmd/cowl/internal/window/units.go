package window

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/mesh/limit"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Units is what lengths are written in: centimetres or inches.
type Units string

// The units.
const (
	Centimetres Units = "cm"
	Inches      Units = "in"
)

const inch = 0.0254 // m, exact by definition (international inch, 1959)

// metre is how many of a unit make a metre.
func (u Units) perMetre() float64 {
	if u == Inches {
		return 1 / inch
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
	if u == Inches && math.Abs(m) < inch {
		return inches(m, 32)
	}
	if u == Inches {
		return inches(m, 8)
	}
	return noMinus(fmt.Sprintf("%.0f mm", m*1000))
}

// inches writes a length in m in whole inches and a fraction of so many parts, as small
// as it goes: 3 1/8 in.
func inches(m float64, parts int) string {
	n := int(math.Round(math.Abs(m) / inch * float64(parts)))
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

// apart writes the spacing of a lattice, m.
func (u Units) apart(m float64) string {
	if u == Inches {
		return u.Small(m)
	}
	return strconv.FormatFloat(math.Round(m*1e4)/10, 'f', -1, 64) + " mm"
}

// Area writes an area in m².
func (u Units) Area(m2 float64) string {
	if u == Inches {
		return noMinus(fmt.Sprintf("%.2f sq in", m2/inch/inch))
	}
	return noMinus(fmt.Sprintf("%.1f cm²", m2*1e4))
}

// Figure writes an SI value of a figure.
func (u Units) Figure(f *measure.Figure, v float64) string {
	return u.amount(f.People(), f.Digits, f.Window.Signed, v)
}

// Fold writes a figure of a fold.
func (u Units) Fold(f *measure.FoldFigure, of *drape.Fold) string {
	return u.amount(f.People(), f.Digits, false, f.SI(of))
}

// amount writes an SI value of which people are told in a unit.
func (u Units) amount(people measure.Unit, digits int, withSign bool, v float64) string {
	switch people.Sign {
	case measure.Centimetre.Sign:
		return u.Length(v)
	case measure.Millimetre.Sign:
		return u.Small(v)
	case measure.SquareCentimetre.Sign:
		return u.Area(v)
	}
	v = people.From(v)
	if withSign {
		return signed(v, fmt.Sprintf("%%.%df", digits), " "+people.Sign)
	}
	return noMinus(strings.TrimSuffix(fmt.Sprintf("%.*f %s", digits, v, people.Sign), " "))
}

// limit is the unit that messages are read in.
func (u Units) limit() limit.Units { return limit.Units(u == Inches) }

// said writes a text with its lengths in u.
func (u Units) said(w limit.Words) string { return w.In(u.limit()) }

// words writes an error on one line.
func (u Units) words(err error) string {
	return strings.ReplaceAll(limit.In(err, u.limit()), "\n", "; ")
}

// step is that of a slider for a length, m.
func (u Units) step() float64 {
	if u == Inches {
		return inch / 8
	}
	return 0.005
}

// noMinus takes the sign off a zero.
func noMinus(s string) string {
	if strings.Trim(s, "-0. cmin²sqw") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// Parse reads a length: a bare number in u, or with its own unit; inches may be
// a fraction: 3 1/8. It returns m.
func (u Units) Parse(text string) (float64, error) {
	t := strings.ToLower(strings.TrimSpace(strings.Replace(text, ",", ".", 1)))
	per := u.perMetre()
	for _, unit := range []struct {
		name string
		per  float64
	}{{"cm", 100}, {"mm", 1000}, {"inches", 1 / inch}, {"inch", 1 / inch}, {"in", 1 / inch}, {"\"", 1 / inch}, {"″", 1 / inch}} {
		if rest, ok := strings.CutSuffix(t, unit.name); ok {
			t, per = strings.TrimSpace(rest), unit.per
			break
		}
	}
	v, err := fraction(t)
	if err != nil {
		return 0, fmt.Errorf("%q is no length: type a number in %s, or with its unit: 8cm, 80mm, 3 1/8in", text, u)
	}
	return v / per, nil
}

// fraction reads 3, 3.25, 1/8 or 3 1/8.
func fraction(t string) (float64, error) {
	whole, part, mixed := strings.Cut(t, " ")
	if !mixed && strings.Contains(t, "/") {
		whole, part = "0", t
	}
	v, err := strconv.ParseFloat(whole, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("no number")
	}
	if part == "" {
		return v, nil
	}
	a, b, _ := strings.Cut(strings.TrimSpace(part), "/")
	up, err1 := strconv.ParseUint(a, 10, 16)
	down, err2 := strconv.ParseUint(b, 10, 16)
	if err1 != nil || err2 != nil || down == 0 {
		return 0, fmt.Errorf("no fraction")
	}
	return v + math.Copysign(float64(up)/float64(down), v), nil
}
