package stage

import (
	"image"
	"image/color"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Section is the cut through the centre front (CF). All points are (Z, Y) in
// m: forward and up.
type Section struct {
	Cloth  []r2.Vec // from the edge down to the waist, at least 2
	Facing []r2.Vec // from the edge down its inside; may be empty
	Form   []r2.Vec // outline of the form, its front or all round; may be empty
	Folds  []SectionFold
	Worn   draft.Side // where the cowl is worn: the words say so
}

// SectionFold is a fold as it was measured, and where its crest is.
type SectionFold struct {
	At      r2.Vec  // m, (Z, Y)
	DepthMM float64 // prominence of the crest
	CFmm    float64 // distance from the edge down CF in the flat piece
	Counted bool    // false: below the bust, shown but not one of the folds of the cowl
}

// Inks of the section: greys, so that the accent speaks for the folds alone.
var (
	inkDark  = color.RGBA{0x2B, 0x2B, 0x2D, 0xFF}
	inkMid   = color.RGBA{0x78, 0x78, 0x7B, 0xFF}
	inkFaint = color.RGBA{0xE3, 0xE0, 0xDA, 0xFF}
	inkForm  = color.RGBA{0xD9, 0xD9, 0xDA, 0xFF}
)

// scale takes (Z, Y) in m to pixels, equally along both axes, Z to the left.
type scale struct {
	origin r2.Vec  // pixel of Z = Y = 0
	perM   float64 // pixels a metre
	left   float64 // pixel left of which the field holds nothing but labels
}

func (s scale) at(p r2.Vec) r2.Vec {
	return r2.Vec{X: s.origin.X - s.perM*p.X, Y: s.origin.Y - s.perM*p.Y}
}

func (s scale) line(ps []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(ps))
	for i, p := range ps {
		out[i] = s.at(p)
	}
	return out
}

// Curved is a smooth curve through the points of a section.
func Curved(ps []r2.Vec) []r2.Vec {
	if len(ps) < 3 {
		return ps
	}
	in := make([]r3.Vec, len(ps))
	for i, p := range ps {
		in[i] = r3.Vec{X: p.X, Y: p.Y}
	}
	var out []r2.Vec
	for _, p := range bowed(in) {
		out = append(out, r2.Vec{X: p.X, Y: p.Y})
	}
	return out
}

// fitScale lets cloth, facing and crests fill the height of the field with 2 cm
// to spare, and keeps the left part of the field for the labels.
func fitScale(sec Section, field image.Rectangle) scale {
	var all []r3.Vec
	for _, line := range [][]r2.Vec{sec.Cloth, sec.Facing} {
		for _, p := range line {
			all = append(all, r3.Vec{X: p.X, Y: p.Y})
		}
	}
	const spare = 0.02 // m
	b := Bounds(all)
	wide, tall := b.Max.X-b.Min.X+2*spare, b.Max.Y-b.Min.Y+2*spare
	labels := 0.45 * float64(field.Dx())
	perM := min(float64(field.Dy())/tall, (float64(field.Dx())-labels)/wide)
	left := float64(field.Min.X) + labels
	return scale{
		origin: r2.Vec{
			X: left + perM*(b.Max.X+spare),
			Y: float64(field.Min.Y+field.Max.Y)/2 + perM*(b.Min.Y+b.Max.Y)/2,
		},
		perM: perM,
		left: left,
	}
}

// drawFormCut fills the form. An outline that is open is closed behind, out of
// sight.
func drawFormCut(k ink, s scale, form []r2.Vec, field image.Rectangle) {
	if len(form) < 2 {
		return
	}
	line := s.line(form)
	first, last := line[0], line[len(line)-1]
	area := line
	if r2.Norm(r2.Sub(first, last)) > 0.05*s.perM {
		back := float64(field.Max.X) + 10
		area = append(append([]r2.Vec(nil), line...), r2.Vec{X: back, Y: last.Y}, r2.Vec{X: back, Y: first.Y})
	}
	k.fill(area, inkForm)
	k.stroke(line, 1.5, inkMid)
}
