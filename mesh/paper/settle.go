package paper

import (
	"math"

	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	enough     = 0.022 // m, clearance at which a place is good; more is no better
	longGrain  = 0.07  // m, half length of the grain line where there is room
	shortGrain = 0.01  // m, half length below which it is not drawn any shorter
	labelWide  = 0.04  // m, half width of the room that is sought for the name
	labelHigh  = 0.012 // m, half height of it
	labelClear = 0.004 // m, around that room
)

// Settle places grain line and label where they keep clearest of lines and
// holes: the grain line, grain radians from +Y towards +X, on the right half
// of the wearer, the label on the left. Set Outline, Lines and Holes first.
func (p *Piece) Settle(grain float64) {
	lo, hi := Box(p.Outline)
	wide, high := hi.X-lo.X, hi.Y-lo.Y
	whole := p.Outline
	p.Outline = thinned(whole)
	defer func() { p.Outline = whole }()
	lines := p.obstacles()
	dir := r2.Vec{X: math.Sin(grain), Y: math.Cos(grain)}
	half := math.Min(longGrain, 0.3*math.Max(wide, high))
	want := r2.Vec{X: lo.X + 0.3*wide, Y: lo.Y + 0.45*high}
	for {
		mid, clear := p.place(bar(r2.Scale(half, dir)), want, lines)
		p.GrainLine = [2]r2.Vec{r2.Sub(mid, r2.Scale(half, dir)), r2.Add(mid, r2.Scale(half, dir))}
		if clear >= enough/2 || half <= shortGrain {
			break
		}
		half *= 0.8
	}
	p.settleLabel(append(lines, p.GrainLine[:]), r2.Vec{X: lo.X + 0.7*wide, Y: lo.Y + 0.45*high})
}

// settleLabel places the label clear of the lines, near want, and makes it
// smaller where there is little room.
func (p *Piece) settleLabel(lines [][]r2.Vec, want r2.Vec) {
	for scale := 1.0; ; scale *= 0.8 {
		x, y := labelWide*scale, labelHigh*scale
		room := append(bar(r2.Vec{X: x}), r2.Vec{X: -x, Y: -y}, r2.Vec{X: x, Y: -y}, r2.Vec{X: -x, Y: y}, r2.Vec{X: x, Y: y})
		var clear float64
		p.Label, clear = p.place(room, want, lines)
		p.LabelWide = 2 * x
		if clear >= labelClear || scale < 0.4 {
			return
		}
	}
}

// coarse is how many points of an outline are looked at when room is sought.
const coarse = 200

// thinned returns every so many points of an outline.
func thinned(outline []r2.Vec) []r2.Vec {
	step := (len(outline) + coarse - 1) / coarse
	if step <= 1 {
		return outline
	}
	var out []r2.Vec
	for i := 0; i < len(outline); i += step {
		out = append(out, outline[i])
	}
	return out
}

// place returns where a mark that covers the points shape (m, about its
// middle) keeps clearest of the lines, and how clear that is. Of places that
// are clear enough it takes the one nearest to want.
func (p *Piece) place(shape []r2.Vec, want r2.Vec, lines [][]r2.Vec) (at r2.Vec, clear float64) {
	const nx, ny = 24, 24
	lo, hi := Box(p.Outline)
	at, clear = want, math.Inf(-1)
	far := math.Inf(1)
	for j := 1; j < ny; j++ {
		for i := 1; i < nx; i++ {
			mid := r2.Vec{X: lo.X + (hi.X-lo.X)*float64(i)/nx, Y: lo.Y + (hi.Y-lo.Y)*float64(j)/ny}
			c := math.Min(enough, p.clearance(mid, shape, lines, clear-1e-6))
			d := r2.Norm(r2.Sub(mid, want))
			if c > clear+1e-6 || c > clear-1e-6 && d < far-1e-9 {
				at, clear, far = mid, c, d
			}
		}
	}
	return at, clear
}

// obstacles lists the lines that no mark may touch.
func (p *Piece) obstacles() [][]r2.Vec {
	lines := [][]r2.Vec{append(append([]r2.Vec(nil), p.Outline...), p.Outline[0])}
	for _, l := range p.Lines {
		lines = append(lines, l.Points)
	}
	for _, t := range p.Texts {
		half := r2.Vec{X: labelWide / 2}
		lines = append(lines, []r2.Vec{r2.Sub(t.At, half), r2.Add(t.At, half)})
	}
	for _, h := range p.Holes {
		lines = append(lines, []r2.Vec{h.At, h.At})
	}
	return lines
}

// clearance returns how far the nearest line lies from the shape set at mid,
// below zero if any of it lies outside the piece. It looks no further than for
// something no farther than enough: then the place is not good enough.
func (p *Piece) clearance(mid r2.Vec, shape []r2.Vec, lines [][]r2.Vec, enough float64) float64 {
	for _, s := range shape {
		if !polyline.Contains(p.Outline, r2.Add(mid, s)) {
			return -r2.Norm(r2.Sub(mid, shape[0])) - 1
		}
	}
	least := math.Inf(1)
	for _, s := range shape {
		v := r2.Add(mid, s)
		for _, l := range lines {
			for i := 1; i < len(l); i++ {
				least = min(least, polyline.Off(v, l[i-1], l[i]))
			}
			if least <= enough {
				return least
			}
		}
	}
	return least
}

// bar returns points along a straight mark about its middle, ends at ±half.
func bar(half r2.Vec) []r2.Vec {
	const n = 12
	s := make([]r2.Vec, n+1)
	for i := range s {
		s[i] = r2.Scale(float64(2*i)/n-1, half)
	}
	return s
}

// Box returns the corners of the smallest upright box around points, of which
// there is at least one.
func Box(points []r2.Vec) (lo, hi r2.Vec) {
	lo, hi = points[0], points[0]
	for _, v := range points {
		lo = r2.Vec{X: min(lo.X, v.X), Y: min(lo.Y, v.Y)}
		hi = r2.Vec{X: max(hi.X, v.X), Y: max(hi.Y, v.Y)}
	}
	return lo, hi
}
