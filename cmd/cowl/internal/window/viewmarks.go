//go:build cgo

package window

import (
	"fmt"
	"math"
	"strconv"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// foldMarks puts the numbers of the counted folds on the view.
func (a *App) foldMarks(p *Pane, r panel.Rect) {
	if !p.figures() || a.grip != nil {
		return
	}
	n := 0
	for _, f := range p.view().Reading.Folds {
		if f.Zone == fold.AboveBust {
			n++
			if at, ok := a.onView(r, r3.Vec{Y: f.At.Y, Z: f.At.X}); ok {
				a.badge(at, n)
			}
		}
	}
}

// onView returns where a place in space is seen in a pane; false behind the eye.
func (a *App) onView(r panel.Rect, p r3.Vec) (panel.Point, bool) {
	x, y, ahead := a.eye.View().Pixel(p, r.W, r.H)
	return panel.Point{X: r.X + x, Y: r.Y + y}, ahead > 0
}

// pinMarks shows one's own pins, those of the draft while a tool of the hand is in use,
// and what the hand holds.
func (a *App) pinMarks(p *Pane, r panel.Rect) {
	u := a.ui
	if a.tool != toolLook && p.live != nil {
		for _, q := range p.live.Pins() {
			if at, ok := a.onView(r, q.At); ok && !q.Own {
				u.Disc(at, 3, u.Theme.OnInk)
				u.Disc(at, 2.2, u.Theme.Ink)
			}
		}
	}
	for _, m := range p.hands.own {
		if at, ok := a.onView(r, m.at); ok {
			u.Disc(at, 6, u.Theme.OnInk)
			u.Disc(at, 5, u.Theme.Accent)
		}
	}
	if g := a.grip; g != nil && a.panes[g.pane] == p {
		if at, ok := a.onView(r, g.at); ok {
			u.Disc(at, 8, panel.Faded(u.Theme.Accent, 0.5))
			u.Disc(at, 4, u.Theme.Accent)
			if g.stays {
				u.Words("held; L lets go", at.X+14, at.Y+4, 0, panel.Small, u.Theme.Ink)
			}
		}
	}
}

// placeWords says where on the piece a mark lies.
func (a *App) placeWords(q r2.Vec, p *Pane) string {
	where := fmt.Sprintf("%s below the edge", a.units.Length(p.cowl.FoldY-q.Y))
	if q.Y > p.cowl.FoldY {
		where = fmt.Sprintf("on the facing, %s from the edge", a.units.Length(q.Y-p.cowl.FoldY))
	}
	return p.says(fmt.Sprintf("%s from the centre front to the wearer's %s, %s", a.units.Length(math.Abs(q.X)), side(q.X),
		where))
}

// side names the side of the wearer of a cowl at the front.
func side(left float64) string {
	if left < 0 {
		return "right"
	}
	return "left"
}

// badge is the sign of a counted fold, the same in view and section.
func (a *App) badge(at panel.Point, n int) {
	u := a.ui
	u.Disc(at, 10, u.Theme.OnInk)
	u.Disc(at, 9, u.Theme.Accent)
	s := panel.Style{Size: 12, Bold: true}
	u.Words(strconv.Itoa(n), at.X, at.Y+4.4, 0.5, s, u.Theme.OnInk)
}
