package lattice

import (
	"cowl/mesh/polyline"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Slit is a straight cut without width, from From to To (m). It parts the cells
// that it runs right through: their nodes beside the cut are doubled, so that
// either side hangs on its own. It ends at the last cell it crosses whole, up
// to a cell short of To. Begin it outside the outline.
//
// Doubling the nodes of parted cells is the virtual node algorithm of N.
// Molino, Z. Bao, R. Fedkiw, "A virtual node algorithm for changing mesh
// topology during simulation", ACM Trans. Graphics 23(3) (2004).
type Slit struct {
	From, To r2.Vec
	Dart     []r2.Vec // what is cut out about it: end of a leg, tip, end of the other leg, m; nil: nothing
}

// halves holds what slits have parted.
type halves struct {
	loose map[int]bool  // covers whose low corner hangs on nothing else; nil: there are no slits
	sides map[int][]int // box place → covers of a parted cell
}

// aside moves a slit off the crossings that it would run through, lattice units.
const aside = 0.03

// slit returns the cloth of a cell, in two parts where a slit runs through.
func (l *Lattice) slit(cell []r2.Vec) [][]r2.Vec {
	out := [][]r2.Vec{cell}
	for _, s := range l.Slits {
		var next [][]r2.Vec
		for _, p := range out {
			next = append(next, l.parted(p, s)...)
		}
		out = next
	}
	return out
}

// darted reports whether a dart took cloth of a cell of which the sides are left.
func (l *Lattice) darted(cell []r2.Vec, sides [][]r2.Vec) bool {
	if len(l.Slits) == 0 {
		return false
	}
	gone := polyline.Area(cell)
	for _, p := range sides {
		gone -= polyline.Area(p)
	}
	return gone > sliver
}

// parted returns a polygon (lattice units) in two if the slit runs right through, and
// without the dart that is cut out about the slit.
func (l *Lattice) parted(p []r2.Vec, s Slit) [][]r2.Vec {
	a, d := l.units(s.From), r2.Sub(l.units(s.To), l.units(s.From))
	n := r2.Unit(r2.Vec{X: -d.Y, Y: d.X})
	at := r2.Dot(n, a) + aside
	left, right := polyline.Clip(p, n, at), polyline.Clip(p, r2.Scale(-1, n), -at)
	both := holds(left) && holds(right)
	if both && !crossed(p, a, d, n, at) || !both && s.Dart == nil {
		return [][]r2.Vec{p}
	}
	if s.Dart != nil {
		left, right = l.besideDart(left, s.Dart, n, n), l.besideDart(right, s.Dart, r2.Scale(-1, n), n)
	}
	return slices.DeleteFunc([][]r2.Vec{left, right}, func(p []r2.Vec) bool { return !holds(p) })
}

// units returns a flat place in lattice units.
func (l *Lattice) units(p r2.Vec) r2.Vec {
	u, v := l.local(p)
	return r2.Vec{X: u, Y: v}
}

// crossed reports whether the slit, from a by d, runs right through a polygon, over
// whose line n·p = at it lies.
func crossed(p []r2.Vec, a, d, n r2.Vec, at float64) bool {
	lo, hi := math.Inf(1), math.Inf(-1) // of the cut, along the slit
	for k, v := range p {
		w := p[(k+1)%len(p)]
		x, y := r2.Dot(n, v)-at, r2.Dot(n, w)-at
		if x*y > 0 || x == y {
			continue
		}
		t := r2.Dot(r2.Sub(r2.Add(v, r2.Scale(x/(x-y), r2.Sub(w, v))), a), d) / r2.Norm2(d)
		lo, hi = math.Min(lo, t), math.Max(hi, t)
	}
	return lo >= 0 && hi <= 1 && lo < hi
}

// holds reports whether a polygon holds cloth.
func holds(p []r2.Vec) bool { return len(p) >= 3 && polyline.Area(p) > sliver }

// besideDart clips a dart off what lies on the side of its slit where out points. The
// dart is moved aside with the slit, along across.
func (l *Lattice) besideDart(p, dart []r2.Vec, out, across r2.Vec) []r2.Vec {
	tip := l.units(dart[1])
	leg := r2.Sub(l.units(dart[0]), tip)
	if r2.Dot(leg, out) < 0 {
		leg = r2.Sub(l.units(dart[2]), tip)
	}
	n := r2.Unit(r2.Vec{X: -leg.Y, Y: leg.X})
	if r2.Dot(n, out) < 0 {
		n = r2.Scale(-1, n)
	}
	return polyline.Clip(p, n, r2.Dot(n, r2.Add(tip, r2.Scale(aside, across))))
}

// part numbers the nodes of a lattice with slits. A cell is known by its low corner, so
// where the tip of a slit lies below or beside that, and both sides of the cell would
// share it, that of the one goes loose.
func (l *Lattice) part() {
	l.loose = map[int]bool{}
	for again := true; again; {
		again = false
		l.Rest = nil
		l.numberSides()
		for _, sides := range l.sides {
			low := map[int32]bool{}
			for _, k := range sides {
				if low[l.cells[k].node[0]] {
					l.loose[k], again = true, true
				}
				low[l.cells[k].node[0]] = true
			}
		}
	}
	l.parts = nil
	for k, c := range l.cells {
		l.split(c.i, c.j, k, l.met(c))
	}
}

// met returns the polygon of a cover with the corners that parted neighbours
// have on its sides, so that the skin has no loose corner at the tip of a slit.
func (l *Lattice) met(c cover) []r2.Vec {
	p := c.poly
	if l.sides[l.place(c.i, c.j)] != nil {
		return p
	}
	for _, step := range [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		i, j := c.i+step[0], c.j+step[1]
		if i < 0 || j < 0 {
			continue
		}
		for _, k := range l.sides[l.place(i, j)] {
			for _, v := range l.cells[k].poly {
				p = with(p, v)
			}
		}
	}
	return p
}

// with returns the polygon with v as a corner if it lies within one of its sides.
func with(p []r2.Vec, v r2.Vec) []r2.Vec {
	const on = 1e-7
	for k, a := range p {
		b := p[(k+1)%len(p)]
		d, w := r2.Sub(b, a), r2.Sub(v, a)
		long := r2.Norm(d)
		if long < on || math.Abs(r2.Cross(d, w)) > on*long {
			continue
		}
		if t := r2.Dot(d, w) / long; t > on && t < long-on {
			return slices.Insert(slices.Clone(p), k+1, v)
		}
	}
	return p
}

// sideOf returns the low node of the side of a parted cell that holds q
// (lattice units), or of the nearer one.
func (l *Lattice) sideOf(sides []int, q r2.Vec) int32 {
	best, least := sides[0], math.Inf(1)
	for _, k := range sides {
		if d := off(l.cells[k].poly, q); d < least {
			best, least = k, d
		}
	}
	return l.cells[best].node[0]
}

// off is how far q lies outside a convex counter-clockwise polygon.
func off(p []r2.Vec, q r2.Vec) float64 {
	worst := 0.0
	for k, a := range p {
		d := r2.Sub(p[(k+1)%len(p)], a)
		if n := r2.Norm(d); n > 0 {
			worst = math.Max(worst, -r2.Cross(d, r2.Sub(q, a))/n)
		}
	}
	return worst
}

// shore tells the sides of a slit apart at a point of the skin: the crossings
// that hold it, in rising order. Without slits it is the same everywhere.
func (l *Lattice) shore(p Point) (out [3]int32) {
	if l.loose == nil {
		return out
	}
	const held = 1e-6
	out = [3]int32{None, None, None}
	for k, w := range p.Weight {
		if w > held {
			out[k] = p.Node[k]
		}
	}
	slices.Sort(out[:])
	return out
}
