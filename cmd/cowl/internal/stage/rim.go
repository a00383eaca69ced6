package stage

import (
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// rimLift brings the rim before the cloth it lies on, m.
const rimLift = 0.0008

// hem is an edge between two vertices at which the cloth may end for the eye.
type hem struct {
	ends [2]int32
	tris [2]int32 // on either side; the second is -1 at a cut edge
	fold bool     // front on one side, facing on the other
}

// hems lists the edges of all triangles in the order met, so that pictures
// repeat bit for bit.
func hems(s *mesh.Sheet) []hem {
	var out []hem
	at := map[[2]int32]int{}
	for k, t := range s.Tris {
		for i := range 3 {
			e := [2]int32{min(t[i], t[(i+1)%3]), max(t[i], t[(i+1)%3])}
			j, met := at[e]
			if !met {
				at[e] = len(out)
				out = append(out, hem{ends: e, tris: [2]int32{int32(k), -1}})
				continue
			}
			out[j].tris[1] = int32(k)
			out[j].fold = s.Facing[out[j].tris[0]] != s.Facing[k]
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

// rimEnds draws short lines where the cloth ends: at the cut edges and the fold
// of the facing.
func rimEnds(s *mesh.Sheet, hems []hem, eye r3.Vec, draw func(a, b seamPoint)) {
	for _, h := range hems {
		if h.fold || h.tris[1] < 0 {
			draw(rimPoint(s, h.ends[0], eye), rimPoint(s, h.ends[1], eye))
		}
	}
}

// rimTurns draws short lines where the cloth turns out of sight.
func rimTurns(s *mesh.Sheet, hems []hem, eye r3.Vec, draw func(a, b seamPoint)) {
	to := facings(s, hems, eye)
	for _, h := range hems {
		if !h.fold && h.tris[1] >= 0 && to[h.tris[0]]+to[h.tris[1]] == seen+away {
			draw(rimPoint(s, h.ends[0], eye), rimPoint(s, h.ends[1], eye))
		}
	}
}

// How a triangle lies to the eye. No other two add up to seen + away.
const (
	seen   = 1
	narrow = 2 // turned away, but only within a strip
	away   = 4
)

// widen is how many triangles lie at most between one that is turned away and
// one whose neighbours all are.
const widen = 2

// facings tells how the triangles lie to the eye. Where it looks along the
// cloth, strips of the lattice turn to and fro: lines round them would be
// scratches. So what is turned away counts only beside what has turned away on
// all sides.
func facings(s *mesh.Sheet, hems []hem, eye r3.Vec) []int8 {
	to, beside := make([]int8, len(s.Tris)), make([]int8, len(s.Tris))
	for k, t := range s.Tris {
		a, b, c := s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]
		to[k] = narrow
		if r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)), r3.Sub(eye, a)) > 0 {
			to[k] = seen
		}
	}
	pairs := func(do func(a, b int32)) { // of neighbours
		for _, h := range hems {
			if h.tris[1] >= 0 {
				do(h.tris[0], h.tris[1])
				do(h.tris[1], h.tris[0])
			}
		}
	}
	pairs(func(a, b int32) {
		if to[b] != seen {
			beside[a]++
		}
	})
	for k := range to {
		if to[k] == narrow && beside[k] == 3 {
			to[k] = away
		}
	}
	for range widen {
		was := slices.Clone(to)
		pairs(func(a, b int32) {
			if was[a] == narrow && was[b] == away {
				to[a] = away
			}
		})
	}
	return to
}
