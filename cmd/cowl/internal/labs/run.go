package labs

import (
	"context"
	"fmt"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/memory"
	"cowl/materials"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/lab"
)

// specimen is the cloth of a test.
type specimen struct {
	sim.Stiffness
	fabric materials.Fabric
	report func(lab.Progress)
}

// reading is what a test has read.
type reading struct {
	run    lab.Run
	result func(computed) any // for programs
	lines  []string           // for people, below the name of the cloth
	files  []console.File     // beside result.json
}

// computed is what every test tells of how it was computed.
type computed struct {
	Fabric   string     `json:"fabric"`
	Warning  string     `json:"warning,omitempty"`
	Status   sim.Status `json:"status"`
	Residual float64    `json:"residual"` // unbalanced force over the weight; over the load in pull
	Nodes    int        `json:"nodes"`
	Spacing  float64    `json:"spacing_mm"`
	Steps    int        `json:"steps"`
	Seconds  float64    `json:"seconds"`
}

// test runs a test on the cloth that the flags ask for, with a line of progress
// where someone watches, and writes and prints what it reads.
func (f testFlags) test(ctx context.Context, c console.Console, run func(specimen) (reading, error)) error {
	fabric, err := f.cloth()
	if err != nil {
		return err
	}
	if f.Out != "" {
		if err := console.Writable(f.Out); err != nil {
			return err
		}
	}
	start, line := time.Now(), console.NewLine(c.Err, f.Quiet || f.JSON)
	done := console.Heed()
	r, err := run(specimen{drape.Stiffness(fabric), fabric, func(p lab.Progress) { line.Show(console.Progress(p)) }})
	done()
	line.Clear()
	switch {
	case ctx.Err() != nil:
		return context.Canceled
	case err != nil:
		return err
	}
	how := computed{
		fabric.Name, clamped(fabric), r.run.Status, r.run.Residual, r.run.Nodes,
		r.run.Spacing * 1000, r.run.Steps, time.Since(start).Seconds(),
	}
	if f.Out != "" {
		b, err := console.JSON(r.result(how))
		if err != nil {
			return err
		}
		if err := console.Save(f.Out, append(r.files, console.File{Name: "result.json", Data: b})); err != nil {
			return err
		}
	}
	return f.tell(c, fabric, r, how)
}

// tell prints what a test reads and returns what the exit status is to say.
func (f testFlags) tell(c console.Console, fabric materials.Fabric, r reading, how computed) error {
	if f.JSON {
		if err := c.PrintJSON(r.result(how)); err != nil {
			return err
		}
	} else {
		for _, l := range append([]string{fabric.String()}, r.lines...) {
			fmt.Fprintln(c.Out, l)
		}
		fmt.Fprintln(c.Out, line("Computed", "%s; unbalanced force %.1e; %d points %.2g mm apart, %d steps, %.1f s",
			how.Status, how.Residual, how.Nodes, how.Spacing, how.Steps, how.Seconds))
	}
	if how.Warning != "" {
		fmt.Fprintf(c.Err, "cowl: %s\n", how.Warning)
	}
	if how.Status != sim.Settled {
		fmt.Fprintf(c.Err, "cowl: NOT SETTLED (%s): the figures are those of where it stopped\n", how.Status)
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}

// clamped warns of a bias bending rigidity that no plate can have.
func clamped(f materials.Fabric) string {
	twist, held := f.Twist()
	if !held {
		return ""
	}
	least := twist + (f.BendWarp+f.BendWeft)/4
	return fmt.Sprintf("bend_bias_uNm: %.3g is less than this cloth can have with %.3g along warp and %.3g along "+
		"weft, so it bends on the bias like %.3g; measure the bias again or take the figures off the grain with care",
		f.BendBias*1e6, f.BendWarp*1e6, f.BendWeft*1e6, least*1e6)
}

// carriedSheets is how many states lab hang takes to its finest lattice.
const carriedSheets = 2

// affordable is that of a test of the lab, of so many states at once.
func (s specimen) affordable(set interface{ Points(sim.Stiffness) float64 }, states int) error {
	return memory.Afford(set.Points(s.Stiffness), states, states, "a wider --spacing or a smaller specimen")
}

// testFlags are what all tests take.
type testFlags struct {
	clothFlags
	Spacing *flags.Length `placeholder:"LEN" help:"Between crossings of the lattice: finer is slower. Without it as fine as the cloth asks for, within limits."`
	Out     string        `short:"o" placeholder:"DIR" help:"Folder for result.json and, from disc, shadow.png. Without it nothing is written."`
	JSON    bool          `name:"json" help:"Print one JSON object and nothing else."`
	Quiet   bool          `short:"q" help:"No line of progress."`
}
