package main

import (
	"context"
	"errors"
	"fmt"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
)

type compareCmd struct {
	cutFlags
	Fabrics  []string `required:"" placeholder:"A,B,C" help:"Fabrics of the library or fabric files; the others are compared with the first."`
	Placings int      `type:"count" least:"1" most:"99" placeholder:"N" default:"5" help:"Hands that place every cloth (5); fewer than 3 tell no difference."`
	benchFlags
	partFlag
	Out string `short:"o" default:"cowl-compare" placeholder:"DIR" help:"Folder of the study (cowl-compare)."`
}

// Run hangs the same piece in several fabrics.
func (d compareCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	s, err := d.load()
	if err != nil {
		return err
	}
	if err := d.benchFlags.override(&s); err != nil {
		return err
	}
	if len(d.Fabrics) < 2 {
		return errors.New("--fabrics: one fabric, want two or more with commas between: a,b,c; for one there is cowl drape")
	}
	spec, err := study.NewSpec("compare", s, d.Placings)
	if err != nil {
		return err
	}
	if spec.Fabrics, err = study.Pin(d.Fabrics); err != nil {
		return err
	}
	return study.Run(ctx, d.options(d.Out, d.Part, draw), c, spec)
}

type sweepCmd struct {
	choiceFlags
	Vary     []string `required:"" sep:"none" placeholder:"NAME=FIRST:LAST:STEP" help:"What to vary, like extension=0cm:14cm:2cm or grain=0,45,90: size, extension, grain, cowl-point, facing, hem, dart-share, slashes, pleats, folds, edge-depth, weight, bend or shear. Given again: every combination; the first lies along the charts."`
	Hold     string   `default:"length" enum:"length,drop" placeholder:"WHAT" help:"With --vary size: what of the extension all sizes share, length, or drop of the edge in the style's own size (length)."`
	Placings int      `type:"count" least:"1" most:"99" placeholder:"N" default:"5" help:"Hands that place every cut (5); fewer than 3 tell no difference."`
	partFlag
	Out string `short:"o" default:"cowl-sweep" placeholder:"DIR" help:"Folder of the study (cowl-sweep)."`
}

// Run hangs the piece at every value.
func (d sweepCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	spec, err := d.spec("sweep", d.Placings)
	if err != nil {
		return err
	}
	spec.Vary, spec.Hold = d.Vary, d.Hold
	return study.Run(ctx, d.options(d.Out, d.Part, draw), c, spec)
}

type seekCmd struct {
	choiceFlags
	Want     string `required:"" placeholder:"WANTS" help:"What is wanted, like \"edge drop 12cm, folds 3, depth 25mm\": one or more of edge drop (below the shoulder neck points), folds (above the bust; as many are laid) and depth (of the deepest)."`
	Placings int    `type:"count" least:"1" most:"99" placeholder:"N" default:"3" help:"Hands that place every cut (3); the mean is held against the want."`
	Out      string `short:"o" default:"cowl-seek" placeholder:"DIR" help:"Folder of the study (cowl-seek)."`
}

// Run looks for the cut that comes nearest to what is wanted.
func (d seekCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	w, err := study.ParseWant(d.Want)
	if err != nil {
		return err
	}
	spec, err := d.spec("seek", d.Placings)
	if err != nil {
		return err
	}
	return study.Seek(ctx, d.options(d.Out, rows.Part{}, draw), c, spec, w)
}

type sureCmd struct {
	hangFlags
	Placings int `type:"count" least:"3" most:"99" placeholder:"N" default:"20" help:"Hands that place the piece (20), each again with a cloth of its own within what is known of the fabric."`
	partFlag
	toilesFlag
	Out string `short:"o" default:"cowl-sure" placeholder:"DIR" help:"Folder of the study (cowl-sure)."`
}

// Run tells how certain a drape is.
func (d sureCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	s, err := d.styled()
	if err != nil {
		return err
	}
	if d.Placings < 3 {
		return fmt.Errorf("--placings: placings %d, want 3–%d: fewer show no scatter", d.Placings, style.MostPlacings)
	}
	spec, err := study.NewSpec("sure", s, d.Placings)
	if err != nil {
		return err
	}
	toiles, err := d.said(c)
	if err != nil {
		return err
	}
	err = study.Run(ctx, d.options(d.Out, d.Part, draw), c, spec)
	tellToiles(c, toiles, d.JSON || d.Quiet || !d.Part.Whole())
	return err
}

type teachCmd struct {
	Grain teachGrainCmd `cmd:"" help:"Class sheet on warp, weft and bias: one page of pictures and figures, one of questions and answers."`
}

type teachGrainCmd struct {
	hangFlags
	Placings int `type:"count" least:"1" most:"99" placeholder:"N" default:"5" help:"Hands that place every cut (5)."`
	partFlag
	Out string `short:"o" default:"cowl-grain" placeholder:"DIR" help:"Folder of the sheet (cowl-grain)."`
}

// Run hangs the piece at the five angles and makes the sheet.
func (d teachGrainCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	if flags.IsGiven(d.Cut, "grain") {
		return errors.New("--grain: the class sheet shows 0, 22.5, 45, 67.5 and 90°; for one angle there is cowl drape, " +
			"for others cowl sweep --vary grain=…")
	}
	s, err := d.styled()
	if err != nil {
		return err
	}
	spec, err := study.NewSpec("teach", s, d.Placings)
	if err != nil {
		return err
	}
	return study.Run(ctx, d.options(d.Out, d.Part, draw), c, spec)
}

type gatherCmd struct {
	Dirs  []string `arg:"" name:"dir" help:"Folder of a study, or the folders that its parts were hung in."`
	Out   string   `short:"o" placeholder:"DIR" help:"Folder for the sheet (the first of the folders)."`
	JSON  bool     `name:"json" help:"Print result.json and nothing else."`
	Quiet bool     `short:"q" help:"Print nothing but warnings."`
}

// Run puts the parts of a study together and makes the sheet. What no part has
// hung is marked as missing.
func (d gatherCmd) Run(c console.Console) error {
	out := d.Out
	if out == "" {
		out = d.Dirs[0]
	}
	return study.Gather(study.Options{Dir: out, JSON: d.JSON, Quiet: d.Quiet}, c, d.Dirs)
}
