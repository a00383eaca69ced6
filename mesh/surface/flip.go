package surface

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// turned returns the triangles of s with every whole cell halved along that
// diagonal along which the cloth bends less (N. Dyn, D. Levin, S. Rippa, "Data
// dependent triangulations for piecewise linear interpolation", IMA Journal of
// Numerical Analysis 10, 1990). Across a fold a diagonal spans two rows of
// crossings and misses the one between: the fold would look braided. Cells with a stiff corner stay as they are.
func turned(s *mesh.Sheet, g []slope, stiff []bool) [][3]int32 {
	tris := append([][3]int32(nil), s.Tris...)
	first := map[[2]int32]int{}
	for k, t := range s.Tris {
		for i := range 3 {
			e := [2]int32{min(t[i], t[(i+1)%3]), max(t[i], t[(i+1)%3])}
			j, met := first[e]
			if !met {
				first[e] = k
				continue
			}
			a, b := t[i], t[(i+1)%3] // the diagonal
			c, d := t[(i+2)%3], apex(s.Tris[j], e)
			free := !(stiff[a] || stiff[b] || stiff[c] || stiff[d])
			if free && square(s, a, b, c, d) && bent(s, g, c, d) < bent(s, g, a, b) {
				tris[j], tris[k] = [3]int32{a, d, c}, [3]int32{d, b, c}
			}
		}
	}
	return tris
}

// apex returns the corner of t off the edge e.
func apex(t [3]int32, e [2]int32) int32 {
	for _, v := range t {
		if v != e[0] && v != e[1] {
			return v
		}
	}
	return t[0]
}

// square reports whether a–b and c–d are the diagonals of a square in the flat.
func square(s *mesh.Sheet, a, b, c, d int32) bool {
	p, q := r2.Sub(s.Flat[b], s.Flat[a]), r2.Sub(s.Flat[d], s.Flat[c])
	mid := r2.Sub(r2.Add(s.Flat[a], s.Flat[b]), r2.Add(s.Flat[c], s.Flat[d]))
	n := r2.Norm2(p)
	const about = 1e-3
	return math.Abs(r2.Norm2(q)-n) < about*n && math.Abs(r2.Dot(p, q)) < about*n && r2.Norm2(mid) < about*n
}

// bent is how much the step from a to b changes its direction on the way, m.
func bent(s *mesh.Sheet, g []slope, a, b int32) float64 {
	d := r2.Sub(s.Flat[b], s.Flat[a])
	return r3.Norm(r3.Sub(g[b].along(d), g[a].along(d)))
}
