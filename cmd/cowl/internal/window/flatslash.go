//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// slashReach is how near to a seam a slash must begin, units.
const slashReach = 12

// leastSlash is the shortest slash that is meant, m: less is a slip of the hand.
const leastSlash = 0.005

// drawOn lets the mouse draw on the flat piece while the stand is open.
func (a *App) drawOn(c flatChart, use panel.Use) {
	if a.tab != tabStand || a.draws != drawSlashes {
		a.slashing = nil
	}
	if a.tab != tabStand || a.draws != drawTrims {
		a.trimming = nil
	}
	switch {
	case a.tab != tabStand:
	case a.draws == drawTrims:
		a.drawTrim(c, use)
	default:
		a.drawSlash(c, use)
	}
}

// drawSlash draws a slash: it begins on the waist or the armhole and runs square
// into the piece as far as the mouse.
func (a *App) drawSlash(c flatChart, use panel.Use) {
	q := c.back(a.ui.In.X, a.ui.In.Y)
	q.X = math.Abs(q.X)
	switch s, ok := a.nearSeam(q, slashReach/c.per); {
	case use.Struck && ok:
		a.slashing = &s
	case a.slashing == nil && use.Over && ok:
		a.slashLine(c, s)
	}
	s := a.slashing
	if s == nil {
		return
	}
	step := a.units.Step()
	s.long = min(max(math.Round(r2.Dot(s.into, r2.Sub(q, s.from))/step)*step, 0), a.pane().limits(s.seam.name).Hi)
	a.slashLine(c, *s)
	if a.ui.In.Freed[panel.LeftButton] {
		a.slashing = nil
		a.slash(*s)
	}
}

// slash makes the slash that was drawn.
func (a *App) slash(s slashing) {
	if s.long < leastSlash {
		return
	}
	a.change("the "+s.seam.lower(), "", func(st *style.Style) error {
		long, at := s.seam.slash(&st.Stand)
		*long, *at = s.long, s.at
		return nil
	})
}

// nearSeam returns the slash of no length that begins at the place of a seam
// nearest to q, a place of the left half; false where none lies within reach m.
func (a *App) nearSeam(q r2.Vec, reach float64) (best slashing, ok bool) {
	for _, k := range seams {
		line := k.line(a.pane().cowl)
		whole, gone := polyline.Length(line), 0.0
		for i := 1; i < len(line); i++ {
			d := r2.Sub(line[i], line[i-1])
			l := r2.Norm(d)
			if l == 0 {
				continue
			}
			d = r2.Scale(1/l, d)
			s := min(max(r2.Dot(d, r2.Sub(q, line[i-1])), 0), l)
			p := r2.Add(line[i-1], r2.Scale(s, d))
			if far := r2.Norm(r2.Sub(q, p)); far < reach {
				// Lines of the left half run clockwise: the piece lies on their right.
				reach, ok = far, true
				best = slashing{seam: k, at: math.Round((gone+s)/whole*100) / 100, from: p, into: r2.Vec{X: d.Y, Y: -d.X}}
			}
			gone += l
		}
	}
	return best, ok
}

// slashLine draws a slash on both halves, and its length.
func (a *App) slashLine(c flatChart, s slashing) {
	u, to := a.ui, r2.Add(s.from, r2.Scale(s.long, s.into))
	for _, side := range [2]float64{1, -1} {
		from, end := c.at(r2.Vec{X: side * s.from.X, Y: s.from.Y}), c.at(r2.Vec{X: side * to.X, Y: to.Y})
		u.Stroke([]panel.Point{from, end}, 2.4, u.Theme.Accent)
		u.Disc(from, 4, u.Theme.Accent)
	}
	if s.long > 0 {
		at := c.at(to)
		u.Words(a.units.Length(s.long), at.X+8, at.Y-6, 0, panel.Small, u.Theme.Ink)
	}
}
