package motion

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

// A palette of 256 colours has each colour of a shaded picture to 8 steps of 255.
func TestPaletteIsNear(t *testing.T) {
	img := shaded(200, 100)
	p := paletteOf([]*image.RGBA{img}, 256)
	worst := 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		a := [3]uint8(img.Pix[i : i+3])
		b := p.colours[p.index(a)].(color.RGBA)
		worst = max(worst, math.Abs(float64(a[0])-float64(b.R)), math.Abs(float64(a[1])-float64(b.G)),
			math.Abs(float64(a[2])-float64(b.B)))
	}
	if worst > 8 {
		t.Errorf("a channel is off by %g, want at most 8", worst)
	}
}

// Painted, no pixel is off by more than that and half of what dithering moves it, and
// tiles of 4 × 4 pixels are off by 3 at most, where bins are 8 wide: no bands.
func TestPaintHasNoBands(t *testing.T) {
	img := shaded(200, 100)
	out := paletteOf([]*image.RGBA{img}, 256).paint(img)
	worst, tile := 0.0, 0.0
	for y := 0; y < 100; y += 4 {
		for x := 0; x < 200; x += 4 {
			sum := 0.0
			for k := range 16 {
				a, b := img.RGBAAt(x+k%4, y+k/4), color.RGBAModel.Convert(out.At(x+k%4, y+k/4)).(color.RGBA)
				worst = max(worst, math.Abs(float64(a.R)-float64(b.R)), math.Abs(float64(a.G)-float64(b.G)),
					math.Abs(float64(a.B)-float64(b.B)))
				sum += float64(a.R) - float64(b.R)
			}
			tile = max(tile, math.Abs(sum/16))
		}
	}
	if worst > 8+shade/2 || tile > 3 {
		t.Errorf("a channel is off by %g, one of a tile by %g, want at most %d and 3", worst, tile, 8+shade/2)
	}
}

// A moving picture reads back with all pictures and is the same each time.
func TestGIF(t *testing.T) {
	shots := []*image.RGBA{shaded(64, 48), shaded(64, 48)}
	a, err := GIF(shots, 8)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := GIF(shots, 8)
	if !bytes.Equal(a, b) {
		t.Error("two runs give different bytes")
	}
	g, err := gif.DecodeAll(bytes.NewReader(a))
	if err != nil || len(g.Image) != 2 || g.Delay[0] != 8 || g.LoopCount != 0 {
		t.Errorf("read back %v: want 2 pictures, for ever", err)
	}
}
