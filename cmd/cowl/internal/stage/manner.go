package stage

import (
	"image/color"

	"cowl/shaders"

	"gonum.org/v1/gonum/spatial/r3"
)

// Manner says how a loaded scene is painted. The zero Manner is that of a
// picture on paper, with shadows.
type Manner struct {
	Quick   bool    // no shadows: for cloth that moves, and for slow drivers
	Fine    bool    // with Quick: the smooth surface all the same, where there is one
	Sparing bool    // shadows on a smooth surface from vertex to vertex: for drivers on the processor
	NoForm  bool    // the cloth alone
	Opacity float64 // of the cloth, 0..1; 0 means 1
	Yarns   *Yarns  // both yarns in two tones, instead of fine lines; nil: fine lines
	Map     *Map    // the cloth in the colours of a map; nil: in its own
	Bare    bool    // no grain lines at all
	Lines   []Line  // drawn on the cloth
	Toile   bool    // the cloth as one of which nothing is known, whatever its own look
}

// Line is a line on the cloth in a colour.
type Line struct {
	At  []r3.Vec // m
	Ink color.RGBA
}

// Yarns are the colours of the two yarns.
type Yarns struct{ Warp, Weft color.RGBA }

// Map colours the cloth by the values given to Painter.Move.
type Map struct {
	Low, High float64 // values at the ends of the ramp
	Ramp      Ramp
}

// Ramp is a row of colours, evenly spread from the low to the high end.
type Ramp [shaders.RampSteps]color.RGBA

// At returns the colour at share t of the ramp, 0 to 1.
func (r Ramp) At(t float64) color.RGBA {
	at := min(max(t, 0), 1) * float64(len(r)-1)
	i := min(int(at), len(r)-2)
	mix := func(a, b uint8) uint8 { return uint8(float64(a) + (at-float64(i))*(float64(b)-float64(a)) + 0.5) }
	a, b := r[i], r[i+1]
	return color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 0xFF}
}
