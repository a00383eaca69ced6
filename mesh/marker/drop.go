package marker

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// column is the width of the columns in which heights are kept, m.
const column = 0.004

// outline is a turned cut line with the lowest and highest place in each
// column.
type outline struct {
	turn    float64
	shift   r2.Vec
	cut     []r2.Vec
	lo, hi  []float64
	w, tall float64
}

// newOutline turns a cut line and takes its heights.
func newOutline(cut []r2.Vec, turn float64) outline {
	o := outline{turn: turn}
	o.cut, o.shift = turned(cut, turn)
	for _, v := range o.cut {
		o.w, o.tall = max(o.w, v.X), max(o.tall, v.Y)
	}
	n := max(int(math.Ceil(o.w/column-1e-9)), 1)
	o.lo, o.hi = make([]float64, n), make([]float64, n)
	for k := range n {
		o.lo[k], o.hi[k] = math.Inf(1), math.Inf(-1)
	}
	for i, a := range o.cut {
		o.cover(a, o.cut[(i+1)%len(o.cut)])
	}
	return o
}

// cover takes the heights of a side into the columns it runs through.
func (o *outline) cover(a, b r2.Vec) {
	if a.X > b.X {
		a, b = b, a
	}
	last := len(o.lo) - 1
	for k := min(int(a.X/column), last); k <= min(int(b.X/column), last); k++ {
		for _, x := range []float64{max(a.X, float64(k)*column), min(b.X, float64(k+1)*column)} {
			y := a.Y
			if b.X > a.X {
				y += (b.Y - a.Y) * min(max((x-a.X)/(b.X-a.X), 0), 1)
			} else {
				o.lo[k], o.hi[k] = min(o.lo[k], b.Y), max(o.hi[k], b.Y)
			}
			o.lo[k], o.hi[k] = min(o.lo[k], y), max(o.hi[k], y)
		}
	}
}

// drop returns where the outline comes to lie lowest on the heights so far:
// columns from the left, and how high. It takes the first of equal places.
func (o *outline) drop(top []float64, width float64) (at int, y float64) {
	y = math.Inf(1)
	for j := 0; float64(j)*column+o.w <= width+1e-9; j++ {
		rest := 0.0
		for k, lo := range o.lo {
			rest = max(rest, top[j+k]-lo)
			if rest >= y {
				break
			}
		}
		if rest < y-1e-9 {
			at, y = j, rest
		}
	}
	return at, y
}

// mostOrders is up to how many blanks every order is tried; more are laid
// large ones first.
const mostOrders = 4

// orders lists the orders in which blanks are laid.
func orders(b []blank) [][]int {
	first := make([]int, len(b))
	for i := range first {
		first[i] = i
	}
	slices.SortStableFunc(first, func(i, j int) int {
		switch a, c := area(b[i].cut), area(b[j].cut); {
		case a > c:
			return -1
		case a < c:
			return 1
		}
		return 0
	})
	if len(b) > mostOrders {
		return [][]int{first}
	}
	var out [][]int
	var grow func(head, rest []int)
	grow = func(head, rest []int) {
		if len(rest) == 0 {
			out = append(out, slices.Clone(head))
			return
		}
		for i := range rest {
			left := append(slices.Clone(rest[:i]), rest[i+1:]...)
			grow(append(slices.Clone(head), rest[i]), left)
		}
	}
	grow(nil, first)
	return out
}

// search lays the blanks in one order, with every choice of turns, and keeps
// what is shorter than l.
func search(l *Marker, blanks []blank, order []int) {
	width := l.Cloth.Width
	shapes := make([][]outline, len(blanks))
	for _, i := range order {
		for _, t := range blanks[i].turns(l.Cloth) {
			shapes[i] = append(shapes[i], newOutline(blanks[i].cut, t))
		}
	}
	columns := int(math.Ceil(width/column)) + 1
	var try func(n int, top []float64, length float64, placed []Placed)
	try = func(n int, top []float64, length float64, placed []Placed) {
		if length >= l.Length-1e-9 {
			return
		}
		if n == len(order) {
			l.Length, l.Placed = length, slices.Clone(placed)
			return
		}
		b := blanks[order[n]]
		for _, o := range shapes[order[n]] {
			at, y := o.drop(top, width)
			if math.IsInf(y, 1) {
				continue
			}
			next := slices.Clone(top)
			for k, hi := range o.hi {
				next[at+k] = y + hi
			}
			try(n+1, next, max(length, y+o.tall), append(placed, o.placed(b, r2.Vec{X: float64(at) * column, Y: y})))
		}
	}
	try(0, make([]float64, columns), 0, nil)
}

// placed returns the blank as it lies with the corner of its box at c.
func (o *outline) placed(b blank, c r2.Vec) Placed {
	p := Placed{Piece: b.piece, Copy: b.copy, Part: b.part, Turn: o.turn, Shift: r2.Add(o.shift, c)}
	for _, v := range b.cut {
		p.Cut = append(p.Cut, p.On(v))
	}
	for _, v := range b.join {
		p.Join = append(p.Join, p.On(v))
	}
	return p
}
