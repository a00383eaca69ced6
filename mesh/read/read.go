// Package read takes a block or a piece from a file drawn elsewhere: DXF
// layered as ASTM D6673, an SVG path at 1:1, or a CSV table of points. Start at
// Block and Pieces.
package read

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/read/csv"
	"cowl/mesh/read/dxf"
	"cowl/mesh/read/outline"
	"cowl/mesh/read/svg"

	"gonum.org/v1/gonum/spatial/r2"
)

// Pieces reads the pieces of a file; the end of its name says its format. unit
// is mm, cm, m or in, or "" if the file states its own.
func Pieces(name string, r io.Reader, unit string) ([]paper.Piece, error) {
	u, err := outline.ParseUnit(unit)
	if err != nil {
		return nil, err
	}
	switch ext := strings.ToLower(filepath.Ext(name)); ext {
	case ".dxf":
		return dxf.Read(r, u)
	case ".svg":
		return svg.Read(r, u)
	case ".csv":
		return csv.Read(r, u)
	default:
		return nil, fmt.Errorf("file ending %.20q, want .dxf, .svg or .csv", ext)
	}
}

// Block reads a one-dart front block from a file and returns its named points
// (m), as draft.FromPoints takes them. A CSV table names its points; in a DXF
// or SVG file they are told from the outline, and notes say what was left out
// or straightened. Of several pieces it takes the one called which. A file with
// more than one piece and none chosen, or whose outline is no such block, is an
// error.
func Block(name string, r io.Reader, unit, which string) (points map[string][]r2.Vec, notes []string, err error) {
	if strings.EqualFold(filepath.Ext(name), ".csv") {
		if which != "" {
			return nil, nil, fmt.Errorf("block name %.40q: a table names the points of one block, and no pieces: leave the "+
				"name out", which)
		}
		u, err := outline.ParseUnit(unit)
		if err != nil {
			return nil, nil, err
		}
		points, err = csv.Points(r, u)
		return points, nil, err
	}
	pieces, err := Pieces(name, r, unit)
	if err != nil {
		return nil, nil, err
	}
	p, err := choose(pieces, "block", which)
	if err != nil {
		return nil, nil, err
	}
	return nameCorners(p)
}
