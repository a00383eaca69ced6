package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image/png"
	"path/filepath"
	"strings"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/motion"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/treatment"
	"cowl/mesh/export/gltf"
	"cowl/sim"
	"cowl/sim/drape"
)

type drapeCmd struct {
	styleFlags
	clothFlags
	Hang any `embed:"" table:"hang"`
}

// drapeVerb is cowl drape.
type drapeVerb struct {
	drapeCmd
	Look   string `enum:"own,toile" default:"own" placeholder:"WHAT" help:"How the cloth is drawn: own, as the fabric looks (invented); toile, ecru with grain lines every 2 cm."`
	Turn   bool   `help:"Write turn.gif too: the drape turned to and fro over its front."`
	Before bool   `help:"Hang it once more without its pleats, stays, lowering, taking in and weight, each by itself, and say what they gave; each takes as long again. Slashes are always compared."`
	toilesFlag
}

// Run hangs the piece, writes all files and prints the report.
func (d drapeVerb) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	h, err := d.prepare()
	if err != nil {
		return err
	}
	h.Toile, h.turn = d.Look == "toile", d.Turn
	tellNotes(c, h.Style)
	tellShort(c, h.Cowl)
	tellDrafted(c, "", h.asDrafted)
	if err := console.Writable(d.Out); err != nil {
		return err
	}
	toiles, err := d.said(c)
	if err != nil {
		return err
	}
	without, err := treatment.Compared(h.Style, h.Cowl, d.Before)
	if err != nil {
		return fmt.Errorf("--before: %w", err)
	}
	if err := d.hang(ctx, c, h); err != nil {
		return err
	}
	if err := d.compare(ctx, c, h, without); err != nil {
		return err
	}
	files, missing, err := h.outputs(draw)
	if err != nil {
		return err
	}
	if ctx.Err() != nil {
		return context.Canceled
	}
	if err := console.Save(d.Out, files); err != nil {
		return err
	}
	err = d.tell(c, h, files, missing)
	tellToiles(c, toiles, d.JSON || d.Quiet)
	return err
}

// prepare reads the style and makes piece and form.
func (d drapeCmd) prepare() (*hung, error) {
	s, err := d.load()
	if err != nil {
		return nil, err
	}
	if err := errors.Join(d.override(&s), flags.SetFields(&s, d.Hang)); err != nil {
		return nil, err
	}
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.Cowl()
	if err != nil {
		return nil, err
	}
	b, err := s.Wearer()
	if err != nil {
		return nil, err
	}
	f, err := style.FormOf(b, s.Cut.Worn)
	if err != nil {
		return nil, err
	}
	h := &hung{Drape: drawn.Drape{Style: s, Cowl: p, Form: f}}
	if err := s.Fits(p, f); err != nil {
		return h, err
	}
	onPaper, why := s.OnPaper(p)
	h.asDrafted = why
	if _, err := cowlPapers(s, onPaper); err != nil {
		return h, err // before the long run
	}
	return h, h.affordable()
}

// hang brings the cloth to rest, with a line of progress where someone watches.
func (d drapeCmd) hang(ctx context.Context, c console.Console, h *hung) error {
	defer console.Heed()()
	start := time.Now()
	line := console.NewLine(c.Err, d.Quiet || d.JSON)
	job := h.Style.Job(h.Cowl, h.Form)
	job.Report = func(p drape.Progress) { line.Show(console.Progress(p)) }
	run, err := drape.HangAll(ctx, job, h.Style.Hang.Placings)
	line.Clear()
	if ctx.Err() != nil {
		return context.Canceled
	}
	h.Run, h.took = run, time.Since(start)
	if err == nil {
		h.Cowl = run.Drape.Job.Cowl // with what was taken up
	}
	if err != nil {
		return fmt.Errorf("%w: %w", console.ErrNoResult, err)
	}
	return nil
}

// styleHead says in style.yaml what it is for.
const styleHead = "# Written by cowl. Run the same drape again:  cowl drape --style style.yaml\n"

// outputs makes the files of the drape. Where nothing can be drawn the picture
// is left out and missing says why.
func (h *hung) outputs(draw drawn.Stager) (files []console.File, missing, err error) {
	pictures, missing := h.pictures(draw)
	files = append(files, pictures...)
	result := func() (console.File, error) {
		b, err := console.JSON(h.result())
		return console.File{Name: "result.json", Data: b}, err
	}
	pattern := func() (console.File, error) { return patternOf(h.Style, h.Cowl) }
	for _, part := range []func() (console.File, error){h.solid, pattern, result} {
		f, err := part()
		if err != nil {
			return nil, nil, err
		}
		files = append(files, f)
	}
	again := append([]byte(styleHead), h.Style.YAML()...)
	return append(files, console.File{Name: "style.yaml", Data: again}), missing, nil
}

// solid is the mesh of cloth and form.
func (h *hung) solid() (console.File, error) {
	var b bytes.Buffer
	err := gltf.Write(&b, *h.Smooth(), h.Scene().Form, gltf.Options{Title: h.Style.Name, Cloth: h.Cloth()})
	return console.File{Name: "drape.glb", Data: b.Bytes()}, err
}

// pictures draws the sheet of four views, and the turning picture if it is wanted.
func (h *hung) pictures(draw drawn.Stager) ([]console.File, error) {
	st, err := h.Open(draw)
	if err != nil {
		return nil, err
	}
	defer st.Close()
	img, err := stage.Views(st, h.Scene(), h.Section, h.caption())
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	quick := png.Encoder{CompressionLevel: png.BestSpeed} // a quarter more to keep, in a quarter of the time
	if err := quick.Encode(&b, img); err != nil || !h.turn {
		return []console.File{{Name: "drape.png", Data: b.Bytes()}}, err
	}
	round, err := st.Turn(h.Scene())
	if err != nil {
		return nil, err
	}
	turn, err := motion.GIF(round, stage.TurnDelay)
	return []console.File{{Name: "drape.png", Data: b.Bytes()}, {Name: "turn.gif", Data: turn}}, err
}

// tell prints the result and returns what the exit status is to say.
func (d drapeCmd) tell(c console.Console, h *hung, files []console.File, missing error) error {
	switch {
	case d.JSON:
		if err := c.PrintJSON(h.result()); err != nil {
			return err
		}
	case !d.Quiet:
		h.report(c.Out)
		d.list(c, files)
	}
	if missing != nil {
		fmt.Fprintf(c.Err, "cowl: no picture: %v; all else is written\n", missing)
	}
	if h.Run.Outcome.Status != sim.Settled || h.restless() > 0 {
		fmt.Fprintf(c.Err, "cowl: %s\n", h.verdict())
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}

// compare hangs the piece again without each of the treatments, as many folds laid as in h.
func (d drapeVerb) compare(ctx context.Context, c console.Console, h *hung, without []treatment.Untreated) error {
	h.changes = treatment.Changes{}
	for _, t := range without {
		other := *h
		other.Cowl, other.Style = t.Cowl, t.Alike(h.Style, h.Form, h.Run.Outcome.Laid)
		if err := d.hang(ctx, c, &other); err != nil {
			return err
		}
		h.changes[t.Name] = treatment.ChangeOf(other.Run, h.Run)
	}
	return nil
}

// list names the files that were written.
func (d drapeCmd) list(c console.Console, files []console.File) {
	fmt.Fprintf(c.Out, "Wrote to %s: %s\n", filepath.Clean(d.Out), strings.Join(namesOf(files), ", "))
}
