//go:build cgo

package window

import (
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// cutLength is where a length of the cut is found on the piece.
type cutLength struct {
	id   string // of its slider
	word string
	line func(*draft.Cowl) []r2.Vec // m, in the flat; nil: the piece has none
}

// cutLengths lists them.
var cutLengths = []cutLength{
	{"extension", "extension", func(p *draft.Cowl) []r2.Vec {
		return []r2.Vec{{X: p.HalfEdge - p.Extension, Y: p.FoldY}, {X: p.HalfEdge, Y: p.FoldY}}
	}},
	{"depth", "depth of the edge", func(p *draft.Cowl) []r2.Vec {
		_, d := draft.DropForEdge(p.HalfEdge-p.Extension, p.HalfEdge)
		return []r2.Vec{{Y: p.FoldY}, {Y: p.FoldY - d}}
	}},
	{"cowl_point", "from the neck point", func(p *draft.Cowl) []r2.Vec {
		s := p.Shoulder
		up := r2.Unit(r2.Sub(s[0], s[len(s)-1]))
		return []r2.Vec{s[0], r2.Add(s[0], r2.Scale(p.CowlPoint, up))}
	}},
	{"facing", "self-facing", func(p *draft.Cowl) []r2.Vec {
		return []r2.Vec{{X: -p.HalfEdge / 2, Y: p.FoldY}, {X: -p.HalfEdge / 2, Y: p.FoldY + p.Facing}}
	}},
	{"grain", "warp", func(p *draft.Cowl) []r2.Vec {
		mid := r2.Vec{Y: (p.FoldY + p.Outline[0].Y) / 2}
		way := r2.Scale(0.07, r2.Vec{X: math.Sin(p.Grain), Y: math.Cos(p.Grain)})
		return []r2.Vec{r2.Sub(mid, way), r2.Add(mid, way)}
	}},
	{"hem", "hem", func(p *draft.Cowl) []r2.Vec {
		foot := p.Outline[0]
		return []r2.Vec{foot, r2.Add(foot, r2.Vec{Y: p.Hem})}
	}},
	{"dart_share", "what is left of the dart", func(p *draft.Cowl) []r2.Vec { return p.DartLeft }},
}

// sketchTall is the height of the sketch over the lengths of the cut, units.
const sketchTall = 124

// cutSketch draws the piece with its lengths; the one whose slider is under the mouse or
// has the focus is drawn in the accent and named.
func (a *App) cutSketch(r panel.Rect) {
	p := &a.pane().cowl
	if len(p.Outline) == 0 {
		return
	}
	u := a.ui
	u.Push(r)
	defer u.Pop()
	c := fitFlat(r.Shrunk(4, 14), p.Outline)
	stroke := func(line []r2.Vec, wide float64, ink color.RGBA) {
		var out []panel.Point
		for _, q := range line {
			out = append(out, c.at(q))
		}
		u.Stroke(out, wide, ink)
	}
	stroke(append(append([]r2.Vec(nil), p.Outline...), p.Outline[0]), 1, u.Theme.Soft)
	a.dashes(c.at(r2.Vec{X: -p.HalfEdge, Y: p.FoldY}), c.at(r2.Vec{X: p.HalfEdge, Y: p.FoldY}), u.Theme.Soft)
	for _, l := range cutLengths {
		line := l.line(p)
		if line == nil {
			continue
		}
		if !a.onLength(l) {
			stroke(line, 1, panel.Faded(u.Theme.Soft, 0.6))
			continue
		}
		stroke(line, 3, u.Theme.Accent)
		for _, q := range []r2.Vec{line[0], line[len(line)-1]} {
			u.Disc(c.at(q), 3, u.Theme.Accent)
		}
		u.Words(l.word, r.X+r.W, r.Y+r.H-4, 1, panel.Small, u.Theme.Accent)
	}
}

// onLength reports whether the slider of a length is under the mouse or has the focus.
func (a *App) onLength(l cutLength) bool {
	on := a.ui.On()
	return on == l.id || on == l.id+"/typed" || on == "auto/"+l.id
}
