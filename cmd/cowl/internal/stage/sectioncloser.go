package stage

import (
	"fmt"
	"image"
	"image/draw"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
)

// A cowl takes up a corner of the section, and what a draper looks at is how one
// layer lies in the other. So its folds are drawn once more over the form, where
// nothing else is, if they can be drawn larger there.
const (
	closerMargin = 14  // pixels between the closer look and what is round it
	closerTitle  = 30  // pixels above it for its words
	closerWorth  = 1.4 // times as large: less is not worth the room
)

// drawCloser draws the folds of the cowl larger over the form; nothing where there is
// no fold, or no room.
func drawCloser(img *image.RGBA, s scale, sec Section, field image.Rectangle, look Look) {
	zone, ok := sec.cowlZone()
	room := image.Rect(int(s.at(sec.hindmost()).X)+3*closerMargin, field.Min.Y, field.Max.X, field.Max.Y).
		Inset(closerMargin).Intersect(field)
	inside := room.Inset(closerMargin)
	inside.Min.Y += closerTitle
	if !ok || inside.Empty() {
		return
	}
	size := r2.Sub(zone.Max, zone.Min)
	near := scale{perM: min(float64(inside.Dx())/size.X, float64(inside.Dy())/size.Y)}
	if near.perM < closerWorth*s.perM {
		return
	}
	middle := near.at(r2.Scale(0.5, r2.Add(zone.Min, zone.Max)))
	near.origin = r2.Vec{X: float64(inside.Min.X+inside.Max.X)/2 - middle.X,
		Y: float64(inside.Min.Y+inside.Max.Y)/2 - middle.Y}
	draw.Draw(img, room, image.NewUniform(look.Background), image.Point{}, draw.Src)
	k := ink{img.SubImage(room).(*image.RGBA)}
	drawFormCut(k, near, sec.Form, room)
	k.stroke(near.line(Curved(sec.Facing)), 3, inkMid)
	k.stroke(near.line(Curved(sec.Cloth)), 5, inkDark)
	n := 0
	for _, f := range sec.Folds {
		if f.Counted {
			n++
			badge(k, near.at(f.At), 12, strconv.Itoa(n), look)
		}
	}
	k.frame(room)
	k.words(fmt.Sprintf("the folds, %.1f times as large", near.perM/s.perM),
		r2.Vec{X: float64(room.Min.X) + closerMargin, Y: float64(room.Min.Y) + closerTitle}, small, 0, inkMid)
}

// cowlZone is the part of the section, m, from the top of the cloth to 3 cm below the
// lowest fold of the cowl; false where it has none.
func (sec Section) cowlZone() (zone r2.Box, ok bool) {
	const spare = 0.03
	lowest := math.Inf(1)
	for _, f := range sec.Folds {
		if f.Counted {
			lowest, ok = min(lowest, f.At.Y), true
		}
	}
	zone = r2.Box{Min: r2.Vec{X: math.Inf(1), Y: lowest - spare}, Max: r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, line := range [][]r2.Vec{sec.Cloth, sec.Facing} {
		for _, p := range line {
			if p.Y < zone.Min.Y {
				continue
			}
			zone.Min.X = min(zone.Min.X, p.X-spare/2)
			zone.Max = r2.Vec{X: max(zone.Max.X, p.X+spare/2), Y: max(zone.Max.Y, p.Y+spare/2)}
		}
	}
	return zone, ok
}

// hindmost is the point of cloth and facing that lies nearest to the middle of the body.
func (sec Section) hindmost() r2.Vec {
	back := r2.Vec{X: math.Inf(1)}
	for _, line := range [][]r2.Vec{sec.Cloth, sec.Facing} {
		for _, p := range line {
			if p.X < back.X {
				back = p
			}
		}
	}
	return back
}

// frame draws the rim of a rectangle.
func (k ink) frame(r image.Rectangle) {
	x0, y0, x1, y1 := float64(r.Min.X), float64(r.Min.Y), float64(r.Max.X), float64(r.Max.Y)
	k.stroke([]r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}, {X: x0, Y: y0}}, 2, inkFaint)
}
