// Package marker lays paper pieces on cloth of a given width: whole, in a single
// layer, right side up, each with its grain line along the selvedge. It says
// whether they fit, how much cloth they take and what is wasted. Metres; on
// the cloth X runs across from the left selvedge and Y along the warp.
//
// Pieces are dropped one after the other as far down as they go, in every
// order. That is a good marker, not the best one: who moves pieces by hand may
// save a little more. Start at On.
package marker

import (
	"errors"
	"math"

	"cowl/mesh/limit"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Selvedge is what a selvedge takes of the width on either side, m (common
// practice).
const Selvedge = 0.015

// Widths lists the nominal widths that cloth is sold in, m (common practice).
func Widths() []float64 { return []float64{0.90, 1.12, 1.15, 1.40, 1.50} }

// Usable returns what is left of a nominal width between the selvedges, m.
func Usable(nominal float64) float64 { return nominal - 2*Selvedge }

// Cloth is what is laid on.
type Cloth struct {
	Width float64 // m, usable, between the selvedges
	Nap   bool    // pile or a print with a way up: all pieces lie with their tops the same way
	Join  bool    // a corner low at the side may be joined on, along the straight grain
	Seam  float64 // m, allowance of such a join on either side
}

// Placed is a piece as it lies on the cloth.
type Placed struct {
	Piece int      // index into the pieces laid
	Copy  int      // 0, 1, … of Quantity
	Part  Part     // the piece whole, or a part of it
	Turn  float64  // rad, counter-clockwise, of the paper on the cloth
	Shift r2.Vec   // m, after the turn
	Cut   []r2.Vec // closed cut line on the cloth
	Join  []r2.Vec // seam line of a joined corner on the cloth; nil: none
}

// On returns where a place of the paper lies on the cloth.
func (p Placed) On(v r2.Vec) r2.Vec { return r2.Add(r2.Rotate(v, p.Turn, r2.Vec{}), p.Shift) }

// Marker is a finished lay plan: pieces as they lie on the cloth.
type Marker struct {
	Cloth  Cloth
	Length float64 // m of cloth
	Area   float64 // m² of pieces
	Placed []Placed
}

// Waste returns the share of the usable cloth that no piece covers, 0..1.
func (l Marker) Waste() float64 { return 1 - l.Area/(l.Cloth.Width*l.Length) }

// Joins counts the corners that are joined on.
func (l Marker) Joins() int {
	n := 0
	for _, p := range l.Placed {
		if p.Part == Corner {
			n++
		}
	}
	return n
}

// ErrTooWide says that a piece does not fit on the width.
var ErrTooWide = errors.New("does not fit")

// On lays the pieces, each as often as its Quantity says. A piece that is
// wider than the cloth, and has no corner that may be joined on, is an
// ErrTooWide.
func On(pieces []paper.Piece, c Cloth) (Marker, error) {
	if !(c.Width > 0) {
		return Marker{}, limit.Errorf("width", "usable width %v, want more than 0", limit.Metres(c.Width))
	}
	var blanks []blank
	l := Marker{Cloth: c}
	for i, p := range pieces {
		parts, err := c.parts(p)
		if err != nil {
			return Marker{Cloth: c}, err
		}
		for k := range max(p.Quantity, 1) {
			for _, b := range parts {
				b.piece, b.copy = i, k
				blanks = append(blanks, b)
				l.Area += area(b.cut)
			}
		}
	}
	l.Length = math.Inf(1)
	for _, order := range orders(blanks) {
		search(&l, blanks, order)
	}
	return l, nil
}

// blank is a piece, or a part of one, that is to be laid.
type blank struct {
	piece, copy int
	part        Part
	cut         []r2.Vec // m, closed, on the paper
	join        []r2.Vec // m, seam line of a join; nil: none
	grain       float64  // rad
}

// turns lists how a blank may be turned: its grain along the cloth, and where
// there is no nap also head over heels.
func (b blank) turns(c Cloth) []float64 {
	if c.Nap {
		return []float64{b.grain}
	}
	return []float64{b.grain, b.grain + math.Pi}
}

// turned returns the cut line turned, with its lowest corner at the origin,
// and by how much it was moved after the turn.
func turned(cut []r2.Vec, turn float64) (out []r2.Vec, shift r2.Vec) {
	out = make([]r2.Vec, len(cut))
	for i, v := range cut {
		out[i] = r2.Rotate(v, turn, r2.Vec{})
	}
	lo, _ := paper.Box(out)
	for i := range out {
		out[i] = r2.Sub(out[i], lo)
	}
	return out, r2.Scale(-1, lo)
}

// area returns the area of a closed line, m².
func area(p []r2.Vec) float64 { return math.Abs(polyline.Area(p)) }
