package contact

import (
	"math"
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Pierced returns how many times an edge of a triangle of the sheet passes
// through another triangle; an edge between two triangles counts for both.
func Pierced(s *mesh.Sheet) int {
	n := 0
	visitPierced(s, func(_, _, times int) { n += times })
	return n
}

// PiercedTris returns the triangles that pass through each other, in rising
// order, each once.
func PiercedTris(s *mesh.Sheet) []int {
	var out []int
	visitPierced(s, func(a, b, _ int) { out = append(out, a, b) })
	slices.Sort(out)
	return slices.Compact(out)
}

// visitPierced calls f with every ordered pair of triangles of which the first
// passes edges through the second, and how many. A sheet of which a place is not
// finite has none: there is no box to sort it into.
func visitPierced(s *mesh.Sheet, f func(a, b, times int)) {
	size := 2 * longest(s)
	if !(size > 0) || math.IsInf(size, 1) {
		return
	}
	mids := make([]r3.Vec, len(s.Tris))
	for k, t := range s.Tris {
		mids[k] = r3.Scale(1./3, r3.Add(s.Pos[t[0]], r3.Add(s.Pos[t[1]], s.Pos[t[2]])))
	}
	var b bins
	b.fill(mids, size)
	for k, t := range s.Tris {
		b.near(mids[k], func(id int32) {
			if int(id) == k || share(t, s.Tris[id]) {
				return
			}
			if n := crossings(s, t, s.Tris[id]); n > 0 && !meet(s, t, s.Tris[id]) {
				f(k, int(id), n)
			}
		})
	}
}

// longest returns the length of the longest edge, m.
func longest(s *mesh.Sheet) float64 {
	var m float64
	for _, t := range s.Tris {
		for k := range 3 {
			m = max(m, r3.Norm(r3.Sub(s.Pos[t[k]], s.Pos[t[(k+1)%3]])))
		}
	}
	return m
}

// share reports whether two triangles have a vertex in common.
func share(a, b [3]int32) bool {
	for _, i := range a {
		for _, j := range b {
			if i == j {
				return true
			}
		}
	}
	return false
}

// meet reports whether two triangles have a place of the flat in common: without
// a common vertex they are the lips of a slit. Lips may slide over each other by
// a rim; contact, for which they are one fold, cannot keep them apart.
func meet(s *mesh.Sheet, a, b [3]int32) bool {
	const same = 1e-9 // m
	for _, i := range a {
		for _, j := range b {
			if r2.Norm2(r2.Sub(s.Flat[i], s.Flat[j])) < same*same {
				return true
			}
		}
	}
	return false
}

// crossings counts the edges of triangle e that pass through triangle t.
func crossings(s *mesh.Sheet, e, t [3]int32) int {
	n := 0
	for k := range 3 {
		a, b := e[k], e[(k+1)%3]
		if through(s.Pos[a], s.Pos[b], s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]) {
			n++
		}
	}
	return n
}

// through reports whether segment p–q passes through triangle a, b, c.
func through(p, q, a, b, c r3.Vec) bool {
	if volume(p, a, b, c)*volume(q, a, b, c) >= 0 {
		return false
	}
	u, v, w := volume(p, q, a, b), volume(p, q, b, c), volume(p, q, c, a)
	return (u > 0 && v > 0 && w > 0) || (u < 0 && v < 0 && w < 0)
}

// volume returns six times the signed volume of a tetrahedron.
func volume(a, b, c, d r3.Vec) float64 {
	return r3.Dot(r3.Sub(b, a), r3.Cross(r3.Sub(c, a), r3.Sub(d, a)))
}
