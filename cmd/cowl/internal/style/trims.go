package style

import (
	"strings"

	"cowl/materials/scalar"
	"cowl/mesh/draft"

	"github.com/goccy/go-yaml/ast"
	"gonum.org/v1/gonum/spatial/r2"
)

// A style has as many trims, and a trim as many points, as a hand would draw.
const (
	mostTrims      = 20
	mostTrimPoints = 200
)

// trims reads the lines along which surplus is cut off: a list of
// {line_mm: [[x, y], …]}, X from CF to the wearer's left, Y up.
func (r *source) trims(s *Style, e entry) {
	if e.value.Type() == ast.NullType {
		return
	}
	list, ok := e.value.(*ast.SequenceNode)
	if !ok || len(list.Values) > mostTrims {
		r.fail(e.value, "trims is %s, want a list of up to %d lines: - line_mm: [[262, -90], [230, -150], [262, -210]]",
			scalar.Shown(e.value), mostTrims)
		return
	}
	for k, n := range list.Values {
		s.from[draft.TrimField(k)] = r.origin(n)
		for _, v := range r.mapping(n, "a trim") {
			unit, isLine := strings.CutPrefix(v.key, "line_")
			if _, known := metres[unit]; !isLine || !known || unit == "m" {
				r.fail(v.at, "trims: unknown key %q, want line_mm, line_cm or line_in", v.key)
				continue
			}
			if line := r.line(v, unit); line != nil {
				s.Trims = append(s.Trims, line)
			}
		}
	}
}

// line reads the points of a trim; nil if they are none, which is reported.
func (r *source) line(e entry, unit string) draft.TrimLine {
	list, ok := e.value.(*ast.SequenceNode)
	if !ok || len(list.Values) < 2 || len(list.Values) > mostTrimPoints {
		r.fail(e.value, "trims: %s is %s, want 2 to %d points: [[262, -90], [230, -150]]", e.key, scalar.Shown(e.value),
			mostTrimPoints)
		return nil
	}
	var out draft.TrimLine
	for _, n := range list.Values {
		pair, ok := n.(*ast.SequenceNode)
		if !ok || len(pair.Values) != 2 {
			r.fail(n, "trims: point %s, want x and y: [262, -90]", scalar.Shown(n))
			return nil
		}
		x, okX := r.number(entry{"x", n, pair.Values[0]})
		y, okY := r.number(entry{"y", n, pair.Values[1]})
		if !okX || !okY {
			return nil
		}
		out = append(out, r2.Vec{X: toMetres(x, unit), Y: toMetres(y, unit)})
	}
	return out
}
