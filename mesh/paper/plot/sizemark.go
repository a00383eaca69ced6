package plot

import (
	"cowl/mesh/polyline"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// The number of a size of a nest stands along its own cut line, just inside, as large as the
// room between all lines and words lets it. Where the lines lie too close it stands further
// in, with a thin line to its own. All in mm.
const (
	markLargest = 9.0
	markLeast   = 5.0
	markKeep    = 0.8  // kept clear all round
	markAlone   = 2.0  // to the next line from where a cut line is numbered: it is nobody else's there
	markEvery   = 4.0  // between the places that are tried along a line
	markApart   = 40.0 // from one size to the next at most
	markDeepest = 60.0 // from a cut line to its number at most
)

// place is where a cut line can be numbered.
type place struct {
	on, in r2.Vec // in is unit, into the piece
}

// sizeMarks writes the sizes of a nest, all of one height, one beside the other. All else of
// the nest is drawn.
func (d *Drawing) sizeMarks(sizes []Placed) {
	places := make([][]place, len(sizes))
	for i, p := range sizes {
		line := p.all(p.Piece.CutLine)
		places[i] = placesAlong(line)
		alone := slices.DeleteFunc(slices.Clone(places[i]), func(p place) bool { return !d.isAlone(p.on) })
		if len(alone) > 0 {
			places[i] = alone
		}
	}
	size, row := markLeast, []mark(nil)
	for high := markLargest; high >= markLeast && row == nil; high-- {
		size, row = high, d.row(sizes, places, high, 0)
	}
	for deep := markEvery; deep <= markDeepest && row == nil; deep += markEvery {
		row = d.row(sizes, places, size, deep)
	}
	for i, m := range row {
		foot := r2.Sub(m.mid, r2.Scale(m.high/2, m.up))
		turn := math.Atan2(m.along.Y, m.along.X) * 180 / math.Pi
		d.text(Text{sizes[i].Piece.Size, foot, size, turn, Middle, Ink})
		if m.deep > 0 {
			d.line("", rulerPen, false, m.on, m.end())
		}
	}
}

// row returns room for every size, so far in from its line, each as near as can be to that
// of the one before; nil: there is none, or two are too far apart.
func (d *Drawing) row(sizes []Placed, places [][]place, size, deep float64) []mark {
	rooms := make([][]mark, len(sizes))
	for i, p := range sizes {
		for _, at := range places[i] {
			if m := at.mark(width(p.Piece.Size, size), capHeight*size, deep); d.isClear(m) {
				rooms[i] = append(rooms[i], m)
			}
		}
	}
	var best []mark
	least := markApart
	for _, first := range rooms[0] {
		row, most := []mark{first}, 0.0
		for _, room := range rooms[1:] {
			next, off := nearest(room, row)
			row, most = append(row, next), max(most, off)
		}
		if most < least {
			best, least = row, most
		}
	}
	return best
}

// nearest returns the room next to the last of row that meets none of it, and how far that
// is, mm; infinitely far, if there is none.
func nearest(room, row []mark) (best mark, least float64) {
	least = math.Inf(1)
	for _, m := range room {
		off := r2.Norm(r2.Sub(m.mid, row[len(row)-1].mid))
		if off < least && !slices.ContainsFunc(row, m.meetsMark) {
			best, least = m, off
		}
	}
	return best, least
}

// placesAlong lists places along a closed line.
func placesAlong(line []r2.Vec) []place {
	inside := 1.0 // to the right of the line on the page, where Y runs down
	if polyline.Area(line) < 0 {
		inside = -1
	}
	var out []place
	for i, a := range line {
		way := r2.Sub(line[(i+1)%len(line)], a)
		long := r2.Norm(way)
		if long == 0 {
			continue
		}
		in := r2.Scale(inside/long, r2.Vec{X: -way.Y, Y: way.X})
		n := max(1, math.Floor(long/markEvery))
		for k := range int(n) {
			out = append(out, place{r2.Add(a, r2.Scale((float64(k)+0.5)/n, way)), in})
		}
	}
	return out
}

// isAlone reports whether one line alone runs over a place, and the next is well off.
func (d *Drawing) isAlone(at r2.Vec) bool {
	room := mark{mid: at, along: r2.Vec{X: 1}, up: r2.Vec{Y: 1}, wide: 2 * (markAlone - markKeep),
		high: 2 * (markAlone - markKeep)}
	n := 0
	for _, s := range d.Strokes {
		if room.meetsLine(s) {
			n++
		}
	}
	return n < 2
}

// isClear reports whether no line and no words come near the room.
func (d *Drawing) isClear(m mark) bool {
	return !slices.ContainsFunc(d.Strokes, m.meetsLine) && !slices.ContainsFunc(d.Texts, func(t Text) bool {
		for _, side := range t.Box() {
			if m.meets(side[0], side[1]) {
				return true
			}
		}
		return false
	})
}
