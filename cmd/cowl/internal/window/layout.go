//go:build cgo

package window

import "cowl/cmd/cowl/internal/panel"

// places is how the window is divided, in units.
type places struct {
	left, right, status, bar panel.Rect
	centre                   panel.Rect   // panes and flat piece
	panes                    []panel.Rect // one a pane
	flat                     panel.Rect   // empty where it is not shown
}

// The widths of the sides; a small window gets smaller ones.
const (
	sideWide   = 304
	sideNarrow = 252
	barTall    = 46
	statusTall = 30
)

// layout divides the window for the number of panes there are.
func (a *App) layout() places {
	r := panel.Rect{W: float64(a.wide) / a.scale, H: float64(a.tall) / a.scale}
	var l places
	l.status = r.Bottom(statusTall)
	side := float64(sideWide)
	if r.W < 1100 {
		side = sideNarrow
	}
	if r.W >= 700 {
		l.left = r.Left(side)
	}
	if r.W >= 560 {
		l.right = r.Right(side)
	}
	bar := float64(barTall)
	if r.W < barWhole {
		bar = 2*barTall - 8
	}
	l.bar = r.Top(bar)
	l.centre = r
	if a.flat {
		if r.W >= 560 {
			l.flat = r.Right(r.W * 0.42)
		} else {
			l.flat = r.Bottom(r.H * 0.45)
		}
	}
	l.panes = grid(r, len(a.panes))
	return l
}

// grid divides r into n panes: side by side, or four in a square.
func grid(r panel.Rect, n int) []panel.Rect {
	const gap = 1
	switch {
	case n == 4:
		var out []panel.Rect
		rest := r
		top := rest.Top((r.H - gap) / 2)
		rest.Top(gap)
		for _, row := range []panel.Rect{top, rest} {
			out = append(out, row.Columns(2, gap)...)
		}
		return out
	case n == 3 && r.W < 1.2*r.H:
		var out []panel.Rect
		for k := range n {
			h := (r.H - gap*float64(n-1)) / float64(n)
			out = append(out, panel.Rect{X: r.X, Y: r.Y + float64(k)*(h+gap), W: r.W, H: h})
		}
		return out
	}
	return r.Columns(n, gap)
}
