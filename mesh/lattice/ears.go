package lattice

import "gonum.org/v1/gonum/spatial/r2"

// flush is the twice-area (lattice units) up to which a corner is taken as
// straight; rounding of clipped corners lies far below it.
const flush = 1e-12

// ears cuts a counter-clockwise polygon into upright triangles of its own
// corners (G. H. Meisters, "Polygons have ears", American Mathematical Monthly
// 82, 1975). Every corner with cloth beside it becomes a corner of a triangle,
// also one in the middle of a straight side, so that neighbours meet corner to
// corner. Clipping joins the lobes of a hollow outline by corridors without
// width along the cell's sides; they get no triangle.
func ears(p []r2.Vec) [][3]int {
	ring := make([]int, len(p))
	for k := range ring {
		ring[k] = k
	}
	var out [][3]int
	for len(ring) >= 3 {
		k, ok := ear(p, ring)
		if ok {
			n := len(ring)
			out = append(out, [3]int{ring[(k+n-1)%n], ring[k], ring[(k+1)%n]})
		}
		ring = append(ring[:k], ring[k+1:]...)
	}
	return out
}

// ear returns the corner of the ring with the largest free triangle, or the
// straightest corner and false where only corridors are left.
func ear(p []r2.Vec, ring []int) (at int, ok bool) {
	n := len(ring)
	best, flat := flush, 0.0
	for k := range ring {
		a, b, c := p[ring[(k+n-1)%n]], p[ring[k]], p[ring[(k+1)%n]]
		t := r2.Cross(r2.Sub(b, a), r2.Sub(c, b))
		if t > best && empty(p, ring, [3]r2.Vec{a, b, c}) {
			at, ok, best = k, true, t
		}
		if s := max(t, -t); !ok && (k == 0 || s < flat) {
			at, flat = k, s
		}
	}
	return at, ok
}

// empty reports whether no other corner of the ring lies in or on the triangle.
func empty(p []r2.Vec, ring []int, t [3]r2.Vec) bool {
	for _, k := range ring {
		q := p[k]
		if same(q, t[0]) || same(q, t[1]) || same(q, t[2]) {
			continue
		}
		in := true
		for e := range 3 {
			a, b := t[e], t[(e+1)%3]
			in = in && r2.Cross(r2.Sub(b, a), r2.Sub(q, a)) >= -flush
		}
		if in {
			return false
		}
	}
	return true
}

// same reports whether two clipped corners are one place.
func same(a, b r2.Vec) bool { return r2.Norm2(r2.Sub(a, b)) < flush*flush }
