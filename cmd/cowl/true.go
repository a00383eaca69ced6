package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/outfile"
	"cowl/cmd/cowl/internal/sided"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/truing"
	"cowl/sim"
	"cowl/sim/drape"
)

type trueCmd struct {
	drapeCmd
	paperFlags
	suitFlags
	Folder string        `arg:"" optional:"" placeholder:"DIR" help:"Folder of a drape: its style.yaml is hung again."`
	Mark   string        `default:"pins" enum:"pins,form" help:"What is marked on the cloth: the pins, or the seam lines of the form (pins)."`
	Half   string        `default:"both" enum:"both,left,right" help:"Which half is trued, of the wearer: both are averaged (both)."`
	Head   *flags.Length `placeholder:"LEN" help:"Head girth that the opening must pass (57cm)."`
}

// plainSeam is the allowance of a pattern that was trued, m: what the cloth had to spare
// has hung and is trimmed (common practice).
const plainSeam = 0.010

// truth is a trued front with the two drapes it was judged by.
type truth struct {
	mark, half string
	first      *hung
	before     draft.Cowl // before anything was taken up
	trued      truing.Trued
	suit       truing.Suit
	again      *drape.Run // the trued front, hung by the same hand
	head       float64    // m
	files      []console.File
}

// Run hangs the piece, trues it, hangs the trued piece by the same hand,
// writes the pieces and prints what changed.
func (t trueCmd) Run(ctx context.Context, c console.Console) error {
	if err := t.fromFolder(); err != nil {
		return err
	}
	h, err := t.prepare()
	if err != nil {
		return err
	}
	if h.Style.Hang.Free {
		return errors.New("true: this style hangs without a form, which has no seam lines to mark: hang it on the form, " +
			"with free: false and without --free")
	}
	if _, err := t.suit(h.Style, h.Cowl, plainSeam); err != nil {
		return err // before the long run
	}
	head, err := t.girth()
	if err != nil {
		return err
	}
	if err := console.Writable(t.Out); err != nil {
		return err
	}
	r, err := t.truth(ctx, c, h)
	if err != nil {
		return err
	}
	r.head = head
	if err := r.outputs(t.paperFlags); err != nil {
		return err
	}
	if ctx.Err() != nil {
		return context.Canceled
	}
	if err := console.Save(t.Out, r.files); err != nil {
		return err
	}
	return t.say(c, r)
}

// fromFolder takes the style of the folder.
func (t *trueCmd) fromFolder() error {
	if t.Folder == "" {
		return nil
	}
	if t.Style != "" {
		return fmt.Errorf("true: folder %s and --style %s, want one of them", t.Folder, t.Style)
	}
	t.Style = filepath.Join(t.Folder, "style.yaml")
	if info, err := os.Stat(t.Folder); err == nil && !info.IsDir() {
		return fmt.Errorf("true: %s is a file, want the folder of a drape; a style file goes in with --style", t.Folder)
	}
	if err := outfile.Recover(t.Folder); err != nil {
		return fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	if _, err := os.Stat(t.Style); errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("true: no style.yaml in %s: give the folder of a drape, made by cowl drape --out %s", t.Folder,
			t.Folder)
	}
	return nil
}

// girth returns the head girth that the opening is held against.
func (t trueCmd) girth() (float64, error) {
	if t.Head == nil {
		return drafted.HeadGirth, nil
	}
	if v := float64(*t.Head); v >= 0.40 && v <= 0.70 {
		return v, nil
	}
	return 0, limit.Errorf("", "--head %v, want %.0f: measure round the forehead", limit.Metres(float64(*t.Head)),
		limit.Between(0.4, 0.7, limit.Length))
}

// truth hangs, trues, and hangs again. The front is trued as it hung, with what was taken
// up to set its edge; hung again, the hand lays as many folds and takes up no more.
func (t trueCmd) truth(ctx context.Context, c console.Console, h *hung) (*truth, error) {
	asked := h.Style.Hang.Placings
	h.Style.Hang.Placings = 1 // one drape is marked
	before := h.Cowl
	if err := t.hang(ctx, c, h); err != nil {
		return nil, err
	}
	if o := h.Run.Outcome; o.Status == sim.Diverged {
		return nil, fmt.Errorf("%w: %s", console.ErrNoResult, o.Warning)
	}
	r := &truth{mark: t.Mark, half: t.Half, first: h, before: before}
	var err error
	r.trued, err = truing.True(h.Run.Drape.Sheet(), h.Form, h.Cowl, pinsOf(h.Run.Drape), t.options(h.Cowl.Worn))
	if err != nil {
		return nil, err
	}
	front, why := h.Style.TruedOnPaper(r.trued.Cowl)
	tellDrafted(c, "", why)
	if r.suit, err = t.suit(h.Style, front, plainSeam); err != nil {
		return nil, err
	}
	second := *h
	second.Cowl = r.trued.Cowl
	second.Style.Hang.Folds, second.Style.Hang.EdgeDepth = h.Run.Outcome.Laid, draft.Auto
	if err := t.hang(ctx, c, &second); err != nil {
		return nil, err
	}
	r.again = second.Run
	h.Style.Hang.Placings = asked
	return r, nil
}

// options turns the flags into those of the truing of a piece worn at a side: its half at
// X above 0 is the left of truing, and at the back the right of the wearer.
func (t trueCmd) options(worn draft.Side) truing.Options {
	o := truing.Options{}
	if t.Mark == "form" {
		o.Mark = truing.ByForm
	}
	switch above, below := worn.Halves(); t.Half {
	case above:
		o.Half = truing.Left
	case below:
		o.Half = truing.Right
	}
	return o
}

// outputs makes the files.
func (r *truth) outputs(f paperFlags) error {
	files, err := f.suitFiles(r.first.Style, r.suit, "trued")
	if err != nil {
		return err
	}
	b, err := console.JSON(sided.JSON(r.figures(), r.trued.Cowl.Worn))
	if err != nil {
		return err
	}
	again := append([]byte(styleHead), r.first.Style.YAML()...)
	r.files = append(files, console.File{Name: "true.json", Data: b}, console.File{Name: "style.yaml", Data: again})
	return nil
}

// walked lays the seams of the trued pieces along each other.
func (r *truth) walked() []draft.Walk { return draft.Walked(r.suit.Front, r.suit.Back) }

// opening is the length of the neck opening, m.
func (r *truth) opening() float64 { return draft.Opening(r.suit.Front, r.suit.Back) }

// say prints the result and returns what the exit status is to say.
func (t trueCmd) say(c console.Console, r *truth) error {
	switch {
	case t.JSON:
		if err := c.PrintJSON(sided.JSON(r.figures(), r.trued.Cowl.Worn)); err != nil {
			return err
		}
	case !t.Quiet:
		r.report(c.Out)
		t.list(c, r.files)
	}
	for _, o := range []drape.Outcome{r.first.Run.Outcome, r.again.Outcome} {
		if o.Status != sim.Settled {
			fmt.Fprintf(c.Err, "cowl: %s\n", o.Warning)
			return console.Silent{Code: console.ExitNotSettled}
		}
	}
	return nil
}
