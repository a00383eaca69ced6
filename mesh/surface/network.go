package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// network is the edges of the outline and of the fold line.
type network struct {
	beside  [][]int32          // len = vertices; the vertices at the other ends
	fold    map[[2]int32]bool  // edges with front and facing beside them, the lower end first
	through map[int32][2]int32 // where the fold line goes on as outline: the vertices before and behind
}

// network gathers the edges that have one triangle, or front and facing beside them.
func (b *base) network() network {
	type sides struct{ first, count int32 }
	met := map[[2]int32]sides{}
	var order [][2]int32
	kept, fold := map[[2]int32]bool{}, map[[2]int32]bool{}
	for k, t := range b.tris {
		for i := range 3 {
			e := [2]int32{min(t[i], t[(i+1)%3]), max(t[i], t[(i+1)%3])}
			s, ok := met[e]
			if !ok {
				order = append(order, e)
				s.first = int32(k)
			}
			s.count++
			met[e] = s
			fold[e] = b.facing[s.first] != b.facing[k]
			kept[e] = s.count == 1 || fold[e]
		}
	}
	n := network{make([][]int32, len(b.pos)), fold, map[int32][2]int32{}}
	for _, e := range order {
		if kept[e] {
			n.beside[e[0]] = append(n.beside[e[0]], e[1])
			n.beside[e[1]] = append(n.beside[e[1]], e[0])
		}
	}
	for v := range n.beside {
		n.goOn(b, int32(v))
	}
	return n
}

// folds reports whether front and facing meet along the edge from v to w.
func (n network) folds(v, w int32) bool { return n.fold[[2]int32{min(v, w), max(v, w)}] }

// goOn notes where the fold line, on ending at v, goes on straight as outline:
// beside the cowl point the facing is clipped free, and the neckline is one line all the same.
func (n network) goOn(b *base, v int32) {
	if len(n.beside[v]) != 3 {
		return
	}
	least := bend
	for i, w := range n.beside[v] {
		x, y := n.beside[v][(i+1)%3], n.beside[v][(i+2)%3]
		if !n.folds(v, w) || n.folds(v, x) || n.folds(v, y) {
			continue
		}
		for _, to := range []int32{x, y} {
			if turn := n.turn(b, w, v, to); turn < least {
				least, n.through[v] = turn, [2]int32{w, to}
			}
		}
	}
}

// bend is the angle of the outline from which it has a corner there, rad.
const bend = 25 * math.Pi / 180

// lines returns the network in lines that end at corners and where others meet
// them. A ring without a corner ends where it begins. Lines that others meet
// come first.
func (n network) lines(b *base) [][]int32 {
	ends := make([]bool, len(n.beside))
	for v, near := range n.beside {
		ends[v] = len(near) > 0 && (len(near) != 2 || n.corner(b, int32(v)))
	}
	done := map[[2]int32]bool{}
	var met, others [][]int32
	walk := func(v, w int32) {
		line := []int32{v}
		for {
			done[[2]int32{v, w}], done[[2]int32{w, v}] = true, true
			line = append(line, w)
			on := n.past(v, w)
			if ends[w] && on < 0 || w == line[0] {
				break
			}
			if on < 0 {
				on = n.other(w, v)
			}
			v, w = w, on
		}
		if n.passes(line) {
			met = append(met, line)
		} else {
			others = append(others, line)
		}
	}
	for _, corners := range []bool{true, false} {
		for v, near := range n.beside {
			for _, w := range near {
				if (ends[v] && n.past(w, int32(v)) < 0 || !corners) && !done[[2]int32{int32(v), w}] {
					walk(int32(v), w)
				}
			}
		}
	}
	return append(met, others...)
}

// passes reports whether others meet a line between its ends.
func (n network) passes(line []int32) bool {
	for k := 1; k < len(line)-1; k++ {
		if _, ok := n.through[line[k]]; ok {
			return true
		}
	}
	return false
}

// past returns the vertex to which the line from v goes on beyond w, where
// others meet it there; -1 where they do not.
func (n network) past(v, w int32) int32 {
	switch on, ok := n.through[w]; {
	case ok && on[0] == v:
		return on[1]
	case ok && on[1] == v:
		return on[0]
	}
	return -1
}

// other returns the neighbour of v that is not from.
func (n network) other(v, from int32) int32 {
	if n.beside[v][0] == from {
		return n.beside[v][1]
	}
	return n.beside[v][0]
}

// corner reports whether the two edges at v make a corner.
func (n network) corner(b *base, v int32) bool {
	return n.turn(b, n.beside[v][0], v, n.beside[v][1]) > bend
}

// turn is the angle, rad, by which the way from one vertex over v to another bends there.
func (n network) turn(b *base, from, v, to int32) float64 {
	in := r2.Sub(b.flat[v], n.far(b, v, from))
	out := r2.Sub(n.far(b, v, to), b.flat[v])
	return math.Abs(math.Atan2(r2.Cross(in, out), r2.Dot(in, out)))
}

// far returns the flat place, m, at which the line from v over w has gone on
// for a tenth of a spacing: cutting leaves edges too short to have a direction.
func (n network) far(b *base, v, w int32) r2.Vec {
	at := v
	for range 8 {
		if r2.Norm(r2.Sub(b.flat[w], b.flat[v])) > 0.1*b.spacing || len(n.beside[w]) != 2 {
			break
		}
		at, w = w, n.other(w, at)
	}
	return b.flat[w]
}
