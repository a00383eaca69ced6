package page

import (
	"math"
	"slices"
)

// Lines is a chart of values over a quantity, one line a series.
type Lines struct {
	Title  string
	X, Y   string // names of the axes with their units
	Series []Series
	Bands  []Band
	Zero   bool // the upright scale begins at zero
	Whole  bool // values are counts
}

// Series is one line.
type Series struct {
	Name   string
	Points []Point
	Loose  bool // marks without a line
}

// Point is a mean with the half length of its bar, and the values behind it.
type Point struct {
	X, Y, Half float64
	Dots       []float64
}

// Band is the room between two bounds.
type Band struct {
	Low, High     string // their names
	X             []float64
	LowAt, HighAt []float64
}

// Size and margins of a chart.
const (
	chartWide   = 440.0
	chartTall   = 290.0
	chartLeft   = 52.0
	chartRight  = 14.0
	chartTop    = 44.0
	chartBottom = 46.0
	letters     = 13.0
)

// scale takes values to a stretch of the drawing.
type scale struct{ lo, hi, from, to float64 }

func (s scale) at(v float64) float64 { return s.from + (v-s.lo)/(s.hi-s.lo)*(s.to-s.from) }

// axis makes a scale over all values and its ticks.
func axis(values []float64, n int, from, to float64) (scale, []float64) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range values {
		if !math.IsNaN(v) {
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	t := ticks(lo, hi, n)
	return scale{t[0], t[len(t)-1], from, to}, t
}

// SVG draws the chart.
func (c Lines) SVG() string {
	d := &drawing{w: chartWide, h: chartTall}
	d.bold(0, 16, c.Title, 14)
	bottom := chartTall - chartBottom
	x, xt := axis(c.all(func(p Point) []float64 { return []float64{p.X} }, nil), 7, chartLeft, chartWide-chartRight)
	x, xt = c.tight(x, xt)
	y, yt := axis(c.ys(), 5, bottom, chartTop)
	if c.Whole {
		y, yt = wholeAxis(y, bottom)
	}
	c.grid(d, x, y, xt, yt)
	for _, b := range c.Bands {
		b.draw(d, x, y)
	}
	for i, s := range c.Series {
		s.draw(d, i, len(c.Series), x, y)
	}
	c.key(d)
	return d.svg(c.Title)
}

// all gathers what get takes of every point.
func (c Lines) all(get func(Point) []float64, more []float64) []float64 {
	for _, s := range c.Series {
		for _, p := range s.Points {
			more = append(more, get(p)...)
		}
	}
	return more
}

func (c Lines) ys() []float64 {
	var more []float64
	if c.Zero {
		more = append(more, 0)
	}
	for _, b := range c.Bands {
		more = append(append(more, b.LowAt...), b.HighAt...)
	}
	return c.all(func(p Point) []float64 { return append([]float64{p.Y - p.Half, p.Y + p.Half}, p.Dots...) }, more)
}

// tight puts a tick under each place where there are points, if they are few.
func (c Lines) tight(x scale, t []float64) (scale, []float64) {
	seen := map[float64]bool{}
	var at []float64
	for _, v := range c.all(func(p Point) []float64 { return []float64{p.X} }, nil) {
		if !seen[v] {
			seen[v] = true
			at = append(at, v)
		}
	}
	if len(at) == 0 || len(at) > 9 {
		return x, t
	}
	slices.Sort(at)
	lo, hi := at[0], at[len(at)-1]
	for k := 1; k < len(at); k++ {
		if at[k]-at[k-1] < (hi-lo)/12 {
			return x, t // their names would run into each other
		}
	}
	pad := 0.06 * (hi - lo)
	if pad == 0 {
		pad = 1
	}
	return scale{lo - pad, hi + pad, x.from, x.to}, at
}

// wholeAxis is a scale of counts from 0.
func wholeAxis(y scale, bottom float64) (scale, []float64) {
	top := math.Max(3, math.Ceil(y.hi))
	var t []float64
	for k := 0.0; k <= top; k += math.Ceil(top / 6) {
		t = append(t, k)
	}
	return scale{0, math.Max(top, t[len(t)-1]), bottom, chartTop}, t
}

// grid draws the axes.
func (c Lines) grid(d *drawing, x, y scale, xt, yt []float64) {
	for _, v := range yt {
		d.line(chartLeft, y.at(v), chartWide-chartRight, y.at(v), inkFaint, 1, "")
		d.words(chartLeft-6, y.at(v)+4, short(v), "end", letters, inkMid)
	}
	bottom := y.from
	for _, v := range xt {
		d.line(x.at(v), bottom, x.at(v), bottom+4, inkMid, 1, "")
		d.words(x.at(v), bottom+17, short(v), "middle", letters, inkMid)
	}
	d.line(chartLeft, bottom, chartWide-chartRight, bottom, inkMid, 1, "")
	d.words((chartLeft+chartWide-chartRight)/2, bottom+36, c.X, "middle", letters, inkMid)
	d.words(chartLeft-6, chartTop-12, c.Y, "end", letters, inkMid)
}

// draw fills the band between its bounds.
func (b Band) draw(d *drawing, x, y scale) {
	var low, high, ring [][2]float64
	for i, v := range b.X {
		low = append(low, [2]float64{x.at(v), y.at(b.LowAt[i])})
		high = append(high, [2]float64{x.at(v), y.at(b.HighAt[i])})
	}
	ring = append(ring, low...)
	for i := len(high) - 1; i >= 0; i-- {
		ring = append(ring, high[i])
	}
	d.path(ring, "none", 0, "", inkBand)
	d.path(low, inkMid, 1, "5 3", "none")
	d.path(high, inkMid, 1, "1 2.5", "none")
}

// draw draws the i-th of n series. Where several share an x they stand a little
// apart.
func (s Series) draw(d *drawing, i, n int, x, y scale) {
	h := handOf(i)
	aside := (float64(i) - float64(n-1)/2) * 3
	var line [][2]float64
	for _, p := range s.Points {
		if math.IsNaN(p.Y) {
			continue
		}
		at := x.at(p.X) + aside
		for _, v := range p.Dots {
			if !math.IsNaN(v) {
				d.dot(at, y.at(v), 2, "none", h.colour)
			}
		}
		line = append(line, [2]float64{at, y.at(p.Y)})
		if p.Half > 0 {
			d.line(at, y.at(p.Y-p.Half), at, y.at(p.Y+p.Half), h.colour, 1.5, "")
		}
	}
	if !s.Loose {
		d.path(line, h.colour, 1.8, h.dash, "none")
	}
	for _, q := range line {
		d.mark(i, q[0], q[1], h.colour)
	}
}

// key names lines and bounds in rows under the chart.
func (c Lines) key(d *drawing) {
	k := newKey(d, chartLeft, chartTall+10)
	for i, s := range c.Series {
		if s.Name != "" {
			k.entry(s.Name, func(x, y float64) {
				if !s.Loose {
					d.line(x, y, x+24, y, handOf(i).colour, 1.8, handOf(i).dash)
				}
				d.mark(i, x+12, y, handOf(i).colour)
			})
		}
	}
	for _, b := range c.Bands {
		k.entry(b.Low, func(x, y float64) { d.line(x, y, x+24, y, inkMid, 1, "5 3") })
		k.entry(b.High, func(x, y float64) { d.line(x, y, x+24, y, inkMid, 1, "1 2.5") })
	}
	k.close()
}
