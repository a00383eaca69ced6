// Package outline turns the bare lines that a file holds into a piece, and
// refuses what is none: too large, not finite, open, crossing itself, or of a
// size that no garment has. The readers of DXF, SVG and CSV share it. Start at
// Found.
package outline

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// What a file may hold at most. A pattern of one size takes a small part of
// this; more is no pattern, or a trap.
const (
	MostBytes  = 8 << 20 // of a file
	MostPoints = 50000   // of all lines in a file
	mostSides  = 3000    // of one outline
	mostInner  = 400     // lines inside a piece
)

const (
	smallest  = 0.02 // m, no piece is smaller either way
	largest   = 3.0  // m, nor larger
	leastArea = 1e-4 // m², nor encloses less
	farthest  = 100  // m, nor lies further from the origin
	same      = 1e-5 // m, points nearer than this are one
)

// Bytes reads a whole file, but no more than MostBytes. Lines that end in \r alone
// come back ended by \n.
func Bytes(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, MostBytes+1))
	if err == nil && len(data) > MostBytes {
		err = fmt.Errorf("file larger than %d MB, want one pattern of one size", MostBytes>>20)
	}
	if !bytes.Contains(data, []byte("\n")) {
		data = bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
	}
	return data, err
}

// Found is what a file says of a piece, in metres, Y up.
type Found struct {
	Name    string
	Outline []r2.Vec // closed seam line, either way round
	Cut     []r2.Vec // closed cut line; nil: the seam line
	Lines   []paper.Line
	Notches []r2.Vec
	Holes   []r2.Vec
	Grain   *[2]r2.Vec // nil: not drawn
}

// Piece returns the piece, or says why it is none.
func (f Found) Piece() (paper.Piece, error) {
	seam, err := ring("outline", f.Outline)
	if err != nil {
		return paper.Piece{}, err
	}
	cut := seam
	if f.Cut != nil {
		if cut, err = ring("cut line", f.Cut); err != nil {
			return paper.Piece{}, err
		}
	}
	if len(f.Lines)+len(f.Holes)+len(f.Notches) > mostInner {
		return paper.Piece{}, fmt.Errorf("more than %d lines and marks inside a piece, want those of one size", mostInner)
	}
	p := paper.Piece{Name: f.Name, Quantity: 1, Outline: seam, CutLine: cut}
	if p.Edges, err = edges(seam, cut, f.Cut == nil); err != nil {
		return paper.Piece{}, err
	}
	for _, l := range f.Lines {
		if len(l.Points) < 2 {
			return paper.Piece{}, fmt.Errorf("line %.40q inside has one point, want two or more", l.Name)
		}
		if err := near(l.Points); err != nil {
			return paper.Piece{}, fmt.Errorf("a line inside: %w", err)
		}
		p.Lines = append(p.Lines, l)
	}
	for i, h := range f.Holes {
		p.Holes = append(p.Holes, paper.Hole{Name: fmt.Sprintf("hole %d", i+1), At: h})
	}
	for _, n := range f.Notches {
		p.Notches = append(p.Notches, notch(seam, n))
	}
	if err := near(append(append([]r2.Vec(nil), f.Holes...), f.Notches...)); err != nil {
		return paper.Piece{}, fmt.Errorf("a mark: %w", err)
	}
	return p, f.settle(&p)
}

// settle places the grain line, if the file has one, and puts the label in the
// middle: the finer search of paper.Piece.Settle takes too long for a file that
// may hold many pieces.
func (f Found) settle(p *paper.Piece) error {
	lo, hi := paper.Box(p.Outline)
	p.Label, p.LabelWide = r2.Scale(0.5, r2.Add(lo, hi)), 0.5*(hi.X-lo.X)
	if f.Grain == nil {
		return nil
	}
	d := r2.Sub(f.Grain[1], f.Grain[0])
	if err := near(f.Grain[:]); err != nil || r2.Norm(d) < same {
		return errors.New("the grain line has no length: draw it from end to end")
	}
	p.GrainLine = *f.Grain
	return nil
}

// ring returns a closed line counter-clockwise, without doubled points, or
// says what is wrong with it.
func ring(what string, line []r2.Vec) ([]r2.Vec, error) {
	if err := near(line); err != nil {
		return nil, fmt.Errorf("%s: %w", what, err)
	}
	var p []r2.Vec
	for _, v := range line {
		if len(p) == 0 || r2.Norm(r2.Sub(v, p[len(p)-1])) > same {
			p = append(p, v)
		}
	}
	for len(p) > 1 && r2.Norm(r2.Sub(p[0], p[len(p)-1])) <= same {
		p = p[:len(p)-1]
	}
	switch {
	case len(p) < 3:
		return nil, fmt.Errorf("%s has %d points, want three or more", what, len(p))
	case len(p) > mostSides:
		return nil, fmt.Errorf("%s has %d points, want at most %d: thin out the curves", what, len(p), mostSides)
	}
	if err := size(what, p); err != nil {
		return nil, err
	}
	if i, j, ok := draft.Crossing(p); ok {
		return nil, fmt.Errorf("%s crosses itself near (%.1f, %.1f) mm, sides %d and %d: draw it round once", what,
			p[j].X*1000, p[j].Y*1000, i+1, j+1)
	}
	if a := area(p); a < leastArea {
		return nil, fmt.Errorf("%s encloses %.3g mm², want at least %.0f mm²: it runs back along itself", what, a*1e6,
			leastArea*1e6)
	}
	if polyline.Area(p) < 0 {
		for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
			p[i], p[j] = p[j], p[i]
		}
	}
	return p, nil
}

// size says whether a closed line is as large as a piece of a garment.
func size(what string, p []r2.Vec) error {
	lo, hi := paper.Box(p)
	wide, high := hi.X-lo.X, hi.Y-lo.Y
	if min(wide, high) < smallest || max(wide, high) > largest {
		return fmt.Errorf("%s is %.4g × %.4g mm, want %.0f–%.0f mm both ways: is the unit right, and the scale 1:1?",
			what, wide*1000, high*1000, smallest*1000, largest*1000)
	}
	return nil
}

// near refuses points that are not finite or lie out of the world.
func near(line []r2.Vec) error {
	for _, v := range line {
		if !(math.Abs(v.X) <= farthest && math.Abs(v.Y) <= farthest) {
			return fmt.Errorf("point (%g, %g) mm, want finite numbers within ±%d m: is the unit right?", v.X*1000, v.Y*1000,
				farthest)
		}
	}
	return nil
}
