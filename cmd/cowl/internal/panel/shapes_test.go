package panel

import (
	"image/color"
	"math"
	"testing"
)

// A stroke is as wide on a sharp V as on a gentle one: it covers the length of
// its two legs times its width, with a pixel of fading.
func TestStrokeSharp(t *testing.T) {
	for _, foot := range []float64{2, 10, 60} {
		u := New()
		u.Begin(200, 200, 1, 0)
		u.Stroke([]Point{{0, 0}, {foot, 100}, {2 * foot, 0}}, 2, color.RGBA{A: 0xFF})
		area := 0.0
		at := func(i uint32) (x, y float64) { return float64(u.Verts[8*i]), float64(u.Verts[8*i+1]) }
		for i := 0; i < len(u.Index); i += 3 {
			ax, ay := at(u.Index[i])
			bx, by := at(u.Index[i+1])
			cx, cy := at(u.Index[i+2])
			area += math.Abs((bx-ax)*(cy-ay)-(by-ay)*(cx-ax)) / 2
		}
		if want := 2 * math.Hypot(foot, 100) * (2 + 1); math.Abs(area-want) > 0.03*want {
			t.Errorf("a V 100 tall on feet %g apart covers %.0f square pixels, want %.0f", 2*foot, area, want)
		}
	}
}

// BenchmarkControls lays out as many controls as a side of the window has.
func BenchmarkControls(b *testing.B) {
	u := New()
	s := Slider{ID: "s", Label: "Extension", Max: 1, Step: 0.1, Format: func(float64) string { return "8.0 cm" }}
	b.ReportAllocs()
	for b.Loop() {
		u.Begin(300, 800, 1, 0)
		for i := range 10 {
			at := Rect{10, float64(70 * i), 280, 46}
			u.Slide(s, at, 0.5)
			u.Button("b", Rect{10, at.Y + 48, 100, 20}, "Again", "")
		}
		u.End()
	}
}
