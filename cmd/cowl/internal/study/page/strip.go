package page

import "math"

// Strip is a chart of one line a case: each placing a dot, their mean a bar
// across, the bounds a band behind.
type Strip struct {
	Title string
	X     string // what is measured, with its unit
	Rows  []StripRow
	Zero  bool    // the scale holds zero
	Rule  float64 // where an upright line stands; NaN: none
	Dots  string  // what a dot is
	Mean  string  // what the bar is
	Band  string  // what the band is; empty: there is none
}

// StripRow is one case.
type StripRow struct {
	Name      string
	Dots      []float64
	Mean      float64 // NaN: none
	Low, High float64 // band; both NaN: none
}

// Sizes of a strip.
const (
	stripTop = 34.0
	stripRow = 26.0
	nameSize = 13.0
)

// names returns how much room the names of rows take, and the size of letters
// that fits them into two fifths of the drawing.
func names(all []string) (room, size float64) {
	size = nameSize
	for _, n := range all {
		room = math.Max(room, wide(n, size))
	}
	if most := 0.42 * chartWide; room > most {
		size = math.Max(9, size*most/room)
		room = most
	}
	return room + 10, size
}

// SVG draws the strip.
func (c Strip) SVG() string {
	d := &drawing{w: chartWide, h: stripTop + stripRow*float64(len(c.Rows)) + 40}
	d.bold(0, 16, c.Title, 14)
	var all []string
	var values []float64
	if c.Zero {
		values = append(values, 0)
	}
	if !math.IsNaN(c.Rule) {
		values = append(values, c.Rule)
	}
	for _, r := range c.Rows {
		all = append(all, r.Name)
		values = append(append(values, r.Dots...), r.Mean, r.Low, r.High)
	}
	room, size := names(all)
	x, t := axis(values, 5, room, chartWide-chartRight)
	bottom := stripTop + stripRow*float64(len(c.Rows))
	for _, v := range t {
		d.line(x.at(v), stripTop-6, x.at(v), bottom, inkFaint, 1, "")
		d.words(x.at(v), bottom+15, short(v), "middle", letters, inkMid)
	}
	if !math.IsNaN(c.Rule) {
		d.line(x.at(c.Rule), stripTop-6, x.at(c.Rule), bottom, inkDark, 1.2, "")
	}
	d.words((room+chartWide-chartRight)/2, bottom+32, c.X, "middle", letters, inkMid)
	for i, r := range c.Rows {
		r.draw(d, stripTop+stripRow*(float64(i)+0.5), x, size)
	}
	c.key(d)
	return d.svg(c.Title)
}

// draw draws one row about height y.
func (r StripRow) draw(d *drawing, y float64, x scale, size float64) {
	d.words(0, y+4, r.Name, "start", size, inkDark)
	if !math.IsNaN(r.Low) && !math.IsNaN(r.High) {
		from, to := x.at(math.Min(r.Low, r.High)), x.at(math.Max(r.Low, r.High))
		d.rect(from, y-7, math.Max(1, to-from), 14, inkBand)
		d.line(from, y-7, from, y+7, inkMid, 1, "")
		d.line(to, y-7, to, y+7, inkMid, 1, "")
	}
	for _, v := range r.Dots {
		if !math.IsNaN(v) {
			d.dot(x.at(v), y, 3, "none", handOf(0).colour)
		}
	}
	if !math.IsNaN(r.Mean) {
		d.line(x.at(r.Mean), y-9, x.at(r.Mean), y+9, handOf(0).colour, 3, "")
	}
}

func (c Strip) key(d *drawing) {
	k := newKey(d, 0, d.h+12)
	if c.Dots != "" {
		k.entry(c.Dots, func(x, y float64) { d.dot(x+12, y, 3, "none", handOf(0).colour) })
	}
	if c.Mean != "" {
		k.entry(c.Mean, func(x, y float64) { d.line(x+12, y-6, x+12, y+6, handOf(0).colour, 3, "") })
	}
	if c.Band != "" {
		k.entry(c.Band, func(x, y float64) { d.rect(x, y-5, 24, 10, inkBand) })
	}
	k.close()
}
