//go:build cgo

package window

import (
	"fmt"
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/panel"

	"gonum.org/v1/gonum/spatial/r2"
)

// flatPiece draws the flat piece of the active pane, in the colours of the map.
func (a *App) flatPiece(r panel.Rect) {
	u, p := a.ui, a.pane()
	u.Fill(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 1 / a.scale}, u.Theme.Rule)
	u.Fill(r.Left(1/a.scale), u.Theme.Rule)
	u.Push(r)
	defer u.Pop()
	help := "The flat piece from its right side. Point at a place to see where it hangs."
	if a.trace.on {
		help = "Click or drag to pick the place through which warp, weft and bias are followed onto the drape."
	}
	if a.tab == tabStand {
		help = drawHelps[a.draws]
	}
	use := u.Area("flatpiece", r, help)
	u.Words("Flat piece", r.X+16, r.Y+24, 0, panel.Heading, u.Theme.Ink)
	if len(p.cowl.Outline) == 0 {
		return
	}
	c := fitFlat(panel.Rect{X: r.X + 24, Y: r.Y + 44, W: r.W - 48, H: r.H - 92}, p.cowl.Outline)
	a.flatCloth(c, p)
	a.flatLines(c, p)
	a.pickTrace(c, p, use)
	a.tapeOnFlat(c, p, use)
	a.drawOn(c, use)
	if use.Over {
		q := c.back(u.In.X, u.In.Y)
		if at, ok := inSpace(&p.view().Sheet, q); ok {
			a.mark = mark{a.active, q, at, true}
		}
	}
	if a.mark.on && a.mark.pane == a.active {
		a.cross(c.at(a.mark.flat))
		lines := u.Wrap(upper(a.placeWords(a.mark.flat, p)), r.W-32, panel.Small)
		for i, line := range lines {
			u.Words(line, r.X+16, r.Y+r.H-16-16*float64(len(lines)-1-i), 0, panel.Small, u.Theme.Ink)
		}
	}
}

// flatCloth fills the piece, a map in its colours.
func (a *App) flatCloth(c flatChart, p *Pane) {
	s := &p.view().Sheet
	at := make([]panel.Point, len(s.Flat))
	for i, q := range s.Flat {
		at[i] = c.at(q)
	}
	m := maps[a.show]
	if m.value == nil {
		a.ui.Triangles(at, s.Tris, color.RGBA{0xE6, 0xDC, 0xCA, 0xFF})
		return
	}
	inks := make([]color.RGBA, len(at))
	values := m.value(p.view())
	if len(values) != len(at) {
		return
	}
	for i, v := range values {
		inks[i] = m.ramp.At((v - m.low) / (m.high - m.low))
	}
	a.ui.Shaded(at, s.Tris, inks)
}

// flatLines draws outline, edge, centre front, open dart and grain line.
func (a *App) flatLines(c flatChart, p *Pane) {
	u, q := a.ui, p.cowl
	line := func(wide float64, ink color.RGBA, pts ...r2.Vec) {
		var out []panel.Point
		for _, v := range pts {
			out = append(out, c.at(v))
		}
		u.Stroke(out, wide, ink)
	}
	line(1.6, u.Theme.Ink, append(append([]r2.Vec(nil), q.Outline...), q.Outline[0])...)
	a.dashes(c.at(r2.Vec{X: -q.HalfEdge, Y: q.FoldY}), c.at(r2.Vec{X: q.HalfEdge, Y: q.FoldY}), u.Theme.Accent)
	waist := q.Waist[len(q.Waist)-1]
	line(0.8, u.Theme.Soft, waist, r2.Vec{Y: q.FoldY})
	both := func(wide float64, ink color.RGBA, left []r2.Vec) {
		var right []r2.Vec
		for _, v := range left {
			right = append(right, r2.Vec{X: -v.X, Y: v.Y})
		}
		line(wide, ink, left...)
		line(wide, ink, right...)
	}
	if q.WaistLine != nil {
		both(0.8, u.Theme.Soft, q.WaistLine)
	}
	if q.DartLeft != nil {
		both(1, u.Theme.Ink, q.DartLeft)
	}
	for _, s := range q.Releases {
		line(4.4, u.Theme.OnInk, s.From, s.To) // seen on every map
		line(2.4, u.Theme.Accent, s.From, s.To)
	}
	if q.Weight > 0 {
		at := c.at(q.FacingEdge[len(q.FacingEdge)-1])
		u.Disc(at, 5, u.Theme.Accent)
		u.Words(fmt.Sprintf("%.0f g", q.Weight*1000), at.X+9, at.Y-7, 0, panel.Small, u.Theme.Accent)
	}
	edge := c.at(r2.Vec{X: q.HalfEdge, Y: q.FoldY})
	u.Words("edge", edge.X+12, edge.Y+4, 0, panel.Small, u.Theme.Accent)
	foot := c.at(waist)
	u.Words(p.says("centre front"), foot.X, foot.Y+17, 0.5, panel.Small, u.Theme.Soft)
	a.grainArrow(c, p)
}

// grainArrow shows the warp with an arrow at both ends.
func (a *App) grainArrow(c flatChart, p *Pane) {
	u, q := a.ui, p.cowl
	waist := q.Waist[len(q.Waist)-1]
	mid := r2.Vec{X: q.HalfEdge * 0.34, Y: waist.Y + 0.45*(q.FoldY-waist.Y)}
	dir := r2.Vec{X: math.Sin(q.Grain), Y: math.Cos(q.Grain)}
	const half = 0.055 // m
	from, to := c.at(r2.Sub(mid, r2.Scale(half, dir))), c.at(r2.Add(mid, r2.Scale(half, dir)))
	u.Stroke([]panel.Point{from, to}, 1.4, u.Theme.Ink)
	for _, end := range [][2]panel.Point{{from, to}, {to, from}} {
		dx, dy := end[1].X-end[0].X, end[1].Y-end[0].Y
		l := math.Hypot(dx, dy)
		dx, dy = dx/l, dy/l
		tip := end[0]
		barb := func(s float64) panel.Point {
			return panel.Point{X: tip.X + 8*dx - s*3.5*dy, Y: tip.Y + 8*dy + s*3.5*dx}
		}
		u.Stroke([]panel.Point{barb(1), tip, barb(-1)}, 1.4, u.Theme.Ink)
	}
	u.Words("warp", to.X, to.Y-7, 0.5, panel.Small, u.Theme.Ink)
}

// drawMark puts the place under the mouse on the drape, where the flat piece is
// shown as well.
func (a *App) drawMark(l places) {
	if !a.mark.on || !a.flat || a.mark.pane >= len(l.panes) {
		return
	}
	p, r := a.panes[a.mark.pane], l.panes[a.mark.pane]
	at, ok := inSpace(&p.view().Sheet, a.mark.flat)
	if !ok {
		return
	}
	if q, ok := a.onView(r, at); ok && r.Has(q.X, q.Y) {
		a.cross(q)
	}
}
