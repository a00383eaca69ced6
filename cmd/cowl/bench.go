package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"runtime"
	"text/tabwriter"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/sim"
	"cowl/sim/drape"
)

// benchCmd measures how long drapes take on this machine.
type benchCmd struct {
	Quick bool `help:"Only what takes seconds."`
	Large bool `help:"A hung square of 241 by 241 crossings as well: minutes."`
	JSON  bool `name:"json" help:"Print one JSON object and nothing else."`
	Quiet bool `short:"q" help:"No line of progress."`
}

// benchRow is one walk to rest.
type benchRow struct {
	What     string     `json:"what"`
	Nodes    int        `json:"nodes"`
	Steps    int        `json:"steps"`
	Seconds  float64    `json:"seconds"`
	Memory   float64    `json:"memory_MB"` // of the whole program, after the walk
	Growth   float64    `json:"growth"`    // exponent of the seconds over nodes, from the row before; 0 in the first
	Status   sim.Status `json:"status"`
	Residual float64    `json:"residual"`
	Parts    parts      `json:"parts"`
}

// parts are the shares of the seconds, 0..1, that the parts of a step took; what is left
// went by before the walk and between its steps.
type parts struct {
	Listing float64 `json:"listing"`
	Layers  float64 `json:"layers"`
	Yarns   float64 `json:"yarns"`
	Balance float64 `json:"balance"`
	Moving  float64 `json:"moving"`
}

// partsOf reads a clock off.
func partsOf(c *sim.Clock, seconds float64) parts {
	of := func(w sim.Work) float64 { return c.Spent[w].Seconds() / seconds }
	return parts{of(sim.Listing), of(sim.Layers), of(sim.Yarns), of(sim.Balance), of(sim.Moving)}
}

// benchTask is a walk to measure.
type benchTask struct {
	what  string
	first bool // of its kind: there is no row before to compare with
	walk  func(context.Context, *sim.Clock) (benchRow, error)
}

// Run measures all tasks one after the other and prints a table.
func (b benchCmd) Run(ctx context.Context, c console.Console) error {
	tasks, err := b.tasks()
	if err != nil {
		return err
	}
	line := console.NewLine(c.Err, b.Quiet || b.JSON)
	var rows []benchRow
	for k, t := range tasks {
		line.Show(console.Progress{Stage: t.what, Share: float64(k) / float64(len(tasks))})
		r, err := t.measure(ctx)
		if ctx.Err() != nil {
			line.Clear()
			return context.Canceled
		}
		if err != nil {
			line.Clear()
			return fmt.Errorf("%w: %w", console.ErrNoResult, err)
		}
		if !t.first {
			r.Growth = growth(rows[len(rows)-1], r)
		}
		rows = append(rows, r)
	}
	line.Clear()
	if b.JSON {
		return c.PrintJSON(map[string]any{"cores": runtime.GOMAXPROCS(0), "rows": rows})
	}
	benchTable(c.Out, rows)
	return nil
}

// growth returns p of seconds ∝ nodes^p between two rows.
func growth(a, b benchRow) float64 {
	return math.Log(b.Seconds/a.Seconds) / math.Log(float64(b.Nodes)/float64(a.Nodes))
}

// tasks lists the demo at falling spacings, then hung squares of rising size.
func (b benchCmd) tasks() ([]benchTask, error) {
	h, err := drapeCmd{}.prepare()
	if err != nil {
		return nil, err
	}
	spacings, sides := []float64{15, 12, 8, 5, 3}, []int{31, 61, 121}
	if b.Quick {
		spacings, sides = spacings[:3], sides[:2]
	}
	if b.Large {
		sides = append(sides, 241)
	}
	var out []benchTask
	for k, mm := range spacings {
		job := h.Style.Job(h.Cowl, h.Form)
		job.Spacing, job.Fine = mm/1000, false
		out = append(out, benchTask{fmt.Sprintf("demo at %g mm", mm), k == 0,
			func(ctx context.Context, clock *sim.Clock) (benchRow, error) {
				job.Clock = clock
				return hangDemo(ctx, job)
			}})
	}
	stiffness := drape.Stiffness(h.Style.Fabric)
	for k, side := range sides {
		out = append(out, benchTask{fmt.Sprintf("hung square %d × %d", side, side), k == 0,
			func(ctx context.Context, clock *sim.Clock) (benchRow, error) {
				n, r, err := hangSquare(ctx, stiffness, side, clock)
				return benchRow{Nodes: n, Steps: r.Steps, Status: r.Status, Residual: r.Residual}, err
			}})
	}
	return out, nil
}

// hangDemo hangs the demo, placing and all.
func hangDemo(ctx context.Context, j drape.Job) (benchRow, error) {
	d, err := drape.Hang(ctx, j)
	if err != nil {
		return benchRow{}, err
	}
	return benchRow{Nodes: len(d.State.Pos), Steps: d.Steps, Status: d.Result.Status, Residual: d.Result.Residual}, nil
}

// measure does the task and takes its time.
func (t benchTask) measure(ctx context.Context) (benchRow, error) {
	defer console.Heed()()
	runtime.GC()
	start := time.Now()
	clock := new(sim.Clock)
	r, err := t.walk(ctx, clock)
	r.What, r.Seconds = t.what, time.Since(start).Seconds()
	r.Parts = partsOf(clock, r.Seconds)
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	r.Memory = float64(m.Sys-m.HeapReleased) / 1e6
	return r, err
}

// benchTable prints a row a walk.
func benchTable(w io.Writer, rows []benchRow) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "\tnodes\tsteps\tseconds\tµs/node step\tmemory MB\tseconds grow as nodes^\t"+
		"listing\tlayers\tyarns\tbalance\tmoving\tresidual\tended\t")
	for _, r := range rows {
		growth := ""
		if r.Growth != 0 {
			growth = fmt.Sprintf("%.2f", r.Growth)
		}
		q := r.Parts
		fmt.Fprintf(t, "%s\t%d\t%d\t%.2f\t%.3f\t%.0f\t%s\t%.0f %%\t%.0f %%\t%.0f %%\t%.0f %%\t%.0f %%\t%.1e\t%s\t\n",
			r.What, r.Nodes, r.Steps, r.Seconds, r.Seconds/float64(r.Steps)/float64(r.Nodes)*1e6, r.Memory, growth,
			100*q.Listing, 100*q.Layers, 100*q.Yarns, 100*q.Balance, 100*q.Moving, r.Residual, r.Status)
	}
	t.Flush()
	fmt.Fprintf(w, "\n%d cores. Demo with placing to a residual of 1e-3 of the weight, squares from an arc to 1e-2. Shares of "+
		"the seconds: layers that may touch looked for and woken, cloth pushed off cloth, pull, shear and bending, form and "+
		"masses, moves; what is left is setting up and reading.\n", runtime.GOMAXPROCS(0))
}
