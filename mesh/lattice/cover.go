package lattice

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// moments of cloth inside a cell in the cell's own coordinates 0..1:
// area, ∫u, ∫v, ∫uv.
type moments struct{ a, u, v, uv float64 }

// cover is a cell that holds cloth; i, j count from the corner of the box.
type cover struct {
	i, j int
	m    moments
	poly []r2.Vec // lattice units
	node [4]int32 // corners 00, 10, 01, 11; set by number
	cut  bool     // a dart has taken cloth of it
}

// part is the cloth inside one of the two triangles of a cell: a polygon in
// lattice units counted from the box corner's lattice origin.
type part struct {
	i, j  int
	cell  int  // index of its cover
	upper bool // triangle 00, 11, 01 instead of 00, 10, 11
	poly  []r2.Vec
}

// cover clips the outline (lattice units) to every cell, column by column.
func (l *Lattice) cover(poly []r2.Vec) []cover {
	var out []cover
	for i := range l.size[0] - 1 {
		u := float64(i + l.lo[0])
		strip := polyline.Clip(polyline.Clip(poly, r2.Vec{X: 1}, u), r2.Vec{X: -1}, -u-1)
		if len(strip) == 0 {
			continue
		}
		for j := range l.size[1] - 1 {
			v := float64(j + l.lo[1])
			cell := polyline.Clip(polyline.Clip(strip, r2.Vec{Y: 1}, v), r2.Vec{Y: -1}, -v-1)
			sides := l.slit(cell)
			cut := l.darted(cell, sides)
			for _, side := range sides {
				if m := momentsOf(side, u, v); m.a > sliver {
					l.split(i, j, len(out), side)
					out = append(out, cover{i: i, j: j, m: m, poly: side, cut: cut})
				}
			}
		}
	}
	return out
}

// split keeps the polygons of cell (i, j) on either side of its 00–11 diagonal.
// At 45° grain that diagonal runs along the centre front, so that the mirror
// about it maps triangles onto triangles.
func (l *Lattice) split(i, j, cover int, cell []r2.Vec) {
	n := r2.Vec{X: math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}
	d := r2.Dot(n, r2.Vec{X: float64(i + l.lo[0]), Y: float64(j + l.lo[1])})
	for _, upper := range [2]bool{false, true} {
		m, at := n, d
		if upper {
			m, at = r2.Scale(-1, n), -d
		}
		if p := polyline.Clip(cell, m, at); len(p) >= 3 && polyline.Area(p) > sliver {
			l.parts = append(l.parts, part{i, j, cover, upper, p})
		}
	}
}

// momentsOf integrates 1, u, v and uv over the polygon, with u and v counted
// from (u0, v0); a fan of signed triangles with the three-edge-midpoint rule,
// which is exact for quadratics.
func momentsOf(poly []r2.Vec, u0, v0 float64) moments {
	var m moments
	o := r2.Vec{X: u0, Y: v0}
	for k := 1; k+1 < len(poly); k++ {
		a, b, c := r2.Sub(poly[0], o), r2.Sub(poly[k], o), r2.Sub(poly[k+1], o)
		t := r2.Cross(r2.Sub(b, a), r2.Sub(c, a)) / 2
		m.a += t
		for _, q := range [3]r2.Vec{r2.Add(a, b), r2.Add(b, c), r2.Add(c, a)} {
			m.u += t / 3 * q.X / 2
			m.v += t / 3 * q.Y / 2
			m.uv += t / 3 * q.X * q.Y / 4
		}
	}
	return m
}
