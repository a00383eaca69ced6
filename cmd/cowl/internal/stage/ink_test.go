package stage

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// inked returns how many pixels' worth of ink lies on an empty picture.
func inked(img *image.RGBA) (sum float64) {
	for i := 0; i < len(img.Pix); i += 4 {
		sum += float64(img.Pix[i+3]) / 255
	}
	return sum
}

func TestInkAreas(t *testing.T) {
	for _, c := range []struct {
		name string
		draw func(ink)
		want float64 // px²
		tol  float64
	}{
		{"square", func(k ink) {
			k.fill([]r2.Vec{{X: 10.5, Y: 10}, {X: 30.5, Y: 10}, {X: 30.5, Y: 30}, {X: 10.5, Y: 30}}, color.Black)
		}, 400, 1},
		{"disc", func(k ink) { k.dot(r2.Vec{X: 50, Y: 50}, 20, color.Black) }, math.Pi * 400, 6},
		{"line with round ends", func(k ink) { k.stroke([]r2.Vec{{X: 20, Y: 20}, {X: 80, Y: 60}}, 4, color.Black) },
			4*math.Hypot(60, 40) + 4*math.Pi, 2},
		{"bend counts once", func(k ink) {
			k.stroke([]r2.Vec{{X: 20, Y: 50}, {X: 60, Y: 50}, {X: 40, Y: 50}}, 4, color.Black)
		}, 160 + 4*math.Pi, 2},
		{"outside", func(k ink) { k.dot(r2.Vec{X: -50, Y: 300}, 20, color.Black) }, 0, 0},
	} {
		whole := image.NewRGBA(image.Rect(0, 0, 100, 100))
		c.draw(ink{whole})
		if got := inked(whole); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: %v px² laid down, want %v ± %v", c.name, got, c.want, c.tol)
		}
	}
}

// A part of a picture takes only what lies on it, at the same place.
func TestInkOnAPart(t *testing.T) {
	whole, parts := image.NewRGBA(image.Rect(0, 0, 100, 100)), image.NewRGBA(image.Rect(0, 0, 100, 100))
	k := ink{parts.SubImage(image.Rect(40, 30, 90, 80)).(*image.RGBA)}
	for _, k := range []ink{{whole}, k} {
		k.stroke([]r2.Vec{{X: 10, Y: 10}, {X: 60, Y: 60}, {X: 95, Y: 55}}, 6, color.Black)
	}
	n := 0
	for y := range 100 {
		for x := range 100 {
			want := whole.RGBAAt(x, y)
			if !(image.Point{X: x, Y: y}).In(k.img.Rect) {
				want = color.RGBA{}
			} else if want.A > 0 {
				n++
			}
			if got := parts.RGBAAt(x, y); math.Abs(float64(got.A)-float64(want.A)) > 2 {
				t.Fatalf("pixel (%d, %d) is %v, want %v", x, y, got, want)
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d pixels of the part are covered", n)
	}
}

func TestWordsAlign(t *testing.T) {
	for _, c := range []struct {
		align    float64
		from, to int // columns that may be inked
	}{{0, 99, 200}, {0.5, 55, 145}, {1, 0, 101}} {
		img := image.NewRGBA(image.Rect(0, 0, 200, 40))
		ink{img}.words("12 mm", r2.Vec{X: 100, Y: 30}, plain, c.align, color.Black)
		if all := inked(img); all < 50 {
			t.Errorf("align %v: %v px² of ink, want at least 50", c.align, all)
		}
		for y := range 40 {
			for x := range 200 {
				if (x < c.from || x >= c.to) && img.RGBAAt(x, y).A > 0 {
					t.Fatalf("align %v: ink in column %d, want %d to %d", c.align, x, c.from, c.to)
				}
			}
		}
	}
}
