package surface

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// easings is how often the cubics are made to count half as much where drawn
// layers pass through each other; the last time they count nothing.
const easings = 3

// apart draws the surface, goes back towards flat triangles where layers pass
// through each other, and returns the triangles of which that is not enough.
func (b *base) apart(g []slope, parts int) (Surface, []int) {
	soft := make([]float64, len(b.pos)) // how much of the cubics is drawn, 0 to 1
	for i := range soft {
		if !b.fixed(int32(i)) {
			soft[i] = 1
		}
	}
	out := b.tessellate(g, soft, parts)
	hit := b.crossed(&out, parts*parts, b.every())
	for round := 1; round <= easings && len(hit) > 0; round++ {
		for _, k := range hit {
			for _, v := range b.tris[k] {
				soft[v] /= 2
				if round == easings {
					soft[v] = 0
				}
			}
		}
		out = b.tessellate(g, soft, parts)
		hit = b.crossed(&out, parts*parts, b.touching(hit))
	}
	return out, hit
}

// every is a choice of all triangles.
func (b *base) every() []bool {
	out := make([]bool, len(b.tris))
	for k := range out {
		out[k] = true
	}
	return out
}

// touching returns the triangles that share a vertex with those listed.
func (b *base) touching(list []int) []bool {
	near := make([]bool, len(b.pos))
	for _, k := range list {
		for _, v := range b.tris[k] {
			near[v] = true
		}
	}
	out := make([]bool, len(b.tris))
	for k, t := range b.tris {
		out[k] = near[t[0]] || near[t[1]] || near[t[2]]
	}
	return out
}

// span is the box round the drawn parts of one triangle, and the boxes of the parts.
type span struct {
	r3.Box
	k     int
	parts []r3.Box
}

// boxes are those round the drawn triangles.
func boxes(s *Surface) []r3.Box {
	out := make([]r3.Box, len(s.Tris))
	for i, t := range s.Tris {
		p, q, r := s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]
		out[i] = r3.Box{
			Min: r3.Vec{X: min(p.X, q.X, r.X), Y: min(p.Y, q.Y, r.Y), Z: min(p.Z, q.Z, r.Z)},
			Max: r3.Vec{X: max(p.X, q.X, r.X), Y: max(p.Y, q.Y, r.Y), Z: max(p.Z, q.Z, r.Z)},
		}
	}
	return out
}

// hull is the box round boxes.
func hull(bs []r3.Box) r3.Box {
	out := bs[0]
	for _, b := range bs[1:] {
		out.Min = r3.Vec{X: min(out.Min.X, b.Min.X), Y: min(out.Min.Y, b.Min.Y), Z: min(out.Min.Z, b.Min.Z)}
		out.Max = r3.Vec{X: max(out.Max.X, b.Max.X), Y: max(out.Max.Y, b.Max.Y), Z: max(out.Max.Z, b.Max.Z)}
	}
	return out
}

func overlap(a, b r3.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y &&
		a.Min.Z <= b.Max.Z && b.Min.Z <= a.Max.Z
}

// crossed returns in rising order the triangles whose drawn parts, n each, pass
// through each other or those of another, if look asks for either. Boxes are swept upwards.
func (b *base) crossed(s *Surface, n int, look []bool) []int {
	spans, all := make([]span, len(look)), boxes(s)
	for k := range spans {
		parts := all[k*n : (k+1)*n]
		spans[k] = span{hull(parts), k, parts}
	}
	slices.SortStableFunc(spans, func(a, b span) int {
		if a.Min.Y < b.Min.Y {
			return -1
		} else if a.Min.Y > b.Min.Y {
			return 1
		}
		return 0
	})
	var out []int
	var open []span
	for _, a := range spans {
		if look[a.k] && !b.folded(a.k, a.k) && meet(s, a, a, n) {
			out = append(out, a.k)
		}
		kept := open[:0]
		for _, o := range open {
			if o.Max.Y < a.Min.Y {
				continue
			}
			kept = append(kept, o)
			if (look[a.k] || look[o.k]) && overlap(a.Box, o.Box) && !b.folded(a.k, o.k) && meet(s, a, o, n) {
				out = append(out, a.k, o.k)
			}
		}
		open = append(kept, a)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// folded reports whether two triangles that stay as they lie on the lattice
// hang together: what they do about their common corner is not the drawing's.
func (b *base) folded(k, m int) bool {
	for _, t := range [2][3]int32{b.tris[k], b.tris[m]} {
		for _, v := range t {
			if !b.fixed(v) {
				return false
			}
		}
	}
	return share(b.tris[k], b.tris[m])
}

// meet reports whether drawn parts of two triangles pass through each other.
func meet(s *Surface, a, b span, n int) bool {
	for i, t := range s.Tris[a.k*n : (a.k+1)*n] {
		if !overlap(a.parts[i], b.Box) {
			continue
		}
		for j, u := range s.Tris[b.k*n : (b.k+1)*n] {
			if !overlap(a.parts[i], b.parts[j]) || share(t, u) {
				continue
			}
			if pierces(s, t, u) || pierces(s, u, t) {
				return true
			}
		}
	}
	return false
}

func share(t, u [3]int32) bool {
	for _, v := range t {
		if v == u[0] || v == u[1] || v == u[2] {
			return true
		}
	}
	return false
}

// pierces reports whether an edge of t passes through the inside of u (T.
// Möller, B. Trumbore, "Fast, minimum storage ray/triangle intersection",
// Journal of Graphics Tools 2, 1997).
func pierces(s *Surface, t, u [3]int32) bool {
	o := s.Pos[u[0]]
	e, f := r3.Sub(s.Pos[u[1]], o), r3.Sub(s.Pos[u[2]], o)
	for k := range 3 {
		p := s.Pos[t[k]]
		d := r3.Sub(s.Pos[t[(k+1)%3]], p)
		h := r3.Cross(d, f)
		det := r3.Dot(e, h)
		if det == 0 {
			continue
		}
		w := r3.Sub(p, o)
		x := r3.Dot(w, h) / det
		q := r3.Cross(w, e)
		y, at := r3.Dot(d, q)/det, r3.Dot(f, q)/det
		if x > 0 && y > 0 && x+y < 1 && at > 0 && at < 1 {
			return true
		}
	}
	return false
}
