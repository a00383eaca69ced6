package surface

import (
	"cmp"
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
	f := b.tessellate(g, parts)
	f.lay(soft, b.every())
	sweep := newSweep(&f.out, parts*parts)
	hit := b.crossed(sweep, b.every())
	for round := 1; round <= easings && len(hit) > 0; round++ {
		for _, k := range hit {
			for _, v := range b.tris[k] {
				soft[v] /= 2
				if round == easings {
					soft[v] = 0
				}
			}
		}
		changed := b.touching(hit)
		f.lay(soft, changed)
		hit = b.crossed(sweep, changed)
	}
	return f.surface(), hit
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

// sweep is what is drawn in boxes, in the order in which they are swept upwards.
type sweep struct {
	s     *Surface
	n     int      // parts of a triangle
	parts []r3.Box // round each part
	whole []r3.Box // round the parts of each triangle
	order []int32  // triangles by the lower ends of their boxes
}

func newSweep(s *Surface, n int) *sweep {
	w := &sweep{s: s, n: n, parts: make([]r3.Box, len(s.Tris)), whole: make([]r3.Box, len(s.Tris)/n)}
	for k := range w.whole {
		w.order = append(w.order, int32(k))
	}
	return w
}

// box makes the boxes of the triangles chosen anew.
func (w *sweep) box(chosen []bool) {
	for k := range w.whole {
		if !chosen[k] {
			continue
		}
		for i := k * w.n; i < (k+1)*w.n; i++ {
			t := w.s.Tris[i]
			p, q, r := w.s.Pos[t[0]], w.s.Pos[t[1]], w.s.Pos[t[2]]
			w.parts[i] = r3.Box{
				Min: r3.Vec{X: min(p.X, q.X, r.X), Y: min(p.Y, q.Y, r.Y), Z: min(p.Z, q.Z, r.Z)},
				Max: r3.Vec{X: max(p.X, q.X, r.X), Y: max(p.Y, q.Y, r.Y), Z: max(p.Z, q.Z, r.Z)},
			}
		}
		w.whole[k] = hull(w.parts[k*w.n : (k+1)*w.n])
	}
	slices.SortFunc(w.order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(w.whole[a].Min.Y, w.whole[b].Min.Y), cmp.Compare(a, b))
	})
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

// crossed returns in rising order the triangles whose drawn parts pass through each other
// or those of another, if one of the two has changed.
func (b *base) crossed(w *sweep, changed []bool) []int {
	w.box(changed)
	var out []int
	var open, changing []int32 // boxes that reach up to where the sweep is: all, and those that have changed
	for _, a := range w.order {
		if changed[a] && !b.folded(int(a), int(a)) && w.meet(int(a), int(a)) {
			out = append(out, int(a))
		}
		among := &changing
		if changed[a] {
			among = &open
		}
		kept := (*among)[:0]
		for _, o := range *among {
			if w.whole[o].Max.Y < w.whole[a].Min.Y {
				continue
			}
			kept = append(kept, o)
			if overlap(w.whole[a], w.whole[o]) && !b.folded(int(a), int(o)) && w.meet(int(a), int(o)) {
				out = append(out, int(a), int(o))
			}
		}
		*among = kept
		open = append(open, a)
		if changed[a] {
			changing = append(changing, a)
		}
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

// meet reports whether drawn parts of triangles k and m pass through each other.
func (w *sweep) meet(k, m int) bool {
	for i := k * w.n; i < (k+1)*w.n; i++ {
		if !overlap(w.parts[i], w.whole[m]) {
			continue
		}
		t := w.s.Tris[i]
		for j := m * w.n; j < (m+1)*w.n; j++ {
			u := w.s.Tris[j]
			if !overlap(w.parts[i], w.parts[j]) || share(t, u) {
				continue
			}
			if pierces(w.s, t, u) || pierces(w.s, u, t) {
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
