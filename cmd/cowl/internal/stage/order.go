package stage

import (
	"math"
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// farToNear returns the vertices of the triangles of s, those of the farthest
// triangle first, so that see-through layers lie over each other rightly. The
// drawn triangles are some 3 mm long and layers 2.5 mm apart, so two that are
// seen at a slant may change places; both have one colour, and it does not show.
func farToNear(s *mesh.Sheet, eye r3.Vec) []uint32 {
	order := make([]uint64, len(s.Tris)) // distance above, number below
	for k, t := range s.Tris {
		mid := r3.Scale(1./3, r3.Add(s.Pos[t[0]], r3.Add(s.Pos[t[1]], s.Pos[t[2]])))
		far := math.Float32bits(float32(r3.Norm(r3.Sub(mid, eye)))) // rises as its number does
		order[k] = uint64(far)<<32 | uint64(k)
	}
	slices.Sort(order)
	out := make([]uint32, 0, 3*len(order))
	for i := len(order) - 1; i >= 0; i-- {
		t := s.Tris[uint32(order[i])]
		out = append(out, uint32(t[0]), uint32(t[1]), uint32(t[2]))
	}
	return out
}
