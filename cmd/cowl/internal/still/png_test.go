package still

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"runtime"
	"testing"
)

// picture is a made-up one: an even ground, a soft disc, and noise in a corner.
func picture(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	seed := uint32(1)
	for y := range h {
		for x := range w {
			far := math.Hypot(float64(x-w/2), float64(y-h/2)) / float64(max(w, h))
			c := color.RGBA{245, 243, 239, 255}
			if far < 0.3 {
				shade := 80 + 400*far
				c = color.RGBA{uint8(shade), uint8(0.9 * shade), uint8(0.8 * shade), 255}
			}
			if x < w/4 && y < h/4 {
				seed = 1664525*seed + 1013904223
				c = color.RGBA{uint8(seed >> 24), uint8(seed >> 16), uint8(seed >> 8), 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

// The standard reader, which shares nothing with this writer, gets the picture back to
// the last bit, whatever its size.
func TestReadBack(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {1, 200}, {640, 1}, {3, stripRows}, {5, stripRows + 1}, {640, 480}} {
		want := picture(size.X, size.Y)
		got, err := png.Decode(bytes.NewReader(PNG(want)))
		if err != nil {
			t.Errorf("%v: %v", size, err)
			continue
		}
		if got.Bounds() != want.Rect {
			t.Errorf("%v: read back as %v", size, got.Bounds())
			continue
		}
		for y := range size.Y {
			for x := range size.X {
				if g := color.RGBAModel.Convert(got.At(x, y)); g != want.RGBAAt(x, y) {
					t.Fatalf("%v: pixel (%d, %d) is read back as %v, want %v", size, x, y, g, want.RGBAAt(x, y))
				}
			}
		}
	}
}

// Equal pictures give equal bytes on any number of cores, and a part of a larger picture
// those of the part alone.
func TestEqualBytes(t *testing.T) {
	img := picture(300, 400)
	want := PNG(img)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if !bytes.Equal(PNG(img), want) {
		t.Error("one core gives other bytes than several")
	}
	part := img.SubImage(image.Rect(20, 30, 120, 330)).(*image.RGBA)
	alone := image.NewRGBA(image.Rect(0, 0, 100, 300))
	for y := range 300 {
		copy(alone.Pix[y*alone.Stride:][:alone.Stride], part.Pix[y*part.Stride:])
	}
	if !bytes.Equal(PNG(part), PNG(alone)) {
		t.Error("a part of a picture gives other bytes than a copy of it")
	}
}

// A file is not larger than one of the standard encoder at the same level by more than 3 %.
func TestSize(t *testing.T) {
	img := picture(1000, 750)
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	if got, most := len(PNG(img)), b.Len()*103/100; got > most {
		t.Errorf("PNG gave %d bytes, the standard encoder %d", got, b.Len())
	}
}

var kept []byte

// BenchmarkPNG packs a picture as large as that of a drape.
func BenchmarkPNG(b *testing.B) {
	img := picture(2000, 1500)
	b.Run("strips", func(b *testing.B) {
		for b.Loop() {
			kept = PNG(img)
		}
	})
	b.Run("standard", func(b *testing.B) {
		for b.Loop() {
			var out bytes.Buffer
			if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&out, img); err != nil {
				b.Fatal(err)
			}
			kept = out.Bytes()
		}
	})
}
