package body

import "math"

// ChartHeight is the height of the wearers of the chart, m: the middle of the 160 to
// 172 cm that it is made for (from memory).
const ChartHeight = 1.66

// What a height may be, m. Beyond, a grown wearer is measured all over.
const (
	LeastHeight = 1.40
	MostHeight  = 2.00
)

// AtBust returns the body on the lines of the chart at a bust (m). The chart is linear
// in the size number, so that between its sizes the line is read and beyond size 6 and
// 18 it is drawn on; OnChart tells. What a scaled body has, a measured one may not: a
// measurement that is taken goes before it.
func AtBust(bust float64) Body {
	b := onLine(sizesAbove10(bust))
	b.Bust = bust
	return b
}

// SizeAt returns the size number of the chart at a bust (m), whole or not.
func SizeAt(bust float64) float64 { return 10 + 2*sizesAbove10(bust) }

// sizesAbove10 is how many sizes a bust (m) lies above size 10.
func sizesAbove10(at float64) float64 { return (at*100 - bust.at10) / bust.step }

// OnChart reports whether a bust (m) lies between those of the smallest and the largest size.
func OnChart(bust float64) bool {
	const slack = 1e-9
	size := SizeAt(bust)
	return size >= SmallestSize-slack && size <= LargestSize+slack
}

// Scales reports whether a measurement of that name goes with the height.
func Scales(name string) bool {
	return name == "armscye depth" || name == "nape to waist" || name == "waist to hip"
}

// Tall returns b, of a chart made for the height of (m), for another height (m): what is
// measured upright goes with it, what is measured round or across stays, and the apex follows
// the rule of the draft. Nape to waist of size 10 then changes by 2 cm for 8 cm of height, and
// petite and tall figures are graded by about that (common practice).
func (b Body) Tall(height, of float64) Body {
	for _, m := range Measures() {
		if v := m.In(&b); Scales(m.Name) {
			*v = math.Round(*v*height/of*1e5) / 1e5
		}
	}
	b.BustSpan, b.ApexDepth = 0, 0
	return b.Filled()
}
