package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/toile"
)

type toileCmd struct {
	Add  toileAddCmd  `cmd:"" help:"Enter in the book what a ruler gave of a real toile."`
	Show toileShowCmd `cmd:"" help:"Hold predictions against all toiles of the book: bias, spread and pictures on a sheet."`
	Fit  toileFitCmd  `cmd:"" help:"Say within which intervals bending, shear and friction of a fabric agree with its toiles."`
}

// bookFlag names the book.
type bookFlag struct {
	Book string `default:"toiles.csv" placeholder:"FILE" help:"Book of toiles, a CSV file (toiles.csv); styles and predictions lie in the folder of its name beside it."`
}

// toileDrapeFlags say how drapes of the book are computed and what is printed.
type toileDrapeFlags struct {
	Jobs  *int `type:"count" least:"1" most:"256" placeholder:"N" help:"Drapes at a time, 1 to 256 (one a core)."`
	Retry bool `help:"Hang again what failed; finished drapes are never hung again."`
	JSON  bool `name:"json" help:"Print one JSON object and nothing else."`
	Quiet bool `short:"q" help:"Print nothing but warnings."`
}

// options are those of a book.
func (f toileDrapeFlags) options(book string, draw drawn.Stager) toile.Options {
	o := toile.Options{Book: book, Jobs: runtime.GOMAXPROCS(0), Retry: f.Retry, Stage: draw, JSON: f.JSON, Quiet: f.Quiet}
	if f.Jobs != nil {
		o.Jobs = *f.Jobs
	}
	return o
}

type toileAddCmd struct {
	Style string   `short:"s" placeholder:"FILE" help:"Style that the toile was cut by, as cowl drape leaves it: cowl-out/style.yaml. A copy is kept beside the book."`
	Drop  string   `placeholder:"LEN" help:"Edge on the centre front, of a back cowl the centre back, below the shoulder neck points."`
	Laid  *int     `type:"count" least:"0" most:"6" placeholder:"N" help:"Folds that the hand laid, 0 to 6."`
	Kept  *int     `type:"count" least:"0" most:"6" placeholder:"N" help:"Those of them that stayed."`
	Fold  []string `sep:"none" placeholder:"DEPTH@PLACE" help:"A fold, from the edge down, once for each: 4.5cm@5cm is 4.5 cm deep from its crest back to the shallower of the valleys beside it, the crest 5 cm down the centre front (or back) along the cloth from the edge."`
	Reach string   `placeholder:"LEN" help:"How far the front stands ahead of the form, a back cowl behind it."`
	Photo string   `placeholder:"FILE" help:"Photograph, JPEG or PNG, in the folder of the book or below it."`
	Note  string   `placeholder:"TEXT" help:"A line of your own."`
	Date  string   `placeholder:"YYYY-MM-DD" help:"Day of the toile (today)."`
	bookFlag
	Import string `placeholder:"FILE" help:"Take over the toiles of another book instead, with styles and photographs; the same toile is kept once."`
	JSON   bool   `name:"json" help:"Print one JSON object and nothing else."`
	Quiet  bool   `short:"q" help:"Print nothing but warnings."`
}

// Run enters a toile, or the toiles of another book.
func (d toileAddCmd) Run(c console.Console) error {
	if d.Import != "" {
		return d.merge(c)
	}
	if d.Date == "" {
		d.Date = time.Now().Format(time.DateOnly)
	}
	t, n, err := toile.Add(d.Book, toile.Entry{Style: d.Style, Drop: d.Drop, Reach: d.Reach, Laid: d.Laid, Kept: d.Kept,
		Folds: d.Fold, Photo: d.Photo, Note: d.Note, Date: d.Date})
	switch {
	case err != nil:
		return err
	case d.JSON:
		return c.PrintJSON(addedJSON{d.Book, t.Key, t.Date, t.Style, t.Fabric, n})
	case !d.Quiet:
		fmt.Fprintf(c.Out, "Toile %s of %s is in %s, which holds %s; its style lies in %s\n", t.Key, t.Fabric, d.Book,
			say.Several(n, "toile"), filepath.Join(filepath.Dir(d.Book), filepath.FromSlash(t.Style)))
	}
	return nil
}

// addedJSON is a toile that was entered, for programs.
type addedJSON struct {
	Book   string `json:"book"`
	Key    string `json:"key"`
	Date   string `json:"date"`
	Style  string `json:"style"` // from where the book lies
	Fabric string `json:"fabric"`
	Toiles int    `json:"toiles"` // in the book now
}

// merge takes over another book.
func (d toileAddCmd) merge(c console.Console) error {
	if d.Style != "" || d.Drop != "" || d.Reach != "" || d.Laid != nil || d.Kept != nil || d.Fold != nil ||
		d.Photo != "" || d.Note != "" || d.Date != "" {
		return errors.New("--import: takes over a whole book, want no figure and no style with it")
	}
	m, err := toile.Import(d.Book, d.Import)
	if err != nil {
		return err
	}
	for _, text := range append(m.Differ, m.Lost...) {
		fmt.Fprintf(c.Err, "cowl: %s\n", text)
	}
	switch {
	case d.JSON:
		return c.PrintJSON(m)
	case !d.Quiet:
		fmt.Fprintf(c.Out, "%s of %s came over, %d were in both; %s holds %s\n", say.Several(m.Taken, "toile"), d.Import,
			m.Same, d.Book, say.Several(m.Holds, "toile"))
	}
	return nil
}

type toileShowCmd struct {
	bookFlag
	Placings int `type:"count" least:"1" most:"99" placeholder:"N" default:"3" help:"Hands of each prediction (3)."`
	toileDrapeFlags
	Out string `short:"o" default:"cowl-toiles" placeholder:"DIR" help:"Folder of the sheet (cowl-toiles)."`
}

// Run hangs what has no prediction yet and makes the sheet.
func (d toileShowCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	return toile.Show(ctx, d.options(d.Book, draw), c, d.Placings, d.Out)
}

type toileFitCmd struct {
	bookFlag
	Fabric  string `short:"f" required:"" placeholder:"NAME" help:"Fabric whose toiles are fitted, by its name in the book."`
	Spacing string `placeholder:"LEN" default:"12mm" help:"Between crossings of the lattice, 2mm to 20mm (12mm)."`
	toileDrapeFlags
	Out string `short:"o" placeholder:"FILE" help:"Write the fabric with what the toiles told of it, as YAML."`
}

// Run fits.
func (d toileFitCmd) Run(ctx context.Context, c console.Console, draw drawn.Stager) error {
	spacing, err := style.ParseLength(d.Spacing)
	if err != nil {
		return fmt.Errorf("--spacing: %w", err)
	}
	return toile.Fit(ctx, d.options(d.Book, draw), c, d.Fabric, spacing, d.Out)
}

// toilesFlag names the book that a prediction is told beside.
type toilesFlag struct {
	Book string `placeholder:"FILE" help:"Book of toiles, to say how far their drops came out from predictions (toiles.csv where there is one)."`
}

// said is the line of the book that stands under a prediction, empty where there is none.
// A book that was not asked for and cannot be read is warned of.
func (f toilesFlag) said(c console.Console) (string, error) {
	path := f.Book
	if path == "" {
		path = toile.Usual
	} else if _, err := toile.Read(path); err != nil {
		return "", fmt.Errorf("--book: %w", err)
	}
	text, err := toile.Said(path)
	if err != nil && f.Book == "" {
		fmt.Fprintf(c.Err, "cowl: nothing is said of toiles: %v\n", err)
		return "", nil
	}
	return text, err
}

// tellToiles prints that line where people read.
func tellToiles(c console.Console, text string, silent bool) {
	if text != "" && !silent {
		fmt.Fprintln(c.Out, text)
	}
}
