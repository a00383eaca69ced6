// Package labs is the verb lab: standard tests of cloth on the solver that drapes it. A test
// is a file; all run through the flags of run.go. Start at [Cmd].
package labs

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/flags"
)

// Cmd runs the standard tests of cloth on the solver that drapes it.
type Cmd struct {
	Bend    bendCmd    `cmd:"" help:"Cantilever: a strip hangs over an edge."`
	Tensile tensileCmd `cmd:"" name:"pull" help:"A strip under load, at any grain."`
	Disc    discCmd    `cmd:"" help:"Drape meter: a disc of cloth over a smaller plate."`
	Hang    hangCmd    `cmd:"" help:"A sheet hung by two corners."`
	Swag    swagCmd    `cmd:"" help:"A swag: folds laid from pleats at either end of a board."`
	Loop    loopCmd    `cmd:"" help:"Heart loop: a strip clamped by both ends hangs as a tight fold."`
}

// testFlags are what all tests take.
type testFlags struct {
	clothFlags
	Spacing *flags.Length `placeholder:"LEN" help:"Between crossings of the lattice: finer is slower. Without it as fine as the cloth asks for, within limits."`
	Out     string        `short:"o" placeholder:"DIR" help:"Folder for result.json and, from disc, shadow.png. Without it nothing is written."`
	JSON    bool          `name:"json" help:"Print one JSON object and nothing else."`
	Quiet   bool          `short:"q" help:"No line of progress."`
}

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
