//go:build cgo

package window

import (
	"math"
	"strconv"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
)

// section draws the cut through the centre front as it is now.
func (a *App) section(r panel.Rect, p *Pane) {
	u := a.ui
	head := r.Top(34)
	u.Words(p.says("Section on the centre front"), head.X, head.Y+24, 0, panel.Heading, u.Theme.Ink)
	axis := r.Top(16)
	u.Words("height over the waist, "+string(a.units), axis.X, axis.Y+12, 0, panel.Small, u.Theme.Soft)
	if !p.hasCloth() || p.dummy == nil {
		return
	}
	r.Top(2)
	field := r
	u.Push(field)
	defer u.Pop()
	c := a.fitChart(field, p)
	a.grid5(field, c)
	if !p.view().Job.Free {
		a.formCut(field, c, p)
	}
	a.otherSections(c, p)
	cut := p.cutNow()
	u.Stroke(c.line(cut.facing), 1.4, u.Theme.Soft)
	u.Stroke(c.line(cut.front), 2.2, u.Theme.Ink)
	a.sectionFolds(c, p)
	a.sectionHand(c, p)
}

// otherSections draws those of the panes beside p, faintly, each with its number where
// the edge is.
func (a *App) otherSections(c chart, p *Pane) {
	u := a.ui
	for i, o := range a.panes {
		if o == p || !o.hasCloth() {
			continue
		}
		ink := panel.Faded(u.Theme.Accent, 0.55)
		front := c.line(o.cutNow().front)
		u.Stroke(front, 1.2, ink)
		if len(front) > 0 {
			q := front[0] // the edge
			u.Words(strconv.Itoa(i+1), q.X+5, q.Y-4, 0, panel.Small, u.Theme.Accent)
		}
	}
}

// The heights shown, m: from a little below the waist to above the neck.
const (
	sectionLow  = -0.03
	sectionHigh = 0.43
)

// fitChart shows the front of the form and what hangs before it; the ground it
// stands on does not move while the cloth does.
func (a *App) fitChart(r panel.Rect, p *Pane) chart {
	per := r.H / (sectionHigh - sectionLow)
	deep := 0.0
	for _, q := range p.dummy.front {
		deep = max(deep, q.X)
	}
	// The foremost point of the form lies at two thirds of the width.
	return chart{x0: r.X + 0.62*r.W + per*deep, y0: r.Y + per*sectionHigh, per: per}
}

// grid5 draws lines every 5 cm, or every 2 in.
func (a *App) grid5(r panel.Rect, c chart) {
	u, step := a.ui, 0.05
	if a.units == Inches {
		step = 2 * inch
	}
	for i := math.Ceil(sectionLow / step); i*step <= sectionHigh; i++ {
		y := c.at(r2.Vec{Y: i * step}).Y
		u.Fill(panel.Rect{X: r.X, Y: y, W: r.W, H: 1 / a.scale}, u.Theme.Sunken)
		if int(i)%2 == 0 && y > r.Y+11 { // else its head would be cut off
			u.Words(strconv.Itoa(int(math.Round(i*step*a.units.PerMetre()))), r.X, y-3, 0, panel.Small, u.Theme.Soft)
		}
	}
}

// formCut fills the form.
func (a *App) formCut(r panel.Rect, c chart, p *Pane) {
	u := a.ui
	n := len(p.dummy.front)
	at, tris := make([]panel.Point, 0, 2*n), make([][3]int32, 0, 2*n)
	for i, q := range p.dummy.front {
		y := c.at(q)
		at = append(at, y, panel.Point{X: r.X + r.W + 2, Y: y.Y})
		if k := int32(2 * i); i > 0 {
			tris = append(tris, [3]int32{k - 2, k - 1, k}, [3]int32{k, k - 1, k + 1})
		}
	}
	u.Triangles(at, tris, panel.Faded(u.Theme.Soft, 0.22))
	line := make([]panel.Point, 0, n)
	for _, q := range p.dummy.front {
		line = append(line, c.at(q))
	}
	u.Stroke(line, 1, u.Theme.Soft)
}

// sectionFolds marks the folds that were read last.
func (a *App) sectionFolds(c chart, p *Pane) {
	if !p.figures() {
		return
	}
	n := 0
	for _, f := range p.view().Reading.Folds {
		at := c.at(f.At)
		if f.Zone != fold.AboveBust {
			a.ui.Disc(at, 4, a.ui.Theme.Accent)
			a.ui.Disc(at, 2.5, a.ui.Theme.Ground)
			continue
		}
		n++
		a.badge(at, n)
		a.ui.Words(a.units.Small(f.Depth), at.X-14, at.Y+4, 1, panel.Small, a.ui.Theme.Ink)
	}
}

// foldSigns returns where numbers and depths of counted folds stand in the section.
func (a *App) foldSigns(c chart, p *Pane) (out []panel.Rect) {
	if !p.figures() {
		return nil
	}
	for _, f := range p.view().Reading.Folds {
		if f.Zone == fold.AboveBust {
			at := c.at(f.At)
			wide := a.ui.Width(a.units.Small(f.Depth), panel.Small)
			out = append(out, panel.Rect{X: at.X - 14 - wide, Y: at.Y - 10, W: wide + 24, H: 20})
		}
	}
	return out
}
