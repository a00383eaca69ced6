package pdf

import (
	"fmt"
	"math"

	"cowl/mesh/paper/plot"

	"gonum.org/v1/gonum/spatial/r2"
)

// One tile fits A4 and Letter: the smaller width and the smaller height, less
// a margin of 10 mm on each side (mm).
const (
	tileWide = 190.0
	tileHigh = 259.0
	overlap  = 10.0 // of a tile over its neighbours to the right and below
	netWide  = tileWide - overlap
	netHigh  = tileHigh - overlap
	pad      = 6.0 // kept clear round the pieces
)

// tile is one page of the pattern.
type tile struct {
	row, column int
	at          r2.Vec // mm, its corner on the drawing
}

// name is the label of a tile: a letter for the row, a number for the column.
func (t tile) name() string { return fmt.Sprintf("%s%d", rowName(t.row), t.column+1) }

// rowName counts A to Z, then AA, AB and so on.
func rowName(row int) string {
	if row < 26 {
		return string(rune('A' + row))
	}
	return rowName(row/26-1) + rowName(row%26)
}

// grid is how a drawing is cut into tiles.
type grid struct {
	rows, columns int
	origin        r2.Vec // mm, corner of tile A1 on the drawing
	tiles         []tile // those that carry ink, row by row
}

// newGrid cuts d into as few rows and columns as hold it, d in their middle.
func newGrid(d plot.Drawing) grid {
	count := func(length, net float64) int {
		return max(1, int(math.Ceil((length+2*pad-overlap)/net)))
	}
	g := grid{rows: count(d.Height, netHigh), columns: count(d.Width, netWide)}
	g.origin = r2.Vec{
		X: (d.Width - float64(g.columns)*netWide - overlap) / 2,
		Y: (d.Height - float64(g.rows)*netHigh - overlap) / 2,
	}
	for row := range g.rows {
		for column := range g.columns {
			t := tile{row, column, r2.Add(g.origin, r2.Vec{X: float64(column) * netWide, Y: float64(row) * netHigh})}
			if t.carries(d, g.own(t)) {
				g.tiles = append(g.tiles, t)
			}
		}
	}
	return g
}

// has reports whether there is a tile at row and column.
func (g grid) has(row, column int) bool {
	for _, t := range g.tiles {
		if t.row == row && t.column == column {
			return true
		}
	}
	return false
}

// own returns the size of what no other tile carries: without the overlap, but in the last
// row and column (mm).
func (g grid) own(t tile) r2.Vec {
	size := r2.Vec{X: netWide, Y: netHigh}
	if t.column == g.columns-1 {
		size.X = tileWide
	}
	if t.row == g.rows-1 {
		size.Y = tileHigh
	}
	return size
}

// carries reports whether any stroke or word of d reaches into the part of the tile that is
// its own. A page without ink inside a piece is left out: the pages round it hold together.
func (t tile) carries(d plot.Drawing, own r2.Vec) bool {
	for _, s := range d.Strokes {
		for i, a := range s.Points {
			b := a
			if i+1 < len(s.Points) {
				b = s.Points[i+1]
			} else if s.Closed {
				b = s.Points[0]
			}
			if touches(r2.Sub(a, t.at), r2.Sub(b, t.at), own) {
				return true
			}
		}
	}
	for _, w := range d.Texts {
		for _, l := range w.Box() {
			if touches(r2.Sub(l[0], t.at), r2.Sub(l[1], t.at), own) {
				return true
			}
		}
	}
	return false
}

// touches reports whether any of the segment ab lies in a tile of that size at the origin
// (clipping after Liang and Barsky, 1984).
func touches(a, b, size r2.Vec) bool {
	d := r2.Sub(b, a)
	from, to := 0.0, 1.0
	for _, c := range [4][2]float64{{-d.X, a.X}, {d.X, size.X - a.X}, {-d.Y, a.Y}, {d.Y, size.Y - a.Y}} {
		switch p, q := c[0], c[1]; {
		case p == 0 && q < 0:
			return false
		case p < 0:
			from = max(from, q/p)
		case p > 0:
			to = min(to, q/p)
		}
	}
	return from <= to
}
