package stage

import (
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// rimLift brings the rim before the cloth it lies on, m.
const rimLift = 0.0008

// edge is the two vertices of an edge at which the cloth ends for the eye.
type edge [2]int32

// rims lists the edges where the cloth is cut, and if asked for where the facing
// folds in, in the order met, so that pictures repeat bit for bit.
func rims(s *mesh.Sheet, folds bool) []edge {
	type sides struct {
		first, count int
		fold         bool // front on one side, facing on the other
	}
	var order []edge
	at := map[edge]sides{}
	for k, t := range s.Tris {
		for i := range 3 {
			e := edge{min(t[i], t[(i+1)%3]), max(t[i], t[(i+1)%3])}
			b, met := at[e]
			if !met {
				order = append(order, e)
				b.first = k
			}
			at[e] = sides{b.first, b.count + 1, b.fold || s.Facing[b.first] != s.Facing[k]}
		}
	}
	var out []edge
	for _, e := range order {
		if b := at[e]; b.count == 1 || folds && b.fold {
			out = append(out, e)
		}
	}
	return out
}

// chained joins edges to lines that end where not just two edges meet, in the
// order met. A ring ends where it begins.
func chained(edges []edge) [][]int32 {
	beside := map[int32][]int32{}
	for _, e := range edges {
		beside[e[0]], beside[e[1]] = append(beside[e[0]], e[1]), append(beside[e[1]], e[0])
	}
	done := map[edge]bool{}
	var out [][]int32
	walk := func(v, w int32) {
		line := []int32{v}
		for !done[edge{min(v, w), max(v, w)}] {
			done[edge{min(v, w), max(v, w)}] = true
			line = append(line, w)
			if near := beside[w]; len(near) == 2 {
				v, w = w, near[0]+near[1]-v
			}
		}
		if len(line) > 1 {
			out = append(out, line)
		}
	}
	for _, rings := range []bool{false, true} {
		for _, e := range edges {
			for k := range 2 {
				if rings || len(beside[e[k]]) != 2 {
					walk(e[k], e[1-k])
				}
			}
		}
	}
	return out
}

// rimPoint returns the place of vertex i, a little nearer to the eye than the
// cloth.
func rimPoint(s *mesh.Sheet, i int32, eye r3.Vec) seamPoint {
	p := s.Pos[i]
	return seamPoint{at: r3.Add(p, r3.Scale(rimLift, r3.Unit(r3.Sub(eye, p))))}
}
