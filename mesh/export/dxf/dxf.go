// Package dxf writes flat pieces as a DXF R12 text file, layered as ASTM
// D6673: one block a piece, millimetres, numbered layers. It has not been
// checked against the text of that standard and claims no conformance. Start
// at Write.
package dxf

import (
	"errors"
	"fmt"
	"io"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// The layers, by the numbers of ASTM D6673-10. Layer 0 stays empty, and there
// is no mirror line (6): a bias piece is cut whole.
const (
	layerCut       = "1"  // boundary
	layerTurn      = "2"  // corners of layers 1, 8 and 14
	layerCurve     = "3"  // points on curves of layers 1, 8 and 14
	layerNotch     = "4"  // notches
	layerGrain     = "7"  // grain line
	layerInner     = "8"  // lines inside, not cut
	layerHole      = "13" // drill holes
	layerSeam      = "14" // seam line
	layerNote      = "15" // annotation
	layerCheckCut  = "84" // copies for checking the curves of 1, 8 and 14
	layerCheckIn   = "85"
	layerCheckSeam = "87"
)

// Options are the words in the file.
type Options struct {
	Style string // name of the style; empty: that of the first piece
	Size  string // sample size
}

// gap keeps the pieces of a file apart (mm).
const gap = 20.0

// Write writes the pieces side by side. No piece, a piece without an outline
// and a failing w are errors.
func Write(w io.Writer, pieces []paper.Piece, o Options) error {
	if len(pieces) == 0 {
		return errors.New("dxf: no piece to write")
	}
	if o.Style == "" {
		o.Style = pieces[0].Name
	}
	f := &file{}
	f.pair(999, "layered as ASTM D6673, not checked for conformance; lengths in millimetres")
	f.pair(0, "SECTION")
	f.pair(2, "BLOCKS")
	names := blockNames(pieces)
	x := 0.0
	for i, p := range pieces {
		if len(p.Outline) < 3 || len(p.CutLine) < 3 {
			return fmt.Errorf("dxf: piece %q has no outline: draft it first", p.Name)
		}
		lo, hi := paper.Box(p.CutLine)
		if i > 0 {
			x += gap - lo.X*1000
		}
		f.at = func(v r2.Vec) r2.Vec { return r2.Vec{X: v.X*1000 + x, Y: v.Y * 1000} }
		f.block(names[i], p, o)
		x += hi.X * 1000
	}
	f.pair(0, "ENDSEC")
	f.pair(0, "SECTION")
	f.pair(2, "ENTITIES")
	f.styleText(o)
	for _, n := range names {
		f.insert(n)
	}
	f.pair(0, "ENDSEC")
	f.pair(0, "EOF")
	if _, err := w.Write(f.out.Bytes()); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	return nil
}

// block writes a piece.
func (f *file) block(name string, p paper.Piece, o Options) {
	f.pair(0, "BLOCK")
	f.pair(8, layerCut)
	f.pair(2, name)
	f.pair(70, "0")
	f.point(r2.Vec{})
	f.polyline(layerCut, true, p.CutLine)
	f.points(p, p.CutLine, true)
	f.polyline(layerSeam, true, p.Outline)
	f.points(p, p.Outline, true)
	for _, l := range p.Lines {
		f.polyline(layerInner, false, l.Points)
		f.points(p, l.Points, false)
		f.polyline(layerCheckIn, false, l.Points)
	}
	f.polyline(layerCheckCut, true, p.CutLine)
	f.polyline(layerCheckSeam, true, p.Outline)
	for _, n := range p.Notches {
		f.mark(layerNotch, p.NotchOnCut(n))
	}
	f.grain(p)
	for _, h := range p.Holes {
		f.mark(layerHole, h.At)
	}
	f.pieceText(name, p, o)
	f.pair(0, "ENDBLK")
	f.pair(8, layerCut)
}

// points marks each point of a line as a corner or as a point of a curve.
func (f *file) points(p paper.Piece, line []r2.Vec, closed bool) {
	for i, v := range line {
		layer := layerTurn
		if closed && p.OnCurve(line, i) {
			layer = layerCurve
		}
		f.mark(layer, v)
	}
}

// grain writes the grain line.
func (f *file) grain(p paper.Piece) {
	f.pair(0, "LINE")
	f.pair(8, layerGrain)
	f.point(f.at(p.GrainLine[0]))
	f.end(f.at(p.GrainLine[1]))
}

// insert puts a block on the drawing.
func (f *file) insert(name string) {
	f.pair(0, "INSERT")
	f.pair(8, layerCut)
	f.pair(2, name)
	f.point(r2.Vec{})
}
