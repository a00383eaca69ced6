package pdf

import (
	"fmt"
	"io"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"

	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/gonum/spatial/r2"
)

// WriteTiles draws the pieces on pages of the given paper. The tiles are the
// same on A4 and Letter. The first page carries test squares, how to join the
// pages, and a map of them.
func WriteTiles(w io.Writer, pieces []paper.Piece, o plot.Options, on Paper) error {
	if err := check(pieces); err != nil {
		return err
	}
	if on.Width < tileWide || on.Height < tileHigh {
		return fmt.Errorf("pdf: %s is %.0f × %.0f mm, want at least %.0f × %.0f mm for a tile", on.Name, on.Width, on.Height,
			tileWide, tileHigh)
	}
	if o.Title == "" {
		o.Title = pieces[0].Name
	}
	d := plot.Pieces(pieces)
	g := newGrid(d)
	f := newDocument(fpdf.SizeType{Wd: on.Width, Ht: on.Height}, o.Title)
	p := tiling{f, d, g, o, on, r2.Vec{X: (on.Width - tileWide) / 2, Y: (on.Height - tileHigh) / 2}}
	p.first()
	for i, t := range g.tiles {
		p.page(t, i+2)
	}
	return finish(f, w)
}

// tiling is a tiled document while it is written.
type tiling struct {
	f      *fpdf.Fpdf
	d      plot.Drawing
	g      grid
	o      plot.Options
	on     Paper
	corner r2.Vec // mm, corner of the tile on the page
}

// at returns the place on the page of a place in the tile.
func (p tiling) at(x, y float64) r2.Vec { return r2.Vec{X: p.corner.X + x, Y: p.corner.Y + y} }

// pages is the number of pages, the first one counted.
func (p tiling) pages() int { return len(p.g.tiles) + 1 }

// page draws a tile, its frame and its labels.
func (p tiling) page(t tile, n int) {
	p.f.AddPage()
	p.say(plain, 5, 16, 14, pale, t.name())
	p.f.ClipRect(p.corner.X, p.corner.Y, tileWide, tileHigh, false)
	draw(p.f, p.d, r2.Sub(p.corner, t.at), 1)
	p.f.ClipEnd()
	p.frame(t)
	p.say(plain, 4, tileHigh-1, 3, plot.Grey, fmt.Sprintf("%s, tile %s, page %d of %d, %s. Print at 100 %%.", p.o.Title,
		t.name(), n, p.pages(), p.on.Name))
}

var pale = plot.Colour{0xc9, 0xc9, 0xc9}

var (
	trimPen = plot.Pen{Colour: plot.Grey, Width: 0.2}
	joinPen = plot.Pen{Colour: plot.Grey, Width: 0.2, Dash: []float64{1, 2}}
	signPen = plot.Pen{Colour: plot.Ink, Width: 0.3}
)

// line draws a line given in the tile.
func (p tiling) line(pen plot.Pen, closed bool, points ...r2.Vec) {
	stroke(p.f, plot.Stroke{Pen: pen, Closed: closed, Points: points},
		func(v r2.Vec) r2.Vec { return r2.Add(p.corner, v) }, 1)
}

// say writes words at a place in the tile.
func (p tiling) say(font string, x, y, size float64, c plot.Colour, said string) {
	text(p.f, font, plot.Text{Said: said, At: p.at(x, y), Size: size, Colour: c})
}

// frame draws what joins the tile to its neighbours: a solid line where it is
// cut, a dashed line where the next one's cut edge comes to lie, a half
// diamond on either side of it, and a cross at each corner.
func (p tiling) frame(t tile) {
	v := func(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }
	if p.g.has(t.row, t.column-1) {
		p.line(trimPen, false, v(0, 0), v(0, tileHigh))
		p.line(signPen, false, v(0, netHigh/2-6), v(6, netHigh/2), v(0, netHigh/2+6))
	}
	if p.g.has(t.row-1, t.column) {
		p.line(trimPen, false, v(0, 0), v(tileWide, 0))
		p.line(signPen, false, v(netWide/2-6, 0), v(netWide/2, 6), v(netWide/2+6, 0))
	}
	if p.g.has(t.row, t.column+1) {
		p.line(joinPen, false, v(netWide, 0), v(netWide, tileHigh))
		p.line(signPen, true, v(netWide, netHigh/2-6), v(netWide+6, netHigh/2), v(netWide, netHigh/2+6),
			v(netWide-6, netHigh/2))
		p.say(plain, netWide+1.5, netHigh/2+12, 3.2, plot.Grey, tile{row: t.row, column: t.column + 1}.name())
	}
	if p.g.has(t.row+1, t.column) {
		p.line(joinPen, false, v(0, netHigh), v(tileWide, netHigh))
		p.line(signPen, true, v(netWide/2-6, netHigh), v(netWide/2, netHigh+6), v(netWide/2+6, netHigh),
			v(netWide/2, netHigh-6))
		p.say(plain, netWide/2+8, netHigh-1.5, 3.2, plot.Grey, tile{row: t.row + 1, column: t.column}.name())
	}
	p.f.ClipRect(p.corner.X, p.corner.Y, tileWide, tileHigh, false)
	for _, x := range []float64{0, netWide} {
		for _, y := range []float64{0, netHigh} {
			p.line(signPen, false, v(x-4, y), v(x+4, y))
			p.line(signPen, false, v(x, y-4), v(x, y+4))
		}
	}
	p.f.ClipEnd()
}
