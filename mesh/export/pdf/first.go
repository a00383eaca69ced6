package pdf

import (
	"fmt"

	"cowl/mesh/paper"
	"cowl/mesh/paper/sheet"

	"gonum.org/v1/gonum/spatial/r2"
)

// Layout of the first page, mm in the tile.
const (
	squaresTop = 26.0
	columnX    = 110.0
	columnWide = tileWide - columnX
	tenCM      = 100.0
	fourInch   = 101.6
	mapTop     = squaresTop + tenCM + 12 // or lower, under a long legend
	mapClear   = 3.0
	small      = 3.6 // text size
)

// joining tells how the pages are put together.
var joining = []string{
	"1. Print this page alone, at 100 % (actual size), with nothing fitted to the page.",
	"2. Measure both squares. If one is off by more than half a millimetre, change the print setting, not the pattern.",
	"3. Print the rest. Cut each page along its solid lines, left and top, where it has them.",
	"4. Lay the cut edge on the dashed line of its neighbour, so that crosses meet and diamonds close, and tape it.",
	"5. Join each row, then row to row. Hold a ruler to the centre line: it must run straight across the joins.",
}

// first draws the page that is printed and measured before the others.
func (p tiling) first() {
	p.f.AddPage()
	p.say(strong, 0, 7, 6.5, sheet.Ink, p.o.Title)
	p.say(plain, 0, 15, 4.2, sheet.Grey, fmt.Sprintf("Pattern 1:1 on %d pages of %s, page 1 of %d. Tiles %.0f × %.0f mm, %.0f mm overlap.",
		p.pages(), p.on.Name, p.pages(), tileWide, tileHigh, overlap))
	p.say(plain, 0, 21, 4.2, sheet.Accent, sheet.Caution)
	var squares sheet.Drawing
	squares.Square("", r2.Vec{Y: squaresTop}, tenCM, "10 cm test square")
	squares.Square("", r2.Vec{Y: squaresTop + tenCM + 8}, fourInch, "4 in test square")
	draw(p.f, squares, p.corner, 1)
	y := squaresTop + 4
	for _, s := range joining {
		y = p.paragraph(columnX, y, columnWide, s) + 1.5
	}
	var lines sheet.Drawing
	below := lines.Legend(p.pieces(), r2.Vec{X: columnX, Y: y + 4}, 2.9)
	draw(p.f, lines, p.corner, 1)
	p.assembly(r2.Vec{X: columnX, Y: max(mapTop, below+mapClear)})
	y = squaresTop + tenCM + 8 + fourInch + 6
	for _, n := range p.o.Notes {
		if y > tileHigh {
			break // the rest stands on the cutting sheet
		}
		p.say(plain, 0, y, small, sheet.Ink, n)
		y += 5
	}
}

// pieces lists what is drawn.
func (p tiling) pieces() []paper.Piece {
	var out []paper.Piece
	for _, placed := range p.d.Placed {
		out = append(out, placed.Piece)
	}
	return out
}

// paragraph writes words in lines no wider than wide, from the baseline y
// down, and returns the next baseline.
func (p tiling) paragraph(x, y, wide float64, said string) float64 {
	for _, line := range wrap(p.f, plain, small, wide, said) {
		p.say(plain, x, y, small, sheet.Ink, line)
		y += 1.35 * small
	}
	return y
}

// assembly draws the map of the tiles with the pieces on it.
func (p tiling) assembly(at r2.Vec) {
	p.say(strong, at.X, at.Y, small, sheet.Ink, "How the pages lie")
	wide, high := float64(p.g.columns)*netWide+overlap, float64(p.g.rows)*netHigh+overlap
	scale := min(columnWide/wide, (squaresTop+tenCM+8+fourInch-at.Y-4)/high)
	corner := r2.Add(at, r2.Vec{Y: 4})
	place := func(v r2.Vec) r2.Vec { return r2.Add(corner, r2.Scale(scale, r2.Sub(v, p.g.origin))) }
	for _, t := range p.g.tiles {
		a := place(t.at)
		b := place(r2.Add(t.at, r2.Vec{X: netWide, Y: netHigh}))
		p.line(trimPen, true, a, r2.Vec{X: b.X, Y: a.Y}, b, r2.Vec{X: a.X, Y: b.Y})
	}
	for _, placed := range p.d.Placed {
		p.line(signPen, true, onMap(placed, placed.Piece.CutLine, place)...)
		for _, l := range placed.Piece.Lines {
			if l.Kind == paper.Centre || l.Kind == paper.Fold {
				p.line(trimPen, false, onMap(placed, l.Points, place)...)
			}
		}
	}
	for _, t := range p.g.tiles {
		mid := place(r2.Add(t.at, r2.Vec{X: netWide / 2, Y: netHigh / 2}))
		at := p.at(mid.X, mid.Y)
		p.f.SetFillColor(255, 255, 255)
		p.f.Rect(at.X-3.4, at.Y-small+0.4, 6.8, small, "F")
		text(p.f, plain, sheet.Text{Said: t.name(), At: at, Size: small, Anchor: sheet.Middle, Colour: sheet.Accent})
	}
}

// onMap maps a line of a piece to the map.
func onMap(p sheet.Placed, line []r2.Vec, place func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = place(p.At(v))
	}
	return out
}
