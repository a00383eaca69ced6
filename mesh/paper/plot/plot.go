// Package plot lays pieces out at full size and lists the strokes and words
// that an export has to draw, in millimetres, Y down the page. SVG and PDF draw
// the same list. Start at OnPage.
package plot

import (
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// Options are the words on the page; each may be empty.
type Options struct {
	Title string   // name of the style; empty: that of the first piece
	Notes []string // lines under the legend, such as size and figures
}

// Drawing is a page and what is drawn on it. All places are mm.
type Drawing struct {
	Width, Height float64
	Strokes       []Stroke
	Texts         []Text
	Placed        []Placed
}

// Placed is a piece on the page.
type Placed struct {
	Piece  paper.Piece
	Origin r2.Vec // place of the piece's origin on the page
}

// At returns the place on the page of a place in the piece (m).
func (p Placed) At(v r2.Vec) r2.Vec {
	return r2.Vec{X: p.Origin.X + v.X*1000, Y: p.Origin.Y - v.Y*1000}
}

// Layout of the page, mm.
const (
	Margin      = 15.0  // kept clear all round
	widest      = 841.0 // pages stay as narrow as this (A0) if the pieces let them
	gap         = 12.0
	tenCM       = 100.0
	fourInch    = 101.6
	legendX     = Margin + tenCM + gap + fourInch + gap // left edge of legend and notes
	legendWidth = 210.0                                 // room for the longest line of text
	lineHeight  = 7.5
)

// OnPage puts the pieces on one page in rows, with test squares, legend and notes
// below them.
func OnPage(pieces []paper.Piece, o Options) Drawing {
	d := Pieces(pieces)
	d.shift(Margin)
	if o.Title == "" && len(pieces) > 0 {
		o.Title = pieces[0].Name
	}
	below := d.Height + Margin + gap
	rows := float64(len(legend(pieces))+len(o.Notes)+4) * lineHeight
	d.Width = max(d.Width+2*Margin, legendX+legendWidth+Margin)
	d.Height = below + max(fourInch+2*lineHeight, rows) + Margin
	d.margin(below, pieces, o)
	return d
}

// Pieces puts the pieces alone on a page that just holds their cut lines; those of a nest
// lie over each other, as their places say.
func Pieces(pieces []paper.Piece) Drawing {
	var d Drawing
	x, y, row := 0.0, 0.0, 0.0
	many := len(pieces) > 1
	for _, stack := range stacks(pieces) {
		lo, hi := stack.box()
		w, h := (hi.X-lo.X)*1000, (hi.Y-lo.Y)*1000
		if x > 0 && x+w > widest-2*Margin {
			x, y, row = 0, y+row+gap, 0
		}
		for i, p := range stack {
			placed := Placed{p, r2.Vec{X: x - lo.X*1000, Y: y + hi.Y*1000}}
			d.Placed = append(d.Placed, placed)
			if i > 0 {
				d.ring(placed, i)
				continue
			}
			d.piece(placed, many)
		}
		if len(stack) > 1 {
			d.sizeMarks(d.Placed[len(d.Placed)-len(stack):])
		}
		d.Width, d.Height = max(d.Width, x+w), max(d.Height, y+h)
		x, row = x+w+gap, max(row, h)
	}
	return d
}

// shift moves all that is drawn right and down by s.
func (d *Drawing) shift(s float64) {
	by := r2.Vec{X: s, Y: s}
	for i := range d.Placed {
		d.Placed[i].Origin = r2.Add(d.Placed[i].Origin, by)
	}
	for _, s := range d.Strokes {
		for k, v := range s.Points {
			s.Points[k] = r2.Add(v, by)
		}
	}
	for i := range d.Texts {
		d.Texts[i].At = r2.Add(d.Texts[i].At, by)
	}
}
