package window

import (
	"bytes"
	"image"
	"image/color"
	"image/gif"
	"math"
	"testing"
)

// shaded is a picture of smooth ramps in a few hues, as a lit drape is.
func shaded(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			v := uint8(60 + 180*x/w)
			c := color.RGBA{v, v, v, 0xFF}
			if y > h/2 {
				c = color.RGBA{v, uint8(float64(v) * 0.9), uint8(float64(v) * 0.7), 0xFF}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

// A palette of 256 colours keeps a shaded picture to a few steps of 255.
func TestPaletteIsNear(t *testing.T) {
	img := shaded(200, 100)
	out := paletteOf([]*image.RGBA{img}, 256).paint(img)
	worst := 0.0
	for y := range 100 {
		for x := range 200 {
			a, b := img.RGBAAt(x, y), color.RGBAModel.Convert(out.At(x, y)).(color.RGBA)
			worst = max(worst, math.Abs(float64(a.R)-float64(b.R)), math.Abs(float64(a.G)-float64(b.G)), math.Abs(float64(a.B)-float64(b.B)))
		}
	}
	if worst > 8 {
		t.Errorf("a channel is off by %g, want at most 8", worst)
	}
}

// The turntable reads back with all pictures and is the same each time.
func TestEncodeTurn(t *testing.T) {
	shots := []*image.RGBA{shaded(64, 48), shaded(64, 48)}
	a, err := encodeTurn(shots)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := encodeTurn(shots)
	if !bytes.Equal(a, b) {
		t.Error("two runs give different bytes")
	}
	g, err := gif.DecodeAll(bytes.NewReader(a))
	if err != nil || len(g.Image) != 2 || g.Delay[0] != turnDelay || g.LoopCount != 0 {
		t.Errorf("read back %v: want 2 pictures, for ever", err)
	}
}
