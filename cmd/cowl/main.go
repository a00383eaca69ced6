// Command cowl drafts a cowl-neck front from body measurements and hangs it on
// a dress form. Its verbs are one file each; "cowl" alone shows how to begin.
// Start at run.
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"cowl/cmd/cowl/internal/cloths"
	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/labs"
	"cowl/cmd/cowl/internal/stage"
	"cowl/sim/fault"

	"github.com/alecthomas/kong"
)

// cli is the command line.
type cli struct {
	Draft   draftCmd       `cmd:"" help:"Draft the flat piece and print its figures; write it at full size as SVG, PDF, DXF or CSV."`
	Drape   drapeVerb      `cmd:"" help:"Hang the piece on the form; write picture, mesh and figures."`
	View    viewCmd        `cmd:"" help:"Open a window: change cut and cloth and see the drape change."`
	True    trueCmd        `cmd:"" help:"Hang the piece, mark its seams, true them on paper with a matching back; hang it again."`
	Marker  markerCmd      `cmd:"" name:"lay" help:"Lay front, back and facing on cloth of a width: does it fit, how much is needed."`
	Compare compareCmd     `cmd:"" help:"Hang the same piece in several fabrics; a sheet with pictures, figures and what truly differs."`
	Sweep   sweepCmd       `cmd:"" help:"Hang the piece at many values of extension, grain, cowl point, weight …; charts and a film strip."`
	Seek    seekCmd        `cmd:"" help:"Look for the cut that gives a wanted edge drop, fold count or fold depth."`
	Sure    sureCmd        `cmd:"" help:"Tell how certain a drape is: other hands, uncertain cloth, which property matters most."`
	Teach   teachCmd       `cmd:"" help:"Make a class sheet: cowl teach grain."`
	Toile   toileCmd       `cmd:"" help:"Keep a book of real toiles: enter them, hold predictions against them, fit a fabric to them."`
	Sizes   sizesCmd       `cmd:"" help:"Print the size chart, whose it is, and how a body is scaled from it."`
	Gather  gatherCmd      `cmd:"" help:"Put the parts of a study together that were hung with --part."`
	Fabrics cloths.Fabrics `cmd:"" help:"List the fabrics of the library, or show one in full."`
	Swatch  cloths.Swatch  `cmd:"" help:"Make a fabric file from simple tests, or from a mill's KES-F or FAST sheet."`
	Proof   proofCmd       `cmd:"" help:"Run all checks against published figures and closed forms; show every miss."`
	Lab     labs.Cmd       `cmd:"" help:"Run a standard test on the cloth: bend, pull, disc or hang."`
	Bench   benchCmd       `cmd:"" help:"Measure how long drapes take on this machine."`
	Help    helpCmd        `cmd:"" help:"Read about a topic: the style file, flags, studies, fabrics, limits …"`
	Version versionCmd     `cmd:"" help:"Print the version."`

	unitFlag
	VersionFlag kong.VersionFlag `name:"version" help:"Print the version."`
}

const description = `Draft a cowl-neck front, hang it on a dress form, count its folds.

Try "cowl drape": with no style file it hangs the built-in demo, a blouse front in size 10, and writes
picture, mesh and figures to cowl-out. Then change cowl-out/style.yaml and run it with --style, or try flags.

Lengths carry their unit (8cm, 80mm, 3.25in), angles are degrees. --unit inch once,
and all later runs say lengths in inches.

`

func main() {
	os.Exit(console.Serve(func(ctx context.Context) int {
		defer watchCrashes(os.Stderr)()
		fault.Teller = func(f *fault.Fault) { os.Exit(crashed(f, os.Stderr)) }
		return run(ctx, os.Args[1:], console.Console{Out: os.Stdout, Err: os.Stderr}, stage.New)
	}))
}

// run does what args ask and returns the exit status. Standard output is written at
// the end, in one go, so that a crash leaves nothing half said.
func run(ctx context.Context, args []string, c console.Console, draw drawn.Stager) (code int) {
	var said bytes.Buffer
	out := c.Out
	c.Out, c.Err = console.Tame(&said), console.Tame(c.Err)
	type leave int // kong asks to leave at once after help and version
	defer func() {
		switch r := recover().(type) {
		case nil:
		case leave:
			code = int(r)
		default:
			code = crashed(fault.Of(r), c.Err)
			return
		}
		if _, err := out.Write(said.Bytes()); err != nil {
			code = console.Status(fmt.Errorf("%w: standard output: %w", console.ErrCannotSave, err), c.Err)
		}
	}()
	var grammar cli
	parser, err := flags.NewParser(&grammar, tables(), kong.Name("cowl"), kong.Description(description+console.ExitHelp()),
		kong.Writers(c.Out, c.Err), kong.Exit(func(n int) { panic(leave(n)) }),
		kong.Vars{"version": version()}, kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: 100}),
		kong.BindTo(ctx, (*context.Context)(nil)), kong.Bind(c, draw))
	if err != nil {
		panic("cowl: " + err.Error())
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	parsed, err := parser.Parse(joined(args))
	if err != nil {
		fmt.Fprintf(c.Err, "cowl: %s\ncowl: see cowl --help, or cowl VERB --help\n",
			verbless(plainly(flags.Renamed(err)), verbsAmong(parser.Model.Node, err)))
		return console.ExitBadInput
	}
	grammar.speak(c)
	return console.Status(parsed.Run(), c.Err)
}

// verbsAmong are the verbs among which a word was looked for: those of the program, or of a
// verb that has its own.
func verbsAmong(program *kong.Node, err error) []*kong.Node {
	var wrong *kong.ParseError
	if errors.As(err, &wrong) && wrong.Context != nil {
		if verb := wrong.Context.Selected(); verb != nil && len(verb.Children) > 0 {
			return verb.Children
		}
		for _, step := range wrong.Context.Path {
			if step.Command != nil && len(step.Command.Children) > 0 {
				return step.Command.Children
			}
		}
	}
	return program.Children
}

// verbless lists the verbs where a word was none and nothing near it is one.
func verbless(said string, verbs []*kong.Node) string {
	word, ok := strings.CutPrefix(said, "unexpected argument ")
	if !ok || strings.Contains(said, "did you mean") {
		return said
	}
	var names []string
	for _, v := range verbs {
		names = append(names, v.Name)
		if v.Name == word {
			return said
		}
	}
	return fmt.Sprintf("%s: no such word here; the verbs are %s", said, strings.Join(names, ", "))
}

// tables are those of the grammar, beside the fields of the style.
func tables() flags.Tables {
	return flags.Tables{"tests": {Rows: cloths.Tests()}, "values": labs.Values()}
}

// plainly says in our words what the parser says in its own.
func plainly(err error) string {
	return strings.NewReplacer(`must be one of "",`, "must be one of ", "expected a valid 64 bit int but got",
		"want a whole number, not",
		"expected a valid 64 bit uint but got", "want a whole number of 0 or more, not").Replace(err.Error())
}
