package lattice

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// numberSides gives a node to every set of cell corners that hang together.
func (l *Lattice) numberSides() {
	at := map[int][]int{}
	for k, c := range l.cells {
		at[l.place(c.i, c.j)] = append(at[l.place(c.i, c.j)], k)
	}
	l.sides = map[int][]int{}
	for place, k := range at {
		if len(k) > 1 {
			l.sides[place] = k
		}
	}
	g := newGroups(4 * len(l.cells))
	for k, c := range l.cells {
		for _, m := range at[l.place(c.i+1, c.j)] {
			if l.hang(k, m, false) {
				l.tie(g, 4*k+1, 4*m)
				l.tie(g, 4*k+3, 4*m+2)
			}
		}
		for _, m := range at[l.place(c.i, c.j+1)] {
			if l.hang(k, m, true) {
				l.tie(g, 4*k+2, 4*m)
				l.tie(g, 4*k+3, 4*m+1)
			}
		}
	}
	l.nodes(at, g)
}

// tie joins a corner with the corner b of a cover above or beside it, unless that is a
// loose low corner.
func (l *Lattice) tie(g groups, a, b int) {
	if b%4 != 0 || !l.loose[b/4] {
		g.join(a, b)
	}
}

// nodes makes the nodes, place by place.
func (l *Lattice) nodes(at map[int][]int, g groups) {
	l.index = make([]int32, l.size[0]*l.size[1])
	for j := range l.size[1] {
		for i := range l.size[0] {
			corners, parted := l.around(at, i, j)
			first, made := None, map[int]int32{}
			for _, c := range corners {
				root := g.root(c)
				if !parted {
					root = g.root(corners[0])
				}
				node, ok := made[root]
				if !ok {
					node = l.node(i, j)
					made[root] = node
					if first == None {
						first = node
					}
				}
				l.cells[c/4].node[c%4] = node
			}
			l.index[l.place(i, j)] = first
		}
	}
	for place, k := range at {
		l.index[place] = l.cells[k[0]].node[0]
	}
}

// around lists the cell corners at box place (i, j), and whether one of the
// cells is parted.
func (l *Lattice) around(at map[int][]int, i, j int) (corners []int, parted bool) {
	for n := range 4 {
		a, b := i-n%2, j-n/2
		if a < 0 || b < 0 {
			continue
		}
		k := at[l.place(a, b)]
		parted = parted || len(k) > 1
		for _, c := range k {
			parted = parted || l.cells[c].cut
			corners = append(corners, 4*c+n)
		}
	}
	return corners, parted
}

// hang reports whether the cloth of two neighbouring covers hangs together:
// always where no slit runs and no dart is cut, else where both reach the same part of their
// common side. m lies above k, or beside it.
func (l *Lattice) hang(k, m int, above bool) bool {
	a, b := l.cells[k], l.cells[m]
	if l.sides[l.place(a.i, a.j)] == nil && l.sides[l.place(b.i, b.j)] == nil && !a.cut && !b.cut {
		return true
	}
	side := float64(b.i + l.lo[0])
	if above {
		side = float64(b.j + l.lo[1])
	}
	lo1, hi1 := reach(a.poly, side, above)
	lo2, hi2 := reach(b.poly, side, above)
	const least = 1e-6
	return math.Min(hi1, hi2)-math.Max(lo1, lo2) > least
}

// reach returns the stretch of a polygon on the line u = side, or v = side.
func reach(p []r2.Vec, side float64, above bool) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, q := range p {
		on, along := q.X, q.Y
		if above {
			on, along = q.Y, q.X
		}
		if math.Abs(on-side) < 1e-9 {
			lo, hi = math.Min(lo, along), math.Max(hi, along)
		}
	}
	return lo, hi
}

// groups are sets of numbers that grow together (union by the smaller root).
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) root(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(i, j int) {
	i, j = g.root(i), g.root(j)
	g[max(i, j)] = min(i, j)
}
