// Package panel draws and runs the controls of a window: an immediate-mode
// panel of rectangles and letters. It knows no OpenGL and no window system: it
// takes events and yields triangles in pixels, so it can be tested with
// neither. Places and sizes are in units, of which Scale pixels make one; Y
// runs down. Start at UI.
package panel

import "image/color"

// Rect is an area in units.
type Rect struct{ X, Y, W, H float64 }

// Has reports whether a place lies in r.
func (r Rect) Has(x, y float64) bool {
	return x >= r.X && x < r.X+r.W && y >= r.Y && y < r.Y+r.H
}

// Inset returns r with d taken off on every side.
func (r Rect) Inset(d float64) Rect { return r.Shrunk(d, d) }

// Shrunk returns r with dx taken off left and right, dy above and below.
func (r Rect) Shrunk(dx, dy float64) Rect {
	return Rect{r.X + dx, r.Y + dy, max(r.W-2*dx, 0), max(r.H-2*dy, 0)}
}

// Meet returns what two areas share; it may be empty.
func (r Rect) Meet(o Rect) Rect {
	x, y := max(r.X, o.X), max(r.Y, o.Y)
	return Rect{x, y, max(min(r.X+r.W, o.X+o.W)-x, 0), max(min(r.Y+r.H, o.Y+o.H)-y, 0)}
}

// Empty reports whether r holds nothing.
func (r Rect) Empty() bool { return r.W <= 0 || r.H <= 0 }

// Top takes a strip h high off the top of r and returns it.
func (r *Rect) Top(h float64) Rect {
	h = min(h, r.H)
	out := Rect{r.X, r.Y, r.W, h}
	r.Y, r.H = r.Y+h, r.H-h
	return out
}

// Bottom takes a strip h high off the bottom of r and returns it.
func (r *Rect) Bottom(h float64) Rect {
	h = min(h, r.H)
	r.H -= h
	return Rect{r.X, r.Y + r.H, r.W, h}
}

// Left takes a strip w wide off the left of r and returns it.
func (r *Rect) Left(w float64) Rect {
	w = min(w, r.W)
	out := Rect{r.X, r.Y, w, r.H}
	r.X, r.W = r.X+w, r.W-w
	return out
}

// Right takes a strip w wide off the right of r and returns it.
func (r *Rect) Right(w float64) Rect {
	w = min(w, r.W)
	r.W -= w
	return Rect{r.X + r.W, r.Y, w, r.H}
}

// Columns divides r into n columns of one width, gap apart.
func (r Rect) Columns(n int, gap float64) []Rect {
	out := make([]Rect, n)
	w := (r.W - gap*float64(n-1)) / float64(n)
	for i := range out {
		out[i] = Rect{r.X + float64(i)*(w+gap), r.Y, w, r.H}
	}
	return out
}

// Theme holds the colours of a panel: neutral greys and one accent.
type Theme struct {
	Ground color.RGBA // behind controls
	Raised color.RGBA // fields and buttons
	Sunken color.RGBA // tracks, pressed buttons
	Rule   color.RGBA // thin lines
	Ink    color.RGBA // words
	Soft   color.RGBA // lesser words
	Accent color.RGBA
	OnInk  color.RGBA // words on ink and accent
}

// Greys is the theme of cowl. Words keep a contrast of at least 4.5 : 1 to the
// ground (WCAG 2.2, 1.4.3).
func Greys() Theme {
	return Theme{
		Ground: color.RGBA{0xF4, 0xF4, 0xF3, 0xFF},
		Raised: color.RGBA{0xFF, 0xFF, 0xFF, 0xFF},
		Sunken: color.RGBA{0xE0, 0xE0, 0xDF, 0xFF},
		Rule:   color.RGBA{0xCB, 0xCB, 0xCA, 0xFF},
		Ink:    color.RGBA{0x26, 0x26, 0x28, 0xFF},
		Soft:   color.RGBA{0x62, 0x62, 0x66, 0xFF},
		Accent: color.RGBA{0x2F, 0x6F, 0x73, 0xFF},
		OnInk:  color.RGBA{0xFF, 0xFF, 0xFF, 0xFF},
	}
}

// Faded returns c with its alpha times a, 0 to 1; colours have straight alpha.
func Faded(c color.RGBA, a float64) color.RGBA {
	c.A = uint8(float64(c.A)*a + 0.5)
	return c
}
