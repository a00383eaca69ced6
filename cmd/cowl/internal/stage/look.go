package stage

import (
	"image/color"
	"math"

	"cowl/materials/look"
	"cowl/mesh/export/gltf"
)

// Look holds the colours of a picture in sRGB. A zero colour and a zero step
// mean the default.
type Look struct {
	Background color.RGBA
	Cloth      color.RGBA // right side
	WrongSide  color.RGBA
	Rim        color.RGBA // edges of the cloth
	Form       color.RGBA
	Seam       color.RGBA
	Accent     color.RGBA // marks only
	GrainStep  float64    // m between grain lines
	Own        look.Look  // of the cloth, in place of Cloth, WrongSide and grain lines; zero: these
}

// withDefaults fills in what is zero: a warm ecru cloth, tan on its wrong side, before
// a neutral grey form, greys elsewhere, one muted teal for marks.
func (l Look) withDefaults() Look {
	for _, c := range []struct {
		dst *color.RGBA
		def color.RGBA
	}{
		{&l.Background, color.RGBA{0xF5, 0xF3, 0xEF, 0xFF}},
		{&l.Cloth, color.RGBA{0xE6, 0xD9, 0xC3, 0xFF}},
		{&l.WrongSide, color.RGBA{0xB8, 0x9F, 0x84, 0xFF}},
		{&l.Rim, color.RGBA{0x6E, 0x5F, 0x4A, 0xFF}},
		{&l.Form, color.RGBA{0xAE, 0xAF, 0xB3, 0xFF}},
		{&l.Seam, color.RGBA{0x5A, 0x5B, 0x5F, 0xFF}},
		{&l.Accent, color.RGBA{0x2F, 0x6F, 0x73, 0xFF}},
	} {
		if *c.dst == (color.RGBA{}) {
			*c.dst = c.def
		}
	}
	if l.GrainStep == 0 {
		l.GrainStep = 0.020
	}
	if l.Own.Known() {
		l.Cloth, l.WrongSide = opaque(l.Own.Colour), opaque(l.Own.Wrong)
		l.Rim = l.edge()
	}
	return l
}

func opaque(c look.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 0xFF} }

// edge is how the cloth looks at its cut edge, in its own shadow.
func (l Look) edge() color.RGBA {
	dark := func(x uint8) uint8 { return uint8(float64(x) * (0.62 + 0.25*l.Own.Sheer)) }
	return color.RGBA{dark(l.Cloth.R), dark(l.Cloth.G), dark(l.Cloth.B), 0xFF}
}

// linear turns an sRGB colour into linear light (IEC 61966-2-1).
func linear(c color.RGBA) [3]float64 {
	var out [3]float64
	for i, v := range srgb(c) {
		if v <= 0.04045 {
			out[i] = v / 12.92
		} else {
			out[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return out
}

// srgb returns the three channels of c, 0 to 1, as they are.
func srgb(c color.RGBA) [3]float64 {
	return [3]float64{float64(c.R) / 255, float64(c.G) / 255, float64(c.B) / 255}
}

// ForFile is the look of a cloth cut at grain (rad) as files of the open
// standard know it.
func ForFile(l look.Look, grain float64) gltf.Cloth {
	if !l.Known() {
		return gltf.Cloth{}
	}
	c := gltf.Cloth{Colour: linear(opaque(l.Colour)), Sheen: l.Sheen, Roughness: l.Roughness, Sheer: l.Sheer}
	switch l.Float {
	case look.Warp:
		c.Float = &grain
	case look.Weft:
		weft := grain + math.Pi/2
		c.Float = &weft
	}
	return c
}
