package lattice

import (
	"math"

	"cowl/mesh"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Skin is the surface of the cut cloth: the triangles of the cells, cut at the
// outline. Its vertices are points held by crossings.
type Skin struct {
	Points []Point    // len = vertices
	Flat   []r2.Vec   // m, len = vertices
	Tris   [][3]int32 // vertices, counter-clockwise in the flat piece
}

// vertexKey tells vertices apart: by place, and on a slit by side.
type vertexKey struct {
	u, v  int64 // 1e-7 spacings
	shore [3]int32
}

// Skin builds the surface of the cloth.
func (l *Lattice) Skin() Skin {
	var s Skin
	seen := map[vertexKey]int32{}
	vertex := func(p part, q r2.Vec) int32 {
		point := l.hold(l.cells[p.cell].node[0], q.X-float64(p.i+l.lo[0]), q.Y-float64(p.j+l.lo[1]))
		key := vertexKey{int64(math.Round(q.X * 1e7)), int64(math.Round(q.Y * 1e7)), l.shore(point)}
		if v, ok := seen[key]; ok {
			return v
		}
		v := int32(len(s.Points))
		seen[key] = v
		s.Points = append(s.Points, point)
		s.Flat = append(s.Flat, l.flat(q.X, q.Y))
		return v
	}
	for _, p := range l.parts {
		whole := polyline.Area(p.poly) > 0.5-sliver
		for _, e := range ears(p.poly) {
			if a, b, c := p.poly[e[0]], p.poly[e[1]], p.poly[e[2]]; !whole && !l.covers(a, b, c) {
				continue
			}
			s.add(vertex(p, p.poly[e[0]]), vertex(p, p.poly[e[1]]), vertex(p, p.poly[e[2]]))
		}
	}
	return s
}

// covers reports whether the middle of a triangle (lattice units) lies on the cloth.
// What clip leaves of a cell into which a notch reaches may lie over itself: as much
// beside the cloth as is taken off again.
func (l *Lattice) covers(a, b, c r2.Vec) bool {
	return polyline.Contains(l.edge, r2.Scale(1./3, r2.Add(a, r2.Add(b, c))))
}

// add keeps a triangle unless two of its vertices fell together or it is turned over.
func (s *Skin) add(a, b, c int32) {
	if a == b || b == c || c == a {
		return
	}
	if r2.Cross(r2.Sub(s.Flat[b], s.Flat[a]), r2.Sub(s.Flat[c], s.Flat[a])) > 0 {
		s.Tris = append(s.Tris, [3]int32{a, b, c})
	}
}

// Sheet returns the skin in space when the crossings lie at pos (m); cloth
// above the flat line y = foldY is marked as facing.
func (s Skin) Sheet(pos []r3.Vec, foldY float64) mesh.Sheet {
	out := mesh.Sheet{Flat: s.Flat, Tris: s.Tris, Pos: make([]r3.Vec, len(s.Points)), Facing: make([]bool, len(s.Tris))}
	for i, p := range s.Points {
		out.Pos[i] = p.At(pos)
	}
	for i, t := range s.Tris {
		out.Facing[i] = s.Flat[t[0]].Y+s.Flat[t[1]].Y+s.Flat[t[2]].Y > 3*foldY
	}
	return out
}
