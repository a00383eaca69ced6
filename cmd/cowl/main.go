// Command cowl drafts a cowl-neck front from body measurements and hangs it on
// a dress form. Its verbs are one file each; "cowl" alone shows how to begin.
// Start at run.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"cowl/cmd/cowl/internal/stage"

	"github.com/alecthomas/kong"
)

// How cowl ends.
const (
	exitOK         = 0
	exitNotSettled = 1   // the drape did not come to rest; everything that there is, is written and says so
	exitBadInput   = 2   // nothing is written
	exitCannotSave = 3   // also: no window can be opened
	exitCancelled  = 130 // Ctrl-C; nothing is written
)

// cli is the command line.
type cli struct {
	Draft   draftCmd   `cmd:"" help:"Draft the flat piece and print its figures; write it at full size as SVG, PDF, DXF or CSV."`
	Drape   drapeVerb  `cmd:"" help:"Hang the piece on the form; write picture, mesh and figures."`
	View    viewCmd    `cmd:"" help:"Open a window: change cut and cloth and see the drape change."`
	True    trueCmd    `cmd:"" help:"Hang the piece, mark its seams, true them on paper with a matching back; hang it again."`
	Lay     layCmd     `cmd:"" help:"Lay front, back and facing on cloth of a width: does it fit, how much is needed."`
	Compare compareCmd `cmd:"" help:"Hang the same piece in several fabrics; a sheet with pictures, figures and what truly differs."`
	Sweep   sweepCmd   `cmd:"" help:"Hang the piece at many values of extension, grain, cowl point, weight …; charts and a film strip."`
	Seek    seekCmd    `cmd:"" help:"Look for the cut that gives a wanted edge drop, fold count or fold depth."`
	Sure    sureCmd    `cmd:"" help:"Tell how certain a drape is: other hands, uncertain cloth, which property matters most."`
	Teach   teachCmd   `cmd:"" help:"Make a class sheet: cowl teach grain."`
	Gather  gatherCmd  `cmd:"" help:"Put the parts of a study together that were hung with --part."`
	Fabrics fabricsCmd `cmd:"" help:"List the fabrics of the library, or show one in full."`
	Swatch  swatchCmd  `cmd:"" help:"Make a fabric file from simple tests, or from a mill's KES-F or FAST sheet."`
	Proof   proofCmd   `cmd:"" help:"Run all checks against published figures and closed forms; show every miss."`
	Lab     labCmd     `cmd:"" help:"Run a standard test on the cloth: bend, pull, disc or hang."`
	Bench   benchCmd   `cmd:"" help:"Measure how long drapes take on this machine."`
	Version versionCmd `cmd:"" help:"Print the version."`

	VersionFlag kong.VersionFlag `name:"version" help:"Print the version."`
}

const description = `Draft a cowl-neck front, hang it on a dress form, count its folds.

Try "cowl drape": with no style file it hangs the built-in demo, a blouse front in size 10, and writes picture, mesh and figures to cowl-out. Then change cowl-out/style.yaml and run it with --style, or try flags.

Lengths carry their unit (8cm, 80mm, 3.25in), angles are degrees. Exit status: 0 done, 1 the drape did not settle, 2 bad input, 3 cannot save, 130 cancelled.`

// console is what a verb may write to and draw with.
type console struct {
	out, err io.Writer
	stage    func() (*stage.Stage, error)
}

// silent is an error whose message has been printed already.
type silent struct{ code int }

func (s silent) Error() string { return fmt.Sprintf("exit %d", s.code) }

// Kinds of errors that are not bad input.
var (
	errCannotSave = errors.New("cannot save")
	errNoResult   = errors.New("the drape could not be computed")
	errNoWindow   = errors.New("no window can be opened")
)

func main() {
	os.Exit(serve(func(ctx context.Context) int {
		return run(ctx, os.Args[1:], console{os.Stdout, os.Stderr, stage.New})
	}))
}

// run does what args ask and returns the exit status.
func run(ctx context.Context, args []string, c console) (code int) {
	c.out, c.err = &tame{w: c.out}, &tame{w: c.err}
	type leave int // kong asks to leave at once after help and version
	defer func() {
		if r := recover(); r != nil {
			asked, ok := r.(leave)
			if !ok {
				panic(r)
			}
			code = int(asked)
		}
	}()
	parser, err := newParser(&cli{}, kong.Name("cowl"), kong.Description(description),
		kong.Writers(c.out, c.err), kong.Exit(func(n int) { panic(leave(n)) }),
		kong.Vars{"version": version()}, kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: 100}),
		kong.BindTo(ctx, (*context.Context)(nil)), kong.Bind(c))
	if err != nil {
		panic("cowl: " + err.Error())
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	parsed, err := parser.Parse(joined(args))
	if err != nil {
		fmt.Fprintf(c.err, "cowl: %s\ncowl: see cowl --help, or cowl VERB --help\n", plainly(err))
		return exitBadInput
	}
	return status(parsed.Run(), c.err)
}

// plainly says in our words what the parser says in its own.
func plainly(err error) string {
	return strings.NewReplacer(`must be one of "",`, "must be one of ", "expected a valid 64 bit int but got", "want a whole number, not",
		"expected a valid 64 bit uint but got", "want a whole number of 0 or more, not").Replace(err.Error())
}

// status prints err and returns the exit status it stands for.
func status(err error, stderr io.Writer) int {
	var quiet silent
	switch {
	case err == nil:
		return exitOK
	case errors.As(err, &quiet):
		return quiet.code
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(stderr, "cowl: cancelled, nothing written")
		return exitCancelled
	}
	fmt.Fprintf(stderr, "cowl: %v\n", err)
	switch {
	case errors.Is(err, errCannotSave), errors.Is(err, errNoWindow):
		return exitCannotSave
	case errors.Is(err, errNoResult):
		return exitNotSettled
	}
	return exitBadInput
}
