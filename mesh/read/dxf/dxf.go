// Package dxf reads flat pieces from a DXF text file layered as ASTM D6673:
// cut line on layer 1, seam line on 14, lines inside on 8, grain line on 7,
// notches on 4, drill holes on 13. Each block is a piece; a file without
// blocks is one piece. Start at Read.
package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"sort"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Read returns the pieces of a file, in its order. said is the unit the user
// gives, 0 if the file states its own. A file that is too large, no DXF text,
// without a closed outline, without a unit or at another scale than 1:1 is an
// error.
func Read(r io.Reader, said outline.Unit) ([]paper.Piece, error) {
	data, err := outline.Bytes(r)
	if err != nil {
		return nil, fmt.Errorf("dxf: %w", err)
	}
	if bytes.IndexByte(data, 0) >= 0 {
		return nil, errors.New("dxf: binary file, want DXF as text (ASCII)")
	}
	f := &file{drawings: map[string]*drawing{}}
	if err := f.read(data); err != nil {
		return nil, fmt.Errorf("dxf: %w", err)
	}
	unit, err := outline.Agree(f.unit, said)
	if err != nil {
		return nil, fmt.Errorf("dxf: %w", err)
	}
	pieces, err := f.pieces(unit)
	if err != nil {
		return nil, fmt.Errorf("dxf: %w", err)
	}
	return pieces, nil
}

// drawing is what a block, or the file outside all blocks, holds, in the
// file's own unit.
type drawing struct {
	name   string
	lines  map[string][]outline.Chain // by layer
	points map[string][]r2.Vec        // by layer
}

// file is a DXF file while it is read.
type file struct {
	drawings map[string]*drawing
	order    []string
	unit     outline.Unit // 0: not stated
	count    int          // points read
}

// pieces returns the drawings that have an outline.
func (f *file) pieces(unit outline.Unit) ([]paper.Piece, error) {
	var out []paper.Piece
	for _, name := range f.order {
		d := f.drawings[name]
		if len(d.lines[cutLayer]) == 0 && len(d.lines[seamLayer]) == 0 {
			continue
		}
		p, err := d.piece(float64(unit))
		if err != nil {
			return nil, fmt.Errorf("piece %q: %w", d.name, err)
		}
		out = append(out, p)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no closed line on layer 1 (boundary) or 14 (seam); layers with lines: %s", f.layers())
	}
	return out, nil
}

// layers names the layers that hold lines, for a message.
func (f *file) layers() string {
	var names []string
	for _, d := range f.drawings {
		for l := range d.lines {
			if !slices.Contains(names, l) {
				names = append(names, l)
			}
		}
	}
	sort.Strings(names)
	if len(names) > 10 {
		names = append(names[:10], "…")
	}
	if len(names) == 0 {
		return "none"
	}
	return fmt.Sprintf("%.100q", strings.Join(names, ", "))
}

// Layers by the numbers of ASTM D6673-10.
const (
	cutLayer   = "1"
	notchLayer = "4"
	grainLayer = "7"
	innerLayer = "8"
	holeLayer  = "13"
	seamLayer  = "14"
)

// piece makes a piece of a drawing; scale is metres to its unit.
func (d *drawing) piece(scale float64) (paper.Piece, error) {
	found := outline.Found{Name: d.name, Notches: scaled(d.points[notchLayer], scale),
		Holes: scaled(d.points[holeLayer], scale)}
	var err error
	var loose []outline.Chain
	seam, cut := chains(d.lines[seamLayer], scale), chains(d.lines[cutLayer], scale)
	switch {
	case len(cut) == 0:
		found.Outline, loose, err = outline.Ring(seam)
	default:
		var ring []r2.Vec
		if ring, _, err = outline.Ring(cut); err != nil {
			break
		}
		found.Outline = ring
		inner, rest, open := outline.Ring(seam)
		if loose = seam; open == nil { // seam lines that do not close are lines inside
			found.Outline, found.Cut, loose = inner, ring, rest
		}
	}
	if err != nil {
		return paper.Piece{}, err
	}
	for _, c := range append(chains(d.lines[innerLayer], scale), loose...) {
		if len(c.Points) < 2 {
			continue
		}
		if c.Closed {
			c.Points = append(c.Points, c.Points[0])
		}
		found.Lines = append(found.Lines, paper.Line{Name: "line inside", Kind: paper.Guide, Points: c.Points})
	}
	for _, c := range chains(d.lines[grainLayer], scale) {
		if n := len(c.Points); n > 1 && found.Grain == nil {
			found.Grain = &[2]r2.Vec{c.Points[0], c.Points[n-1]}
		}
	}
	return found.Piece()
}

func scaled(points []r2.Vec, scale float64) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, v := range points {
		out[i] = r2.Scale(scale, v)
	}
	return out
}

func chains(in []outline.Chain, scale float64) []outline.Chain {
	out := make([]outline.Chain, len(in))
	for i, c := range in {
		out[i] = outline.Chain{Points: scaled(c.Points, scale), Closed: c.Closed}
	}
	return out
}
