package stage

import (
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

// rim draws short lines where the cloth ends for the eye: at the cut edges and
// the fold of the facing, and, as turns, where it turns out of sight. They lie a
// little nearer to the eye than the cloth.
func rim(s *mesh.Sheet, hems []hem, eye r3.Vec, draw func(a, b seamPoint, turn bool)) {
	seen := func(k int32) bool {
		t := s.Tris[k]
		a, b, c := s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]
		return r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)), r3.Sub(eye, a)) > 0
	}
	lift := func(i int32) seamPoint {
		p := s.Pos[i]
		return seamPoint{at: r3.Add(p, r3.Scale(rimLift, r3.Unit(r3.Sub(eye, p))))}
	}
	for _, h := range hems {
		end := h.fold || h.tris[1] < 0
		if end || seen(h.tris[0]) != seen(h.tris[1]) {
			draw(lift(h.ends[0]), lift(h.ends[1]), !end)
		}
	}
}
