package stage

import (
	"image"
	"image/color"
	"image/draw"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// An arrow is drawn from its words to its tip and no farther, at any scale, and a title
// stands where it is put.
func TestAnnotate(t *testing.T) {
	for _, scale := range []float64{1, 2} {
		img := image.NewRGBA(image.Rect(0, 0, int(300*scale), int(200*scale)))
		grey := color.RGBA{0x80, 0x80, 0x80, 0xFF}
		draw.Draw(img, img.Rect, image.NewUniform(grey), image.Point{}, draw.Src)
		at := func(x, y float64) color.RGBA { return img.RGBAAt(int(x*scale), int(y*scale)) }
		Annotate(img, []Note{
			{At: r2.Vec{X: 40 * scale, Y: 150 * scale}, To: r2.Vec{X: 240 * scale, Y: 150 * scale}, Points: true},
			{Words: "Fold", At: r2.Vec{X: 150 * scale, Y: 50 * scale}},
		}, scale)
		for _, c := range []struct {
			x, y float64
			want color.RGBA
		}{{140, 150, NoteInk}, {238, 150, NoteInk}, {232, 152, NoteInk}, {250, 150, grey}, {30, 150, grey}, {140, 156, grey},
			{150, 80, grey}, {90, 50, grey}} {
			if got := at(c.x, c.y); got != c.want {
				t.Errorf("scale %g: (%g, %g) is %v, want %v", scale, c.x, c.y, got, c.want)
			}
		}
		inked, light := 0, 0
		for x := 130.0; x < 170; x += 0.5 {
			for y := 42.0; y < 58; y += 0.5 {
				switch c := at(x, y); {
				case c == NoteInk:
					inked++
				case c.G > 0xD0:
					light++
				}
			}
		}
		if inked < 100 || light < 500 {
			t.Errorf("scale %g: %d places of ink and %d of ground about the title, want 100 and 500 or more", scale, inked,
				light)
		}
	}
}
