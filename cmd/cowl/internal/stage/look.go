package stage

import (
	"image/color"
	"math"
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
	return l
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
