package drawn

import (
	"cmp"
	"math"
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// centreLine cuts a sheet along the flat centre front: (Z, Y) in m, the front from
// the fold line down and the facing from there to its free edge.
func centreLine(s *mesh.Sheet) (front, facing []r2.Vec) {
	var sides [2][]crossing
	for i, t := range s.Tris {
		side := 0
		if s.Facing[i] {
			side = 1
		}
		for k := range t {
			if c, ok := crossed(s, t[k], t[(k+1)%3]); ok {
				sides[side] = append(sides[side], c)
			}
		}
	}
	slices.SortFunc(sides[0], func(a, b crossing) int { return cmp.Compare(b.y, a.y) })
	slices.SortFunc(sides[1], func(a, b crossing) int { return cmp.Compare(a.y, b.y) })
	return places(sides[0]), places(sides[1])
}

// crossing is where an edge of the sheet crosses the centre front.
type crossing struct {
	y  float64 // m, in the flat
	at r2.Vec  // m, (Z, Y) in space
}

// crossed is where the edge from a to b crosses the centre front; false where it does not.
func crossed(s *mesh.Sheet, a, b int32) (crossing, bool) {
	p, q := s.Flat[a], s.Flat[b]
	if (p.X < 0) == (q.X < 0) {
		return crossing{}, false
	}
	share := p.X / (p.X - q.X)
	at := r3.Add(r3.Scale(1-share, s.Pos[a]), r3.Scale(share, s.Pos[b]))
	return crossing{p.Y + share*(q.Y-p.Y), r2.Vec{X: at.Z, Y: at.Y}}, true
}

// places are those of the crossings, those of an edge that two triangles share once.
func places(cs []crossing) []r2.Vec {
	const same = 1e-7 // m
	var out []r2.Vec
	for k, c := range cs {
		if k == 0 || math.Abs(c.y-cs[k-1].y) > same {
			out = append(out, c.at)
		}
	}
	return out
}
