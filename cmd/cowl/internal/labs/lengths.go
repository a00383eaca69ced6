package labs

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/flags"
)

// lengthFlag names a length flag and the place that it sets.
type lengthFlag struct {
	name string
	flag *flags.Length
	at   *float64 // m; keeps its value where the flag was not given
}

// lengths reads length flags into their places. A given length of nothing or
// less is not the default but a mistake.
func lengths(of ...lengthFlag) error {
	for _, l := range of {
		switch {
		case l.flag == nil:
		case !(*l.flag > 0):
			return fmt.Errorf("--%s: %g mm, want more than nothing", l.name, float64(*l.flag)*1000)
		default:
			*l.at = float64(*l.flag)
		}
	}
	return nil
}

// grainOf returns the grain, 0 where it was not given.
func grainOf(g *flags.Degrees) float64 {
	if g == nil {
		return 0
	}
	return float64(*g)
}

// countOf returns a number of placings, 0 where it was not given.
func countOf(n *int) int {
	if n == nil {
		return 0
	}
	return *n
}

// line formats a row of the report.
func line(name, format string, args ...any) string {
	return fmt.Sprintf("  %-14s ", name) + fmt.Sprintf(format, args...)
}

// inDegrees turns radians into degrees.
func inDegrees(rad float64) float64 { return rad * 180 / math.Pi }
