package page

import "math"

// Outlines lays sections over each other at one scale, cm along both axes.
// Forward is to the left, as in the view from the wearer's left.
type Outlines struct {
	Title  string
	Form   [][2]float64 // mm, forward and up; may be empty
	Curves []Curve
	Top    float64 // mm, how much is shown from the top; 0: all
	Inches bool    // the grid is of inches
}

// Curve is one section.
type Curve struct {
	Name string
	At   [][2]float64 // mm, forward and up
}

const outlineTall = 330.0

// SVG draws the sections.
func (o Outlines) SVG() string {
	d := &drawing{w: chartWide, h: chartTop + outlineTall + 34}
	d.bold(0, 16, o.Title, 14)
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, c := range o.Curves {
		for _, p := range c.At {
			for k := range 2 {
				lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
			}
		}
	}
	if lo[0] > hi[0] {
		lo, hi = [2]float64{0, 0}, [2]float64{100, 100}
	}
	if o.Top > 0 {
		lo, hi = o.upper(hi[1] - o.Top)
	}
	const spare = 15 // mm
	per := math.Min(outlineTall/(hi[1]-lo[1]+2*spare), (chartWide-40)/(hi[0]-lo[0]+2*spare))
	wideMM := (chartWide - 40) / per
	front := (lo[0]+hi[0])/2 + wideMM/2 // the drawing is filled to its left edge
	at := func(p [2]float64) [2]float64 {
		return [2]float64{40 + (front-p[0])*per, chartTop + (hi[1]+spare-p[1])*per}
	}
	o.form(d, at, front-wideMM, lo[1]-spare, hi[1]+spare)
	o.grid(d, at, front, wideMM, lo[1]-spare, hi[1]+spare)
	k := newKey(d, 40, d.h+14)
	for i, c := range o.Curves {
		var line [][2]float64
		for _, p := range c.At {
			if p[1] >= lo[1] {
				line = append(line, at(p))
			}
		}
		h := handOf(i)
		d.curve(line, h.colour, 1.8, h.dash)
		k.entry(c.Name, func(x, y float64) { d.line(x, y, x+24, y, h.colour, 1.8, h.dash) })
	}
	if len(o.Form) > 1 {
		k.entry("dress form", func(x, y float64) { d.rect(x, y-5, 24, 10, inkForm) })
	}
	k.close()
	return d.svg(o.Title)
}

// upper returns the box of what lies above a height.
func (o Outlines) upper(above float64) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), above}, [2]float64{math.Inf(-1), above}
	for _, c := range o.Curves {
		for _, p := range c.At {
			if p[1] >= above {
				lo[0], hi[0], hi[1] = math.Min(lo[0], p[0]), math.Max(hi[0], p[0]), math.Max(hi[1], p[1])
			}
		}
	}
	return lo, hi
}

// form fills the form from its front to the right edge, between two heights.
func (o Outlines) form(d *drawing, at func([2]float64) [2]float64, back, low, high float64) {
	var ring [][2]float64
	for _, p := range o.Form {
		if p[1] >= low && p[1] <= high && p[0] >= back {
			ring = append(ring, at(p))
		}
	}
	if len(ring) < 2 {
		return
	}
	first, last := ring[0], ring[len(ring)-1]
	ring = append(ring, [2]float64{chartWide, last[1]}, [2]float64{chartWide, first[1]})
	d.path(ring, "none", 0, "", inkForm)
}

// grid draws lines every 5 cm, or every 2 inches, with their names.
func (o Outlines) grid(d *drawing, at func([2]float64) [2]float64, front, wideMM, low, high float64) {
	step, unit, one := 50.0, "cm", 10.0 // mm
	if o.Inches {
		step, unit, one = 50.8, "in", 25.4
	}
	for v := math.Ceil(low/step) * step; v <= high; v += step {
		y := at([2]float64{0, v})[1]
		d.line(40, y, chartWide, y, inkFaint, 1, "")
		d.words(34, y+4, short(v/one), "end", letters, inkMid)
	}
	bottom := at([2]float64{0, low})[1]
	for v := math.Ceil((front-wideMM)/step) * step; v <= front; v += step {
		x := at([2]float64{v, 0})[0]
		d.line(x, chartTop, x, bottom, inkFaint, 1, "")
		d.words(x, bottom+14, short(v/one), "middle", letters, inkMid)
	}
	d.words(0, chartTop-4, "height above the waist, "+unit, "start", letters, inkMid)
	d.words(40, bottom+30, "← forward, "+unit, "start", letters, inkMid)
}
