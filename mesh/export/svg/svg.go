// Package svg draws a flat piece at full size (1:1): width, height and user
// unit of the picture are millimetres, Y runs down the sheet. Start at Write.
package svg

import (
	"errors"
	"fmt"
	"io"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// Options are the words on the sheet; each may be empty.
type Options struct {
	Title      string   // name of the piece; empty: "Cowl front"
	GrainLabel string   // along the grain line; empty: grain and its angle to CF
	Notes      []string // more lines under the figures, such as size and date
}

// Write draws p on one sheet as an SVG 1.1 picture. The lines carry these ids:
// cut-line, seam-line, centre-front, facing-fold, square-10cm, square-4in. A
// piece without an outline and a failing w are errors.
func Write(w io.Writer, p draft.Piece, o Options) error {
	if len(p.Outline) < 3 || len(p.CutLine) < 3 {
		return errors.New("svg: the piece has no outline: draft it first")
	}
	if o.Title == "" {
		o.Title = "Cowl front"
	}
	if o.GrainLabel == "" {
		o.GrainLabel = grainLabel(p.Grain)
	}
	s := newSheet(p, o)
	c := &canvas{at: s.at}
	c.open(s.width, s.height, o.Title)
	drawPiece(c, p, o)
	drawMargin(c, s, p, o)
	c.close()
	if _, err := w.Write(c.out.Bytes()); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// Layout of the sheet, mm.
const (
	margin      = 15.0
	gap         = 12.0
	tenCM       = 100.0
	fourInch    = 101.6
	legendX     = margin + tenCM + gap + fourInch + gap // left edge of legend and figures
	legendWidth = 210.0                                 // room for the longest line of text
	lineHeight  = 7.5
)

// sheet says where things lie on the page.
type sheet struct {
	width, height float64 // mm
	origin        r2.Vec  // mm, place of the piece's origin on the page
	below         float64 // mm, top of what is drawn under the piece
}

// newSheet makes room for the piece above and for squares and text below it.
func newSheet(p draft.Piece, o Options) sheet {
	lo, hi := box(p.CutLine)
	var s sheet
	s.width = max((hi.X-lo.X)*1000+2*margin, legendX+legendWidth+margin)
	s.origin = r2.Vec{X: s.width/2 - (lo.X+hi.X)*500, Y: margin + hi.Y*1000}
	s.below = margin + (hi.Y-lo.Y)*1000 + gap
	rows := len(legend(p)) + len(figures(p, o))
	s.height = s.below + max(fourInch+2*lineHeight, float64(rows+4)*lineHeight) + margin
	return s
}

// at returns the place on the page of a place in the piece.
func (s sheet) at(v r2.Vec) r2.Vec {
	return r2.Vec{X: s.origin.X + v.X*1000, Y: s.origin.Y - v.Y*1000}
}

func box(line []r2.Vec) (lo, hi r2.Vec) {
	lo, hi = line[0], line[0]
	for _, v := range line {
		lo = r2.Vec{X: min(lo.X, v.X), Y: min(lo.Y, v.Y)}
		hi = r2.Vec{X: max(hi.X, v.X), Y: max(hi.Y, v.Y)}
	}
	return lo, hi
}
