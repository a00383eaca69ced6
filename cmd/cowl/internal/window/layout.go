//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
)

// places is how the window is divided, in units.
type places struct {
	left, right, status, bar panel.Rect
	centre                   panel.Rect   // panes and flat piece
	frames                   []panel.Rect // one a pane, with what is written on it
	panes                    []panel.Rect // one a pane, what is seen of form and cloth
	flat                     panel.Rect   // empty where it is not shown
}

// Heights of the rows above and below the view, units.
const (
	barTall    = 46
	statusTall = 30
)

// layout divides the window for the number of panes there are.
func (a *App) layout() places {
	r := panel.Rect{W: float64(a.wide) / a.scale, H: float64(a.tall) / a.scale}
	var l places
	if !a.display.full {
		a.beside(&r, &l)
	}
	l.centre = r
	if a.flat {
		if r.W >= 560 {
			l.flat = r.Right(r.W * 0.42)
		} else {
			l.flat = r.Bottom(r.H * 0.45)
		}
	}
	l.frames = grid(r, len(a.panes))
	for _, f := range l.frames {
		if len(l.frames) > 1 {
			f.Top(paneHead)
			f.Bottom(paneFoot)
		}
		l.panes = append(l.panes, f)
	}
	return l
}

// beside takes the panels and rows off r; a small window has no panels.
func (a *App) beside(r *panel.Rect, l *places) {
	l.status = r.Bottom(statusTall)
	whole, s := r.W, a.set.Sides
	strip := func(take func(float64) panel.Rect, side Side, least float64) (out panel.Rect) {
		switch {
		case whole < least:
		case side.Away:
			take(stripWide)
		default:
			out = take(side.wide(whole))
		}
		return out
	}
	l.left = strip(r.Left, s.Left, leastForLeft)
	l.right = strip(r.Right, s.Right, leastForRight)
	bar := float64(barTall)
	if r.W < barWhole {
		bar = 2*barTall - 8
	}
	l.bar = r.Top(bar)
}

// What is written above and below each of several panes, units.
const (
	paneHead = 48
	paneFoot = 30
)

// bodice is about how wide a dressed form is for its height.
const bodice = 0.75

// grid divides r into n panes in rows, so that forms in them are as large as can
// be.
func grid(r panel.Rect, n int) []panel.Rect {
	const gap = 1
	best, size := 1, 0.0
	for cols := 1; cols <= n; cols++ {
		rows := (n + cols - 1) / cols
		if s := min(r.W/float64(cols)/bodice, r.H/float64(rows)); s > size+1e-9 {
			best, size = cols, s
		}
	}
	rows := (n + best - 1) / best
	tall := (r.H - gap*float64(rows-1)) / float64(rows)
	var out []panel.Rect
	for k := 0; k < n; k += best {
		row := r.Top(tall)
		r.Top(gap)
		out = append(out, row.Columns(min(best, n-k), gap)...)
	}
	return out
}

// barWhole is the width from which the tool bar fits into one row, units.
const barWhole = 620

// bound returns the area round all panes.
func bound(rs []panel.Rect) panel.Rect {
	r := rs[0]
	for _, o := range rs[1:] {
		x, y := min(r.X, o.X), min(r.Y, o.Y)
		r = panel.Rect{X: x, Y: y, W: max(r.X+r.W, o.X+o.W) - x, H: max(r.Y+r.H, o.Y+o.H) - y}
	}
	return r
}
