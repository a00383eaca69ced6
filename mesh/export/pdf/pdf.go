// Package pdf draws flat pieces at full size (1:1): on one large sheet, on
// tiles for a home printer with a first page to measure and a map to join them
// by, and it writes the cutting sheet. Equal input gives equal bytes. Start at
// Write, WriteTiles and WriteCutting.
package pdf

import (
	"errors"
	"fmt"
	"io"
	"time"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"gonum.org/v1/gonum/spatial/r2"
)

// Paper is what a home printer takes, mm.
type Paper struct {
	Name          string
	Width, Height float64
}

// The papers that one tile fits.
var (
	A4     = Paper{"A4", 210, 297}
	Letter = Paper{"Letter", 215.9, 279.4}
)

// Write draws the pieces on one large sheet.
func Write(w io.Writer, pieces []paper.Piece, o plot.Options) error {
	if err := check(pieces); err != nil {
		return err
	}
	d := plot.OnPage(pieces, o)
	f := newDocument(fpdf.SizeType{Wd: d.Width, Ht: d.Height}, o.Title)
	f.AddPage()
	draw(f, d, r2.Vec{}, 1)
	return finish(f, w)
}

// check refuses what cannot be drawn.
func check(pieces []paper.Piece) error {
	if len(pieces) == 0 {
		return errors.New("pdf: no piece to draw")
	}
	for _, p := range pieces {
		if len(p.Outline) < 3 || len(p.CutLine) < 3 {
			return fmt.Errorf("pdf: piece %q has no outline: draft it first", p.Name)
		}
	}
	return nil
}

const (
	plain  = "go"
	strong = "gobold"
)

// written stands for the date in the file: no clock gets into its bytes.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// newDocument begins a document of one page size, lengths in mm.
func newDocument(size fpdf.SizeType, title string) *fpdf.Fpdf {
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size})
	f.SetCatalogSort(true)
	f.SetCreationDate(written)
	f.SetModificationDate(written)
	f.SetTitle(title, true)
	f.SetCreator("cowl", true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(plain, "", goregular.TTF)
	f.AddUTF8FontFromBytes(strong, "", gobold.TTF)
	f.SetLineCapStyle("butt")
	f.SetLineJoinStyle("miter")
	return f
}

// finish writes the document.
func finish(f *fpdf.Fpdf, w io.Writer) error {
	if err := f.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}
