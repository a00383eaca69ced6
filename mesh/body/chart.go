package body

import (
	"math"

	"cowl/mesh/limit"
)

// Source says whose the chart is and which of its rows are not read but recalled.
const Source = "W. Aldrich, Metric Pattern Cutting for Women's Wear, 6th ed., standard size chart (as reproduced " +
	"on the web): " +
	"British sizes. Armscye depth, nape to waist and waist to hip are common practice, from memory"

// The size chart is linear in the size number, so one row holds a measurement
// at size 10 and its step for each size of two numbers.
type row struct{ at10, step float64 } // cm

// Girths and widths: W. Aldrich, Metric Pattern Cutting for Women's Wear, 6th
// ed., standard size chart (as reproduced on the web), sizes 6 to 18.
var (
	bust        = row{88, 4}
	waist       = row{72, 4}
	hips        = row{96, 4}
	backWidth   = row{34.4, 1}
	acrossFront = row{32.4, 1.2}
	shoulder    = row{12.25, 0.25}
	neck        = row{37, 1}
	bustDart    = row{7, 0.6}

	armscyeDepth = row{21, 0.4}   // from memory, sizes 6 to 14
	napeToWaist  = row{41, 0.5}   // from memory, sizes 6 to 14
	waistToHip   = row{20.3, 0.3} // from memory
)

// The smallest and the largest size of the chart; sizes are even.
const (
	SmallestSize = 6
	LargestSize  = 18
)

// Sizes returns the size numbers of the chart in rising order.
func Sizes() []int {
	var s []int
	for n := SmallestSize; n <= LargestSize; n += 2 {
		s = append(s, n)
	}
	return s
}

// FromChart returns the body of a UK-style size number, 6 to 18 in steps of
// two. Apex and bust span are derived by the rules of the draft (size 10:
// 25.5 cm and 19.7 cm), the slope is MeanSlope. An unknown size is an error.
func FromChart(size int) (Body, error) {
	if size < SmallestSize || size > LargestSize || size%2 != 0 {
		return Body{}, limit.Errorf("size", "size %d, want an even size %d–%d: choose one of %v or give your own "+
			"measurements",
			size, SmallestSize, LargestSize, Sizes())
	}
	return onLine(float64(size-10) / 2), nil
}

// onLine returns the body so many sizes above size 10 on the lines of the chart.
func onLine(steps float64) Body {
	at := func(r row) float64 { return math.Round((r.at10+steps*r.step)*1000) / 1e5 }
	b := Body{
		Bust: at(bust), Waist: at(waist), Hip: at(hips),
		BackWidth: at(backWidth), AcrossFront: at(acrossFront),
		Shoulder: at(shoulder), Neck: at(neck), BustDart: at(bustDart),
		ArmscyeDepth: at(armscyeDepth), NapeToWaist: at(napeToWaist),
		WaistToHip: at(waistToHip),
	}
	return b.Filled()
}
