// Package say writes the figures and words that reports of all kinds share.
package say

import (
	"fmt"
	"math"
	"strings"
)

// Caution stands under every prediction.
const Caution = "A prediction is not a toile: cut a test in real cloth before cutting the good one."

// Degrees is an angle of rad in degrees.
func Degrees(rad float64) float64 { return rad * 180 / math.Pi }

// FirstLine is what stands before the first line break.
func FirstLine(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	return s
}

// Several says how many of a thing there are.
func Several(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// MM is a length in mm.
func MM(m float64) float64 { return m * 1000 }
