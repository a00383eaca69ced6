// Package csv writes the points of flat pieces as a table of comma-separated
// values, millimetres, one point a row. Start at Write.
package csv

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// head names the columns. line is one of seam, cut, inside, grain, notch,
// hole, text; name is that of the edge that begins at the point, or of the
// line, mark or words.
var head = []string{"piece", "line", "name", "point", "x_mm", "y_mm", "allowance_mm"}

// Write writes every point of the pieces. X runs to the wearer's left, Y up.
// No piece, a piece without an outline and a failing w are errors.
func Write(w io.Writer, pieces []paper.Piece) error {
	if len(pieces) == 0 {
		return errors.New("csv: no piece to write")
	}
	t := &table{w: csv.NewWriter(w)}
	t.row(head...)
	for _, p := range pieces {
		if len(p.Outline) < 3 || len(p.CutLine) < 3 {
			return fmt.Errorf("csv: piece %q has no outline: draft it first", p.Name)
		}
		t.piece(p)
	}
	t.w.Flush()
	if err := errors.Join(t.err, t.w.Error()); err != nil {
		return fmt.Errorf("csv: %w", err)
	}
	return nil
}

// table is a file while it is written.
type table struct {
	w   *csv.Writer
	err error
}

func (t *table) row(cells ...string) { t.err = errors.Join(t.err, t.w.Write(cells)) }

// piece writes the rows of a piece.
func (t *table) piece(p paper.Piece) {
	for i, v := range p.Outline {
		name, allowance := edgeAt(p, i)
		t.point(p.Name, "seam", name, i, v, millimetres(allowance))
	}
	t.line(p.Name, "cut", "", p.CutLine)
	for _, l := range p.Lines {
		t.line(p.Name, "inside", l.Name, l.Points)
	}
	t.line(p.Name, "grain", "", p.GrainLine[:])
	for _, n := range p.Notches {
		t.point(p.Name, "notch", n.Name, 0, n.At, "")
	}
	for _, h := range p.Holes {
		t.point(p.Name, "hole", h.Name, 0, h.At, "")
	}
	for _, s := range p.Texts {
		t.point(p.Name, "text", s.Said, 0, s.At, "")
	}
}

// edgeAt returns name and allowance of the edge that point i of the outline
// lies on; its last point belongs to the next edge.
func edgeAt(p paper.Piece, i int) (string, float64) {
	for _, e := range p.Edges {
		if i >= e.From && (i < e.To || e.To == 0) {
			return e.Name, e.Allowance
		}
	}
	return "", 0
}

// line writes the points of a line.
func (t *table) line(piece, kind, name string, line []r2.Vec) {
	for i, v := range line {
		t.point(piece, kind, name, i, v, "")
	}
}

func (t *table) point(piece, kind, name string, i int, v r2.Vec, allowance string) {
	t.row(piece, kind, name, strconv.Itoa(i+1), millimetres(v.X), millimetres(v.Y), allowance)
}

// millimetres formats a length to a micrometre.
func millimetres(v float64) string {
	s := strconv.FormatFloat(v*1000, 'f', 3, 64)
	if s == "-0.000" {
		return "0.000"
	}
	return s
}
