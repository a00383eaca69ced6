//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"

	"gonum.org/v1/gonum/spatial/r2"
)

// switchTrace shows the lines of a trace, with the flat piece to pick its place on, or
// takes them away.
func (a *App) switchTrace() {
	a.trace.on = !a.trace.on
	if !a.trace.on {
		return
	}
	a.flat = true
	if p := &a.pane().cowl; a.trace.at == (r2.Vec{}) && len(p.Outline) > 0 {
		a.trace.at = r2.Vec{X: p.HalfEdge / 3, Y: p.FoldY - 0.12}
	}
}

// pickTrace lets the mouse pick the place on the flat piece, and draws the lines there.
func (a *App) pickTrace(c flatChart, p *Pane, use panel.Use) {
	if !a.trace.on {
		return
	}
	u, s := a.ui, &p.view().Sheet
	if q := c.back(u.In.X, u.In.Y); use.Held && a.tab != tabStand && a.tool != toolTape {
		if _, on := foot(s, q, len(s.Tris)); on {
			a.trace.at = q
		}
	}
	p.traced.update(s, a.trace.at, p.view().Job.Cowl.Grain)
	for i, runs := range p.traced.lines {
		for _, run := range runs {
			line := make([]panel.Point, len(run))
			for k, f := range run {
				line[k] = c.at(f.flat(s))
			}
			u.Stroke(line, 2.4, traceLines[i].ink)
		}
	}
	a.cross(c.at(a.trace.at))
}

// traceLegend names the colours of the lines.
func (a *App) traceLegend(r panel.Rect) {
	if !a.trace.on {
		return
	}
	u, x := a.ui, r.X+12
	for _, l := range traceLines {
		u.Fill(panel.Rect{X: x, Y: r.Y + 12, W: 18, H: 4}, l.ink)
		u.Words(l.name, x+24, r.Y+19, 0, panel.Small, u.Theme.Ink)
		x += 34 + u.Width(l.name, panel.Small)
	}
}
