package pdf

import (
	"fmt"
	"math"

	"cowl/mesh/paper/sheet"

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
	tiles         []tile // those that carry a part of a piece, row by row
}

// newGrid cuts d into as few rows and columns as hold it, d in their middle.
func newGrid(d sheet.Drawing) grid {
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
			if t.carries(d) {
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

// carries reports whether any cut piece of d reaches into the tile: a side of
// it crosses the tile, or the middle of the tile lies within it.
func (t tile) carries(d sheet.Drawing) bool {
	for _, p := range d.Placed {
		cut := make([]r2.Vec, len(p.Piece.CutLine))
		for i, v := range p.Piece.CutLine {
			cut[i] = r2.Sub(p.At(v), t.at)
		}
		in := false
		mid := r2.Vec{X: tileWide / 2, Y: tileHigh / 2}
		for i, a := range cut {
			b := cut[(i+1)%len(cut)]
			if touches(a, b) {
				return true
			}
			if (a.Y > mid.Y) != (b.Y > mid.Y) && mid.X < a.X+(mid.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
		if in {
			return true
		}
	}
	return false
}

// touches reports whether any of the segment ab lies in a tile at the origin
// (clipping after Liang and Barsky, 1984).
func touches(a, b r2.Vec) bool {
	d := r2.Sub(b, a)
	from, to := 0.0, 1.0
	for _, c := range [4][2]float64{{-d.X, a.X}, {d.X, tileWide - a.X}, {-d.Y, a.Y}, {d.Y, tileHigh - a.Y}} {
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
