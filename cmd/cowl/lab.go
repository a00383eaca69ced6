package main

import (
	"context"
	"fmt"
	"math"
	"time"

	"cowl/sim"
	"cowl/sim/lab"
)

// labCmd runs the standard tests of cloth on the solver that drapes it.
type labCmd struct {
	Bend labBend `cmd:"" help:"Cantilever: a strip hangs over an edge."`
	Pull labPull `cmd:"" help:"A strip under load, at any grain."`
	Disc labDisc `cmd:"" help:"Drape meter: a disc of cloth over a smaller plate."`
	Hang labHang `cmd:"" help:"A sheet hung by two corners."`
}

// labFlags are what all tests take.
type labFlags struct {
	labCloth
	Spacing *cloth `placeholder:"LEN" help:"Between crossings of the lattice: finer is slower. Without it as fine as the cloth asks for, within limits."`
	Out     string `short:"o" placeholder:"DIR" help:"Folder for result.json and, from disc, shadow.png. Without it nothing is written."`
	JSON    bool   `name:"json" help:"Print one JSON object and nothing else."`
}

// labRun is what every test tells of how it was computed.
type labRun struct {
	Fabric   string     `json:"fabric"`
	Status   sim.Status `json:"status"`
	Residual float64    `json:"residual"` // unbalanced force over the weight; over the load in pull
	Nodes    int        `json:"nodes"`
	Spacing  float64    `json:"spacing_mm"`
	Steps    int        `json:"steps"`
	Seconds  float64    `json:"seconds"`
}

// runOf describes a run that began at start.
func (f labFlags) runOf(r lab.Run, name string, start time.Time) labRun {
	return labRun{name, r.Status, r.Residual, r.Nodes, r.Spacing * 1000, r.Steps, time.Since(start).Seconds()}
}

// metres returns a length flag, 0 where it was not given. A given length of
// nothing or less is not the default but a mistake.
func metres(name string, v *cloth) (float64, error) {
	if v == nil {
		return 0, nil
	}
	if !(*v > 0) {
		return 0, fmt.Errorf("--%s: %g mm, want more than nothing", name, float64(*v)*1000)
	}
	return float64(*v), nil
}

// lengths reads length flags into their places.
func lengths(of ...struct {
	name string
	flag *cloth
	at   *float64
}) error {
	for _, l := range of {
		v, err := metres(l.name, l.flag)
		if err != nil {
			return err
		}
		*l.at = v
	}
	return nil
}

// lengthFlag names a length flag and the place that it sets.
type lengthFlag = struct {
	name string
	flag *cloth
	at   *float64
}

// grainOf returns the grain, 0 where it was not given.
func grainOf(g *degrees) float64 {
	if g == nil {
		return 0
	}
	return float64(*g)
}

// countOf returns a number of placings, 0 where it was not given.
func countOf(n *int) (int, error) {
	if n == nil {
		return 0, nil
	}
	if *n < 1 {
		return 0, fmt.Errorf("--placings: %d, want 1 or more", *n)
	}
	return *n, nil
}

// tell writes and prints the result of a test; lines are for people.
func (f labFlags) tell(ctx context.Context, c console, result any, run labRun, lines []string, files ...output) error {
	if ctx.Err() != nil {
		return context.Canceled
	}
	if f.Out != "" {
		b, err := jsonOf(result)
		if err != nil {
			return err
		}
		if err := save(f.Out, append(files, output{"result.json", b})); err != nil {
			return err
		}
	}
	if f.JSON {
		if err := printJSON(c, result); err != nil {
			return err
		}
	} else {
		for _, l := range lines {
			fmt.Fprintln(c.out, l)
		}
		fmt.Fprintf(c.out, "  %-14s %s; unbalanced force %.1e; %d points %.2g mm apart, %d steps, %.1f s\n", "Computed", run.Status, run.Residual, run.Nodes, run.Spacing, run.Steps, run.Seconds)
	}
	if run.Status != sim.Settled {
		fmt.Fprintf(c.err, "cowl: NOT SETTLED (%s): the figures are those of where it stopped\n", run.Status)
		return silent{exitNotSettled}
	}
	return nil
}

// line formats a row of the report.
func line(name, format string, args ...any) string {
	return fmt.Sprintf("  %-14s ", name) + fmt.Sprintf(format, args...)
}

// inDegrees turns radians into degrees.
func inDegrees(rad float64) float64 { return rad * 180 / math.Pi }
