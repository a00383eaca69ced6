package panel

import "image/color"

// Column lays things out one below the other.
type Column struct {
	R    Rect // what is left
	Dull bool // all is written faintly: it does not hold now
	u    *UI
	y    float64 // where it began
}

// Next takes a row h high.
func (c *Column) Next(h float64) Rect {
	r := Rect{c.R.X, c.R.Y, c.R.W, h}
	c.R.Y += h
	c.R.H -= h
	return r
}

// Gap leaves h free.
func (c *Column) Gap(h float64) { c.Next(h) }

// Heading writes a heading with room above it.
func (c *Column) Heading(text string) {
	c.Gap(8)
	r := c.Next(26)
	c.u.Words(text, r.X, middle(r, Heading), 0, Heading, c.ink(c.u.Theme.Ink))
}

// Text writes lines, broken to the width, and returns their area.
func (c *Column) Text(text string, s Style, soft bool) Rect {
	ink := c.u.Theme.Ink
	if soft {
		ink = c.u.Theme.Soft
	}
	ink = c.ink(ink)
	whole := Rect{c.R.X, c.R.Y, c.R.W, 0}
	for _, line := range c.u.Wrap(text, c.R.W, s) {
		r := c.Next(s.Size * 1.42)
		c.u.Words(line, r.X, middle(r, s), 0, s, ink)
		whole.H += r.H
	}
	return whole
}

// Pair writes a name on the left and a value on the right of one row, or of two
// where one is too narrow for both.
func (c *Column) Pair(name, value string) {
	r := c.Next(22)
	c.u.Words(name, r.X, middle(r, Plain), 0, Plain, c.ink(c.u.Theme.Soft))
	if c.u.Width(name, Plain)+c.u.Width(value, Strong)+4 > r.W {
		r = c.Next(18)
	}
	c.u.Words(value, r.X+r.W, middle(r, Strong), 1, Strong, c.ink(c.u.Theme.Ink))
}

func (c *Column) ink(of color.RGBA) color.RGBA {
	if c.Dull {
		return Faded(of, faint)
	}
	return of
}

// barWide is the width of a scroll bar, units.
const barWide = 6

// Scroll lets body lay out a column in r that may be taller than r.
func (u *UI) Scroll(id string, r Rect, body func(c *Column)) {
	off := u.offset[id]
	u.Push(r)
	c := &Column{R: Rect{r.X, r.Y - off, r.W, r.H}, u: u, y: r.Y - off}
	before := u.focusAt
	body(c)
	if u.reveal && u.focusAt != before {
		u.Reveal(id, r.Y, r.H, u.focusAt.Y-8, u.focusAt.Y+u.focusAt.H+8)
		off = u.offset[id]
	}
	tall := c.R.Y - c.y
	u.Pop()
	most := max(tall-r.H, 0)
	if u.Over(r) && u.In.Wheel != 0 && most > 0 {
		off -= 40 * u.In.Wheel
		u.In.Wheel = 0
	}
	if most > 0 {
		bar := Rect{r.X + r.W + 3, r.Y, barWide, r.H}
		off = u.bar(id, bar, off, most, r.H/tall)
	}
	u.offset[id] = min(max(off, 0), most)
}

// bar draws a scroll bar and lets the mouse drag it.
func (u *UI) bar(id string, r Rect, off, most, share float64) float64 {
	knob := Rect{r.X, r.Y, r.W, max(share*r.H, 24)}
	free := r.H - knob.H
	knob.Y += free * min(max(off/most, 0), 1)
	name := id + "/bar"
	if u.awake() && u.In.Struck[LeftButton] && u.held == "" && u.Over(r) {
		u.held = name
	}
	if u.held == name {
		off += u.In.DY * most / max(free, 1)
	}
	ink := Faded(u.Theme.Soft, 0.35)
	if u.held == name || u.Over(r) {
		ink = Faded(u.Theme.Soft, 0.8)
	}
	u.Round(knob, r.W/2, ink)
	return off
}

// Reveal scrolls the area id, in sight between y and y+h, so that a row from
// top to bottom shows.
func (u *UI) Reveal(id string, y, h, top, bottom float64) {
	switch {
	case top < y:
		u.offset[id] -= y - top
	case bottom > y+h:
		u.offset[id] += bottom - y - h
	}
}
