package main

import (
	"fmt"
	"math"
)

// labCmd runs the standard tests of cloth on the solver that drapes it.
type labCmd struct {
	Bend labBend `cmd:"" help:"Cantilever: a strip hangs over an edge."`
	Pull labPull `cmd:"" help:"A strip under load, at any grain."`
	Disc labDisc `cmd:"" help:"Drape meter: a disc of cloth over a smaller plate."`
	Hang labHang `cmd:"" help:"A sheet hung by two corners."`
	Swag labSwag `cmd:"" help:"A swag: folds laid from pleats at either end of a board."`
	Loop labLoop `cmd:"" help:"Heart loop: a strip clamped by both ends hangs as a tight fold."`
}

// labFlags are what all tests take.
type labFlags struct {
	labCloth
	Spacing *cloth `placeholder:"LEN" help:"Between crossings of the lattice: finer is slower. Without it as fine as the cloth asks for, within limits."`
	Out     string `short:"o" placeholder:"DIR" help:"Folder for result.json and, from disc, shadow.png. Without it nothing is written."`
	JSON    bool   `name:"json" help:"Print one JSON object and nothing else."`
	Quiet   bool   `short:"q" help:"No line of progress."`
}

// lengthFlag names a length flag and the place that it sets.
type lengthFlag struct {
	name string
	flag *cloth
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
func grainOf(g *degrees) float64 {
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
