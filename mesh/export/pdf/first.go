package pdf

import (
	"fmt"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/ruler"

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
	"2. Measure both squares. If one is off by more than %s, change the print setting, not the pattern.",
	"3. Print the rest. Cut each page along its solid lines, left and top, where it has them.",
	"4. Lay the cut edge on the dashed line of its neighbour, so that crosses meet and diamonds close, and tape it.",
	"5. Join each row, then row to row. Hold a ruler to the centre line: it must run straight across the joins.",
	"6. A place of the map without a page carries no line: leave it open, or fill it with blank paper.",
}

// first draws the page that is printed and measured before the others.
func (p tiling) first() {
	say := ruler.Spoken().Small
	p.f.AddPage()
	p.say(strong, 0, 7, p.fitting(strong, 6.5, tileWide, p.o.Title), plot.Ink, p.o.Title)
	p.say(plain, 0, 15, 4.2, plot.Grey, fmt.Sprintf("Pattern 1:1 on %d pages of %s, page 1 of %d. Tiles %s × %s, %s "+
		"overlap.",
		p.pages(), p.on.Name, p.pages(), say(tileWide/1000.0), say(tileHigh/1000.0), say(overlap/1000.0)))
	p.say(plain, 0, 21, 4.2, plot.Accent, plot.Caution)
	var squares plot.Drawing
	squares.Square("", r2.Vec{Y: squaresTop}, tenCM, "10 cm test square")
	squares.Square("", r2.Vec{Y: squaresTop + tenCM + 8}, fourInch, "4 in test square")
	draw(p.f, squares, p.corner, 1)
	y := squaresTop + 4
	for _, s := range joining {
		s = strings.Replace(s, "%s", plot.PrintError(), 1)
		y = p.paragraph(columnX, y, columnWide, s) + 1.5
	}
	var lines plot.Drawing
	below := lines.Legend(p.pieces(), r2.Vec{X: columnX, Y: y + 4}, 2.9)
	draw(p.f, lines, p.corner, 1)
	p.assembly(r2.Vec{X: columnX, Y: max(mapTop, below+mapClear)})
	y = squaresTop + tenCM + 8 + fourInch + 6
	for _, n := range p.o.Notes {
		lines := wrap(p.f, plain, small, tileWide, n)
		if y+float64(len(lines)-1)*1.35*small > tileHigh {
			break // the rest stands on the cutting sheet
		}
		y = p.paragraph(0, y, tileWide, n)
	}
}

// fitting returns the size of letters, that given or less, in which words are no wider
// than wide (mm).
func (p tiling) fitting(font string, size, wide float64, said string) float64 {
	for ; size > small && len(wrap(p.f, font, size, wide, said)) > 1; size -= 0.5 {
	}
	return size
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
		p.say(plain, x, y, small, plot.Ink, line)
		y += 1.35 * small
	}
	return y
}

// assembly draws the map of the tiles with the pieces on it.
func (p tiling) assembly(at r2.Vec) {
	p.say(strong, at.X, at.Y, small, plot.Ink, "How the pages lie")
	wide, high := float64(p.g.columns)*netWide+overlap, float64(p.g.rows)*netHigh+overlap
	scale := min(columnWide/wide, (squaresTop+tenCM+8+fourInch-at.Y-4)/high)
	corner := r2.Add(at, r2.Vec{Y: 4})
	place := func(v r2.Vec) r2.Vec { return r2.Add(corner, r2.Scale(scale, r2.Sub(v, p.g.origin))) }
	var lines [][]r2.Vec
	draw := func(pen plot.Pen, closed bool, line []r2.Vec) {
		p.line(pen, closed, line...)
		if closed {
			line = append(line, line[0])
		}
		lines = append(lines, line)
	}
	for _, placed := range p.d.Placed {
		draw(signPen, true, onMap(placed, placed.Piece.CutLine, place))
		for _, l := range placed.Piece.Lines {
			if l.Kind == paper.Centre || l.Kind == paper.Fold {
				draw(trimPen, false, onMap(placed, l.Points, place))
			}
		}
	}
	for _, t := range p.g.tiles {
		a := place(t.at)
		b := place(r2.Add(t.at, r2.Vec{X: netWide, Y: netHigh}))
		p.line(trimPen, true, a, r2.Vec{X: b.X, Y: a.Y}, b, r2.Vec{X: a.X, Y: b.Y})
		p.tileName(t.name(), a, b, lines)
	}
}

// tileName writes the name of a tile of the map, corners a and b, where it keeps clear
// of the lines.
func (p tiling) tileName(name string, a, b r2.Vec, lines [][]r2.Vec) {
	size := min(small, (b.X-a.X)/3, (b.Y-a.Y)/2)
	room := r2.Vec{X: 0.62 * size * float64(len(name)), Y: 0.9 * size}
	at := r2.Scale(0.5, r2.Add(a, b))
	for _, share := range []r2.Vec{{X: 0.5, Y: 0.5}, {X: 0.5, Y: 0.25}, {X: 0.5, Y: 0.75}, {X: 0.25, Y: 0.5},
		{X: 0.75, Y: 0.5},
		{X: 0.25, Y: 0.22}, {X: 0.75, Y: 0.22}, {X: 0.25, Y: 0.78}, {X: 0.75, Y: 0.78}} {
		mid := r2.Vec{X: a.X + share.X*(b.X-a.X), Y: a.Y + share.Y*(b.Y-a.Y)}
		if clearOf(lines, r2.Sub(mid, r2.Scale(0.5, room)), room) {
			at = mid
			break
		}
	}
	on := p.at(at.X, at.Y+0.36*size)
	text(p.f, plain, plot.Text{Said: name, At: on, Size: size, Anchor: plot.Middle, Colour: plot.Accent})
}

// clearOf reports whether no line runs through the room of that size at a corner.
func clearOf(lines [][]r2.Vec, corner, size r2.Vec) bool {
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			if touches(r2.Sub(l[i-1], corner), r2.Sub(l[i], corner), size) {
				return false
			}
		}
	}
	return true
}

// onMap maps a line of a piece to the map.
func onMap(p plot.Placed, line []r2.Vec, place func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = place(p.At(v))
	}
	return out
}
