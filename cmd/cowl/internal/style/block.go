package style

import (
	"slices"
	"strings"

	"cowl/materials/scalar"
	"cowl/mesh/draft"

	"github.com/goccy/go-yaml/ast"
	"gonum.org/v1/gonum/spatial/r2"
)

// block reads a block of the user's own: a file, or a list of named points, X
// from CF to the side, Y up. Only "armhole" may come more than once.
func (r *source) block(s *Style, e entry) {
	if isMapping(e.value) {
		r.blockFile(s, e)
		return
	}
	list, ok := e.value.(*ast.SequenceNode)
	if !ok {
		r.fail(e.value, "block is %s, want {file: front.dxf, unit: mm} or a list of points: - {name: neck, x_cm: 6.7, "+
			"y_cm: 0}", scalar.Shown(e.value))
		return
	}
	s.Points = map[string][]r2.Vec{}
	s.from["block"] = r.origin(e.at)
	for _, n := range list.Values {
		if name, at, ok := r.point("block", draft.PointNames(), n); ok {
			s.from["block "+name] = r.origin(n)
			s.Points[name] = append(s.Points[name], at)
		}
	}
}

// point reads one point of a block or a piece, which has one of the names.
func (r *source) point(what string, names []string, n ast.Node) (name string, v r2.Vec, ok bool) {
	var at [2]*float64
	for _, e := range r.mapping(n, "point") {
		axis, unit, _ := strings.Cut(e.key, "_")
		_, isLength := metres[unit]
		switch {
		case e.key == "name":
			name, _ = r.word(e)
		case (axis == "x" || axis == "y") && isLength && unit != "m":
			if v, ok := r.number(e); ok {
				v = toMetres(v, unit)
				at[axis[0]-'x'] = &v
			}
		default:
			r.fail(e.at, "%s: unknown key %.120q, want name, x_cm, y_cm (or _mm, _in)", what, e.key)
			return name, v, false
		}
	}
	switch {
	case !slices.Contains(names, name):
		r.fail(n, "%s: point %.120q, want one of %s", what, name, strings.Join(names, ", "))
	case at[0] == nil || at[1] == nil:
		r.fail(n, "%s: point %s lacks x or y, want both: x_cm: 6.7, y_cm: 0", what, name)
	default:
		return name, r2.Vec{X: *at[0], Y: *at[1]}, true
	}
	return name, v, false
}
