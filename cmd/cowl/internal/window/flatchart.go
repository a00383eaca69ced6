//go:build cgo

package window

import (
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/panel"

	"gonum.org/v1/gonum/spatial/r2"
)

// flatChart takes the flat piece in m to units of the screen. The piece is seen
// from its right side: the wearer's left is on the right.
type flatChart struct {
	x0, y0, per float64
}

func (c flatChart) at(q r2.Vec) panel.Point {
	return panel.Point{X: c.x0 + c.per*q.X, Y: c.y0 - c.per*q.Y}
}

func (c flatChart) back(x, y float64) r2.Vec {
	return r2.Vec{X: (x - c.x0) / c.per, Y: (c.y0 - y) / c.per}
}

// fitFlat fits the outline into r.
func fitFlat(r panel.Rect, outline []r2.Vec) flatChart {
	lo, hi := r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range outline {
		lo = r2.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi = r2.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
	}
	per := min(r.W/max(hi.X-lo.X, 1e-6), r.H/max(hi.Y-lo.Y, 1e-6))
	return flatChart{r.X + r.W/2 - per*(lo.X+hi.X)/2, r.Y + r.H/2 + per*(lo.Y+hi.Y)/2, per}
}

// dashes draws a dashed line.
func (a *App) dashes(from, to panel.Point, ink color.RGBA) {
	l := math.Hypot(to.X-from.X, to.Y-from.Y)
	at := func(s float64) panel.Point {
		return panel.Point{X: from.X + (to.X-from.X)*s/l, Y: from.Y + (to.Y-from.Y)*s/l}
	}
	for s := 0.0; s < l; s += 9 {
		a.ui.Stroke([]panel.Point{at(s), at(min(s+5, l))}, 1.6, ink)
	}
}

// cross marks a place.
func (a *App) cross(p panel.Point) {
	u := a.ui
	u.Disc(p, 6.5, u.Theme.OnInk)
	u.Disc(p, 5, u.Theme.Accent)
	u.Disc(p, 2, u.Theme.OnInk)
}
