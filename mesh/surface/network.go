package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// network is the edges of the outline and of the fold line.
type network struct {
	beside [][]int32 // len = vertices; the vertices at the other ends
}

// network gathers the edges that have one triangle, or front and facing beside them.
func (b *base) network() network {
	type sides struct{ first, count int32 }
	met := map[[2]int32]sides{}
	var order [][2]int32
	kept := map[[2]int32]bool{}
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
			kept[e] = s.count == 1 || b.facing[s.first] != b.facing[k]
		}
	}
	n := network{make([][]int32, len(b.pos))}
	for _, e := range order {
		if kept[e] {
			n.beside[e[0]] = append(n.beside[e[0]], e[1])
			n.beside[e[1]] = append(n.beside[e[1]], e[0])
		}
	}
	return n
}

// bend is the angle of the outline from which it has a corner there, rad.
const bend = 25 * math.Pi / 180

// lines returns the network in lines that end at corners and where others meet
// them. A ring without a corner ends where it begins.
func (n network) lines(b *base) [][]int32 {
	ends := make([]bool, len(n.beside))
	for v, near := range n.beside {
		ends[v] = len(near) > 0 && (len(near) != 2 || n.corner(b, int32(v)))
	}
	done := map[[2]int32]bool{}
	var out [][]int32
	walk := func(v, w int32) {
		line := []int32{v}
		for {
			done[[2]int32{v, w}], done[[2]int32{w, v}] = true, true
			line = append(line, w)
			if ends[w] || w == line[0] {
				break
			}
			v, w = w, n.other(w, v)
		}
		out = append(out, line)
	}
	for _, corners := range []bool{true, false} {
		for v, near := range n.beside {
			for _, w := range near {
				if (ends[v] || !corners) && !done[[2]int32{int32(v), w}] {
					walk(int32(v), w)
				}
			}
		}
	}
	return out
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
	in := r2.Sub(b.flat[v], n.far(b, v, n.beside[v][0]))
	out := r2.Sub(n.far(b, v, n.beside[v][1]), b.flat[v])
	return math.Abs(math.Atan2(r2.Cross(in, out), r2.Dot(in, out))) > bend
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
