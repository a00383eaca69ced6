// Package proof holds the checks of the program against the outside: closed
// forms, published tests and worked figures. Each says what it compares, with
// what, how near it must come and where the figure stands; a miss stays a miss.
// Start at All and Run.
package proof

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"cowl/sim/fault"
)

// Check is one row of the table.
type Check struct {
	Name      string  `json:"name"`
	Got       float64 `json:"got"`
	Want      float64 `json:"want"`
	Tolerance float64 `json:"tolerance"` // largest difference that passes, in Unit
	Unit      string  `json:"unit"`
	Source    string  `json:"source"` // author, title, year, table; or "common practice"; or "from memory"
	Pass      bool    `json:"pass"`
	Note      string  `json:"note,omitempty"` // why it misses, where that is known
}

// Pending is a check that has not been run.
type Pending struct {
	Check
	run func(ctx context.Context) (got float64, note string, err error)
}

// Run runs the trials, as many at a time as there are cores, and returns the
// rows in the order of the trials. A trial that fails to run is a miss with the
// error as its note. Told, if not nil, is called as each begins, with the
// number of those that have ended.
func Run(ctx context.Context, trials []Pending, told func(ended int, begun string)) []Check {
	out := make([]Check, len(trials))
	next := make(chan int)
	var wg sync.WaitGroup
	var ended atomic.Int64
	for range min(len(trials), runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			defer fault.Tell()
			for k := range next {
				if told != nil {
					told(int(ended.Load()), trials[k].Name)
				}
				out[k] = trials[k].check(ctx)
				ended.Add(1)
			}
		})
	}
	for k := range trials {
		next <- k
	}
	close(next)
	wg.Wait()
	return out
}

// cancelled is the note of a trial that was not run to its end.
const cancelled = "cancelled"

// Cancelled reports whether the trial was called off before it had ended, so that
// there is no figure.
func (c Check) Cancelled() bool { return c.Note == cancelled }

// check runs one trial.
func (t Pending) check(ctx context.Context) Check {
	c := t.Check
	if ctx.Err() != nil {
		c.Note = cancelled
		return c
	}
	got, note, err := t.run(ctx)
	switch {
	case ctx.Err() != nil:
		c.Note = cancelled
		return c
	case err != nil:
		c.Note = err.Error()
		return c
	case note != "":
		c.Note = note
	}
	c.Got, c.Pass = got, c.holds(got)
	return c
}

// holds reports whether a figure is within the tolerance.
func (c Check) holds(got float64) bool { return math.Abs(got-c.Want) <= c.Tolerance }

// All lists every trial, those that take longest first so that the cores end together.
func All() []Pending {
	var all []Pending
	for _, group := range [][]Pending{relations(), drapes(), hangs(), swags(), loops(), bends(), strips(), frictions(),
		rubs(), thickBands(), shapes()} {
		all = append(all, group...)
	}
	return all
}

// figure makes a trial that reads one number.
func figure(c Check, run func(ctx context.Context) (float64, error)) Pending {
	return Pending{c, func(ctx context.Context) (float64, string, error) {
		got, err := run(ctx)
		return got, "", err
	}}
}

// deg turns radians into degrees.
func deg(rad float64) float64 { return rad * 180 / math.Pi }

// rad turns degrees into radians.
func rad(deg float64) float64 { return deg * math.Pi / 180 }
