//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// trimStep is how far apart the points of a drawn line are kept, m.
const trimStep = 0.006

// drawTrim draws a line along which surplus is cut off.
func (a *App) drawTrim(c flatChart, use panel.Use) {
	q := c.back(a.ui.In.X, a.ui.In.Y)
	if use.Struck {
		a.trimming = []r2.Vec{q}
	}
	if a.trimming == nil {
		return
	}
	end := a.ui.In.Freed[panel.LeftButton]
	if last := a.trimming[len(a.trimming)-1]; r2.Norm(r2.Sub(q, last)) >= trimStep || end && q != last {
		a.trimming = append(a.trimming, q)
	}
	for _, side := range [2]float64{1, -1} {
		var line []panel.Point
		for _, v := range a.trimming {
			line = append(line, c.at(r2.Vec{X: side * v.X, Y: v.Y}))
		}
		a.ui.Stroke(line, 2, a.ui.Theme.Accent)
	}
	if end {
		line := onLeft(a.trimming)
		a.trimming = nil
		if len(line) > 1 {
			a.change("a trim", "", func(s *style.Style) error { s.Trims = append(s.Trims, line); return nil })
		}
	}
}

// onLeft brings a line to the wearer's left half, where it was drawn or not.
func onLeft(line []r2.Vec) draft.TrimLine {
	side := 0.0
	for _, v := range line {
		side += v.X
	}
	out := make(draft.TrimLine, len(line))
	for i, v := range line {
		out[i] = r2.Vec{X: math.Copysign(1, side) * v.X, Y: v.Y}
	}
	return out
}
