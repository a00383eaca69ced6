package style

import (
	"errors"
	"fmt"
	"slices"

	"cowl/materials/infile"
	"cowl/materials/scalar"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/read"

	"github.com/goccy/go-yaml/ast"
	"gonum.org/v1/gonum/spatial/r2"
)

// lineNames are the lines of a piece of the user's own, in the order they are
// written; "apex" is one point.
var lineNames = []string{"shoulder", "armhole", "side", "waist", "dart", "apex"}

// lineOf returns the line of that name; "apex" is none.
func lineOf(l *draft.Lines, name string) *[]r2.Vec {
	return map[string]*[]r2.Vec{"shoulder": &l.Shoulder, "armhole": &l.Armhole, "side": &l.Side, "waist": &l.Waist,
		"dart": &l.Dart}[name]
}

// piece reads a finished front of the user's own: a file, or the points of the
// lines of the wearer's left half, X from CF to the side, Y up.
func (r *source) piece(s *Style, e entry) {
	if isMapping(e.value) {
		if d, ok := r.drawing("piece", e); ok {
			if err := s.readPiece(d, r.origin(e.at)); err != nil {
				r.fail(e.value, "piece: %v", err)
			}
		}
		return
	}
	list, ok := e.value.(*ast.SequenceNode)
	if !ok {
		r.fail(e.value, "piece is %s, want {file: front.dxf, unit: mm} or a list of points: - {name: shoulder, x_cm: "+
			"21.6, y_cm: 38.3}", scalar.Shown(e.value))
		return
	}
	s.Lines = &draft.Lines{}
	s.from["piece"] = r.origin(e.at)
	for _, n := range list.Values {
		name, at, ok := r.point("piece", lineNames, n)
		switch line := lineOf(s.Lines, name); {
		case !ok:
		case line == nil:
			s.Lines.Apex = at
		default:
			*line = append(*line, at)
		}
	}
}

// UsePieceFile takes the finished front of a DXF, SVG or CSV file, with its
// facing, grain and allowance.
func (s *Style) UsePieceFile(d Drawing) error {
	if err := s.readPiece(d, "--piece"); err != nil {
		return limit.Under("--piece", err)
	}
	return nil
}

// readPiece reads a front and notes where it came from.
func (s *Style) readPiece(d Drawing, from string) error {
	f, err := infile.Open(d.File, "a .dxf, .svg or .csv file")
	if err != nil {
		return err
	}
	defer f.Close()
	c, notes, err := read.Front(d.File, f, d.Unit, d.Name)
	if err != nil {
		return fmt.Errorf("%s: %w", d.File, err)
	}
	s.Lines = &c.Lines
	trim, worn := s.Cut.Trim, s.Cut.Worn
	if c.Trim >= 0 {
		trim = c.Trim
	}
	s.Cut = draft.DefaultCut()
	s.Cut.Worn = max(worn, c.Worn)
	s.Cut.Facing, s.Cut.Grain, s.Cut.Trim = c.Facing, c.Grain, trim
	for _, f := range fields {
		if f.group == "cut" && f.Name != "trim" && f.Name != "side" {
			delete(s.from, f.spoken())
		}
	}
	s.from["piece"] = from
	s.note("piece", d.File, notes)
	return nil
}

// isDrafted reports whether f is set by drafting alone, which a finished front
// has behind it.
func (f Field) isDrafted() bool {
	return f.group == "cut" && !slices.Contains([]string{"side", "facing", "grain", "trim", "closure", "strap"}, f.Name)
}

// fixed says which of the drafted fields were set all the same.
func (s *Style) fixed() error {
	var errs []error
	for _, f := range fields {
		if _, ok := s.from[f.spoken()]; ok && f.isDrafted() {
			errs = append(errs, limit.Errorf(f.spoken(),
				"%s is set, but the piece is a finished one (%s): leave it out, or draft the piece", f.spoken(), s.from["piece"]))
		}
	}
	return errors.Join(errs...)
}
