// Package mesh holds the shapes of the project: bodies, drafts, lattices,
// forms and the draped sheet. It knows no physics and no time.
//
// Space is right-handed: X to the wearer's left, Y up, Z forward (away from
// the chest), in metres. The flat piece uses the same X and Y seen from the
// right side of the cloth: X = 0 is the centre front (CF), X > 0 the wearer's
// left, Y up. Start at Sheet.
package mesh

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Sheet is a piece of cloth lying in space: a triangle mesh that remembers
// where each of its vertices lies in the flat piece.
type Sheet struct {
	Flat   []r2.Vec   // m, len = number of vertices; place in the flat piece
	Pos    []r3.Vec   // m, len = number of vertices; place in space
	Tris   [][3]int32 // vertex indices, counter-clockwise seen from the right side of the cloth
	Facing []bool     // len = number of triangles; true on the self-facing
}

// Surface is a closed or open triangle surface that is not cloth, such as a
// dress form.
type Surface struct {
	Pos    []r3.Vec   // m
	Normal []r3.Vec   // unit, outward, len = len(Pos)
	Tris   [][3]int32 // counter-clockwise seen from outside
}

// Normals returns the area-weighted unit vertex normals of the sheet, on the
// right side of the cloth; len = len(s.Pos).
func (s *Sheet) Normals() []r3.Vec {
	n := make([]r3.Vec, len(s.Pos))
	for _, t := range s.Tris {
		a := r3.Cross(r3.Sub(s.Pos[t[1]], s.Pos[t[0]]), r3.Sub(s.Pos[t[2]], s.Pos[t[0]]))
		for _, v := range t {
			n[v] = r3.Add(n[v], a)
		}
	}
	for i := range n {
		if l := r3.Norm(n[i]); l > 0 {
			n[i] = r3.Scale(1/l, n[i])
		}
	}
	return n
}
