//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// centreCut is the section through the centre front as it is drawn: (Z, Y) in m.
type centreCut struct {
	serial        uint64 // of the moment it is of, 0: none
	front, facing []r2.Vec
}

// cutCentre cuts a sheet along the flat centre front, as for a picture that is kept.
func cutCentre(s *mesh.Sheet, foldY float64, serial uint64) centreCut {
	front, facing := fold.Centre(s, foldY)
	return centreCut{serial, stage.Curved(front), stage.Curved(facing)}
}

// cutNow is the section of a pane as it is seen. The lattice is cut while it moves; at
// rest polish puts that of the smooth surface in its place.
func (p *Pane) cutNow() centreCut {
	if f := p.view(); p.cut.serial != f.Serial {
		p.cut = cutCentre(&f.Sheet, f.Hung.FoldY, f.Serial)
	}
	return p.cut
}

// chart takes (Z, Y) in m to units of the screen, forward to the left as from
// the wearer's left.
type chart struct {
	x0, y0, per float64
}

func (c chart) at(p r2.Vec) panel.Point { return panel.Point{X: c.x0 - c.per*p.X, Y: c.y0 - c.per*p.Y} }

// line takes a line in m to the screen.
func (c chart) line(ps []r2.Vec) []panel.Point {
	out := make([]panel.Point, len(ps))
	for i, p := range ps {
		out[i] = c.at(p)
	}
	return out
}

// moved returns p moved as the mouse was on the screen.
func (c chart) moved(p r3.Vec, dx, dy float64) r3.Vec {
	return r3.Add(p, r3.Vec{Y: -dy / c.per, Z: -dx / c.per})
}
