package panel

import (
	"math"
	"testing"
)

// Strips cut off a rectangle and what is left make up the whole.
func TestRectStrips(t *testing.T) {
	for _, c := range []struct {
		name string
		cut  func(*Rect) Rect
		want Rect
		left Rect
	}{
		{"top", func(r *Rect) Rect { return r.Top(10) }, Rect{5, 6, 100, 10}, Rect{5, 16, 100, 30}},
		{"bottom", func(r *Rect) Rect { return r.Bottom(10) }, Rect{5, 36, 100, 10}, Rect{5, 6, 100, 30}},
		{"left", func(r *Rect) Rect { return r.Left(30) }, Rect{5, 6, 30, 40}, Rect{35, 6, 70, 40}},
		{"right", func(r *Rect) Rect { return r.Right(30) }, Rect{75, 6, 30, 40}, Rect{5, 6, 70, 40}},
		{"more than there is", func(r *Rect) Rect { return r.Top(90) }, Rect{5, 6, 100, 40}, Rect{5, 46, 100, 0}},
	} {
		r := Rect{5, 6, 100, 40}
		if got := c.cut(&r); got != c.want || r != c.left {
			t.Errorf("%s: cut %v, left %v, want %v and %v", c.name, got, r, c.want, c.left)
		}
	}
}

func TestRectColumns(t *testing.T) {
	cols := Rect{10, 0, 100, 20}.Columns(3, 5)
	for i, want := range []Rect{{10, 0, 30, 20}, {45, 0, 30, 20}, {80, 0, 30, 20}} {
		if cols[i] != want {
			t.Errorf("column %d is %v, want %v", i, cols[i], want)
		}
	}
}

func TestRectMeet(t *testing.T) {
	a := Rect{0, 0, 10, 10}
	if got := a.Meet(Rect{5, 5, 10, 10}); got != (Rect{5, 5, 5, 5}) {
		t.Errorf("Meet = %v, want the shared corner", got)
	}
	if got := a.Meet(Rect{20, 0, 5, 5}); !got.Empty() {
		t.Errorf("Meet of areas apart = %v, want an empty one", got)
	}
}

// Words are told from the ground: WCAG 2.2, 1.4.3 asks for 4.5 : 1, with the
// relative luminance as defined there.
func TestThemeContrast(t *testing.T) {
	lum := func(c [3]uint8) float64 {
		var l [3]float64
		for i, v := range c {
			x := float64(v) / 255
			if x <= 0.04045 {
				l[i] = x / 12.92
			} else {
				l[i] = math.Pow((x+0.055)/1.055, 2.4)
			}
		}
		return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
	}
	th := Greys()
	for _, c := range []struct {
		name      string
		ink, back [3]uint8
	}{
		{"words", [3]uint8{th.Ink.R, th.Ink.G, th.Ink.B}, [3]uint8{th.Ground.R, th.Ground.G, th.Ground.B}},
		{"lesser words", [3]uint8{th.Soft.R, th.Soft.G, th.Soft.B}, [3]uint8{th.Ground.R, th.Ground.G, th.Ground.B}},
		{"lesser words on a track", [3]uint8{th.Soft.R, th.Soft.G, th.Soft.B},
			[3]uint8{th.Sunken.R, th.Sunken.G, th.Sunken.B}},
		{"words on the accent", [3]uint8{th.OnInk.R, th.OnInk.G, th.OnInk.B},
			[3]uint8{th.Accent.R, th.Accent.G, th.Accent.B}},
		{"words on ink", [3]uint8{th.OnInk.R, th.OnInk.G, th.OnInk.B}, [3]uint8{th.Ink.R, th.Ink.G, th.Ink.B}},
	} {
		a, b := lum(c.ink), lum(c.back)
		if got := (max(a, b) + 0.05) / (min(a, b) + 0.05); got < 4.5 {
			t.Errorf("%s: contrast %.2f, want at least 4.5", c.name, got)
		}
	}
}
