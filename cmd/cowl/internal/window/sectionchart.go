//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cutLine is a piece of the section through the centre front: (Z, Y) in m.
type cutLine struct {
	from, to r2.Vec
	facing   bool
}

// cutCF cuts the sheet along the flat centre front. Pieces come triangle by
// triangle.
func cutCF(s *mesh.Sheet) []cutLine {
	var out []cutLine
	for k, t := range s.Tris {
		var ends [2]r2.Vec
		n := 0
		for i := range 3 {
			a, b := t[i], t[(i+1)%3]
			xa, xb := s.Flat[a].X, s.Flat[b].X
			if (xa < 0) == (xb < 0) {
				continue
			}
			p := r3.Add(s.Pos[a], r3.Scale(xa/(xa-xb), r3.Sub(s.Pos[b], s.Pos[a])))
			ends[n] = r2.Vec{X: p.Z, Y: p.Y}
			n++
		}
		if n == 2 {
			out = append(out, cutLine{ends[0], ends[1], s.Facing[k]})
		}
	}
	return out
}

// chart takes (Z, Y) in m to units of the screen, forward to the left as from
// the wearer's left.
type chart struct {
	x0, y0, per float64
}

func (c chart) at(p r2.Vec) panel.Point { return panel.Point{X: c.x0 - c.per*p.X, Y: c.y0 - c.per*p.Y} }

// moved returns p moved as the mouse was on the screen.
func (c chart) moved(p r3.Vec, dx, dy float64) r3.Vec {
	return r3.Add(p, r3.Vec{Y: -dy / c.per, Z: -dx / c.per})
}
