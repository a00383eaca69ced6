package csv

import (
	"errors"
	"fmt"
	"io"

	"cowl/mesh/paper"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

const mostPieces = 100

// Read returns the pieces of a table as cowl writes it: columns piece, line,
// name, x and y, where line is seam, cut, inside, grain, notch or hole. Without
// a column line the points are one outline, in order. No outline, an open or
// crossing one and a size that no piece has are errors.
func Read(r io.Reader, said outline.Unit) ([]paper.Piece, error) {
	rows, err := table(r, said)
	if err != nil {
		return nil, fmt.Errorf("csv: %w", err)
	}
	var names []string
	of := map[string][]row{}
	for _, w := range rows {
		if _, ok := of[w.piece]; !ok {
			names = append(names, w.piece)
		}
		of[w.piece] = append(of[w.piece], w)
	}
	if len(names) == 0 {
		return nil, errors.New("csv: no points, want a point a line")
	}
	if len(names) > mostPieces {
		return nil, fmt.Errorf("csv: %d pieces, want at most %d", len(names), mostPieces)
	}
	var out []paper.Piece
	for _, n := range names {
		f, err := found(n, of[n])
		if err != nil {
			return nil, fmt.Errorf("csv: piece %.40q: %w", n, err)
		}
		p, err := f.Piece()
		if err != nil {
			return nil, fmt.Errorf("csv: piece %.40q: %w", n, err)
		}
		out = append(out, p)
	}
	return out, nil
}

// found sorts the rows of a piece.
func found(name string, rows []row) (outline.Found, error) {
	f := outline.Found{Name: name}
	if name == "" {
		f.Name = "Piece"
	}
	var grain []r2.Vec
	for _, w := range rows {
		switch w.line {
		case "", "seam":
			f.Outline = append(f.Outline, w.at)
		case "cut":
			f.Cut = append(f.Cut, w.at)
		case "inside":
			n := len(f.Lines)
			if n == 0 || f.Lines[n-1].Name != w.name {
				f.Lines = append(f.Lines, paper.Line{Name: w.name, Kind: paper.Guide})
				n++
			}
			f.Lines[n-1].Points = append(f.Lines[n-1].Points, w.at)
		case "grain":
			grain = append(grain, w.at)
		case "notch":
			f.Notches = append(f.Notches, w.at)
		case "hole":
			f.Holes = append(f.Holes, w.at)
		case "text":
		default:
			return f, fmt.Errorf("line %d: line %.20q, want seam, cut, inside, grain, notch or hole", w.number, w.line)
		}
	}
	if f.Outline == nil {
		f.Outline, f.Cut = f.Cut, nil
	}
	if len(grain) >= 2 {
		f.Grain = &[2]r2.Vec{grain[0], grain[1]}
	}
	return f, nil
}
