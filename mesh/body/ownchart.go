package body

import (
	"math"
	"slices"

	"cowl/mesh/limit"
)

// Chart is a size chart of the user's own. A nil Chart is the built-in one, of which all
// methods tell too.
type Chart struct {
	Source string  // whose it is; may be empty
	Sizes  []int   // rising
	Bodies []Body  // one a size, of rising bust; what may be zero in a Body is, where the chart has it not
	Height float64 // m, of the wearers it is made for; 0: not stated
}

// From says whose the chart is.
func (c *Chart) From() string {
	if c == nil {
		return Source
	}
	return c.Source
}

// Numbers returns the size numbers in rising order.
func (c *Chart) Numbers() []int {
	if c == nil {
		return Sizes()
	}
	return slices.Clone(c.Sizes)
}

// For returns the height that the chart is made for, m; 0: it does not say.
func (c *Chart) For() float64 {
	if c == nil {
		return ChartHeight
	}
	return c.Height
}

// At returns the body of a size. Bust span, apex depth and slope that the chart has not are
// zero, "not taken". An unknown size is an error.
func (c *Chart) At(size int) (Body, error) {
	if c == nil {
		b, err := FromChart(size)
		return b.unruled(), err
	}
	k := slices.Index(c.Sizes, size)
	if k < 0 {
		return Body{}, limit.Errorf("size", "size %d, want one of %v, which your chart has, or give your own measurements",
			size, c.Sizes)
	}
	return c.Bodies[k], nil
}

// AtBust returns the body on the lines of the chart at a bust (m): between two sizes they
// are read, beyond the first and the last drawn on. A chart of one size has no lines.
func (c *Chart) AtBust(bust float64) (Body, error) {
	if c == nil {
		return AtBust(bust).unruled(), nil
	}
	if len(c.Sizes) < 2 {
		return Body{}, limit.Errorf("bust", "bust %v, but your chart has one size and no line to be read at it: give a size",
			limit.Metres(bust))
	}
	k, t := c.between(bust)
	from, to, out := c.Bodies[k], c.Bodies[k+1], Body{}
	for _, m := range Measures() {
		a, b := *m.In(&from), *m.In(&to)
		if !m.optional || a != 0 && b != 0 {
			*m.In(&out) = math.Round((a+t*(b-a))*1e5) / 1e5
		}
	}
	out.Bust = bust
	return out, nil
}

// SizeAt returns the size number at a bust (m), whole or not.
func (c *Chart) SizeAt(bust float64) float64 {
	switch {
	case c == nil:
		return SizeAt(bust)
	case len(c.Sizes) < 2:
		return float64(c.Sizes[0])
	}
	k, t := c.between(bust)
	from, to := float64(c.Sizes[k]), float64(c.Sizes[k+1])
	return from + t*(to-from)
}

// Holds reports whether a bust (m) lies between those of the smallest and the largest size.
func (c *Chart) Holds(bust float64) bool {
	if c == nil {
		return OnChart(bust)
	}
	return bust >= c.Bodies[0].Bust && bust <= c.Bodies[len(c.Bodies)-1].Bust
}

// between returns the size below a bust (m), so that there is one above it, and the share of
// the way to that; below 0 and above 1 off the ends. The chart has two sizes or more.
func (c *Chart) between(bust float64) (k int, share float64) {
	for k+2 < len(c.Bodies) && bust > c.Bodies[k+1].Bust {
		k++
	}
	return k, (bust - c.Bodies[k].Bust) / (c.Bodies[k+1].Bust - c.Bodies[k].Bust)
}

// unruled is b without what the rules of the draft have filled in.
func (b Body) unruled() Body {
	b.BustSpan, b.ApexDepth = 0, 0
	return b
}

// Optional reports whether a body may be without the measurement: zero means "not taken".
func (m Measure) Optional() bool { return m.optional }
