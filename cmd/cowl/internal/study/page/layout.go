package page

import "math"

// Layout is a piece on the cloth, warp upright.
type Layout struct {
	Title   string
	Outline [][2]float64 // mm, across and along the cloth
	Line    [][2]float64 // centre front
	Fold    [][2]float64 // cowl edge
}

// Sizes of a layout: a square of cloth that holds the piece at any angle.
const (
	layoutSide  = 150.0
	layoutCloth = 820.0 // mm
)

// SVG draws the cloth with its yarns and the piece on it.
func (l Layout) SVG() string {
	d := &drawing{w: layoutSide, h: layoutSide}
	d.rect(0, 0, layoutSide, layoutSide, "#f5f3ef")
	for x := 5.0; x < layoutSide; x += 7 {
		d.line(x, 0, x, layoutSide, "#cfc6b6", 0.6, "")
	}
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, p := range l.Outline {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
		}
	}
	per := math.Min(layoutSide/layoutCloth, 0.92*layoutSide/math.Max(hi[0]-lo[0], hi[1]-lo[1]))
	at := func(ps [][2]float64) [][2]float64 {
		var out [][2]float64
		for _, p := range ps {
			out = append(out, [2]float64{layoutSide/2 + per*(p[0]-(lo[0]+hi[0])/2), layoutSide/2 - per*(p[1]-(lo[1]+hi[1])/2)})
		}
		return out
	}
	ring := at(l.Outline)
	d.path(append(ring, ring[0]), inkDark, 1.2, "", "#ffffffc0")
	d.path(at(l.Line), handOf(0).colour, 1.4, "5 3", "none")
	d.path(at(l.Fold), inkMid, 0.8, "1.5 2", "none")
	return d.svg(l.Title)
}
