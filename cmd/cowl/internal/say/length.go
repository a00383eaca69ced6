package say

import "cowl/mesh/ruler"

// Length is a length of m with its unit, as reports are spoken: 12.3 cm or 4 7/8 in.
func Length(m float64) string { return ruler.Spoken().Length(m) }

// Unit is what lengths are spoken in: cm or in.
func Unit() string { return string(ruler.Spoken()) }

// InUnit is a length of m in that unit, and with how many decimals it stands in a column.
func InUnit(m float64) (v float64, digits int) {
	if ruler.Spoken() == ruler.Inches {
		digits++
	}
	return m * ruler.Spoken().PerMetre(), digits + 1
}

// Fine is a length of m that is compared with another.
func Fine(m float64) string { return ruler.Spoken().Fine(m) }

// Slight is by how much of m something is off.
func Slight(m float64) string { return ruler.Spoken().Slight(m) }

// Small is a small length of m.
func Small(m float64) string { return ruler.Spoken().Small(m) }

// Round is a length of m of which the round figure counts.
func Round(m float64) string { return ruler.Spoken().Round(m) }

// Area is an area of m², in square centimetres with so many decimals.
func Area(m2 float64, digits int) string { return ruler.Spoken().Area(m2, digits) }

// Cloth is the area of a length of cloth, m².
func Cloth(m2 float64) string { return ruler.Spoken().Cloth(m2) }
