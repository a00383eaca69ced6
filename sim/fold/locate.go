package fold

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// spacing returns the side of a square of two mean triangles: the lattice
// spacing, for a lattice.
func spacing(s *mesh.Sheet) float64 {
	var area float64
	for _, t := range s.Tris {
		area += flatArea(s, t)
	}
	return math.Sqrt(2 * area / float64(len(s.Tris)))
}

// flatArea returns the area of t in the flat piece, m².
func flatArea(s *mesh.Sheet, t [3]int32) float64 {
	a, b, c := s.Flat[t[0]], s.Flat[t[1]], s.Flat[t[2]]
	return math.Abs(r2.Cross(r2.Sub(b, a), r2.Sub(c, a))) / 2
}

// locator finds the place in space of a flat point. It holds a uniform grid
// over the flat piece; each cell lists the triangles whose box touches it.
type locator struct {
	sheet  *mesh.Sheet
	origin r2.Vec
	size   float64 // m, side of a grid cell
	nx, ny int
	cells  [][]int32 // len = nx·ny, row by row
}

func newLocator(s *mesh.Sheet) *locator {
	lo, hi := s.Flat[0], s.Flat[0]
	for _, q := range s.Flat {
		lo = r2.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
		hi = r2.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	// As many cells as half the triangles, so that a cell lists a few.
	size := math.Sqrt((hi.X-lo.X)*(hi.Y-lo.Y)/float64(len(s.Tris))*2) + same
	l := &locator{sheet: s, origin: lo, size: size}
	l.nx, l.ny = int((hi.X-lo.X)/size)+1, int((hi.Y-lo.Y)/size)+1
	l.cells = make([][]int32, l.nx*l.ny)
	for i, t := range s.Tris {
		l.insert(int32(i), s.Flat[t[0]], s.Flat[t[1]], s.Flat[t[2]])
	}
	return l
}

func (l *locator) insert(i int32, a, b, c r2.Vec) {
	x0, y0 := l.cell(min(a.X, b.X, c.X), min(a.Y, b.Y, c.Y))
	x1, y1 := l.cell(max(a.X, b.X, c.X), max(a.Y, b.Y, c.Y))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			l.cells[y*l.nx+x] = append(l.cells[y*l.nx+x], i)
		}
	}
}

// cell returns the grid cell of a flat point, clamped to the grid.
func (l *locator) cell(x, y float64) (i, j int) {
	i, j = int(math.Floor((x-l.origin.X)/l.size)), int(math.Floor((y-l.origin.Y)/l.size))
	return min(max(i, 0), l.nx-1), min(max(j, 0), l.ny-1)
}

// point returns the place in space of flat point q; false if q is off the
// sheet.
func (l *locator) point(q r2.Vec) (r3.Vec, bool) {
	i, j := l.cell(q.X, q.Y)
	for _, k := range l.cells[j*l.nx+i] {
		t := l.sheet.Tris[k]
		w, ok := barycentric(l.sheet.Flat, t, q)
		if ok {
			p := r3.Scale(w[0], l.sheet.Pos[t[0]])
			p = r3.Add(p, r3.Scale(w[1], l.sheet.Pos[t[1]]))
			return r3.Add(p, r3.Scale(w[2], l.sheet.Pos[t[2]])), true
		}
	}
	return r3.Vec{}, false
}

// barycentric returns the weights of the corners of t at q; false if q is
// outside.
func barycentric(flat []r2.Vec, t [3]int32, q r2.Vec) (w [3]float64, ok bool) {
	a, b, c := flat[t[0]], flat[t[1]], flat[t[2]]
	full := r2.Cross(r2.Sub(b, a), r2.Sub(c, a))
	if full == 0 {
		return w, false
	}
	w[1] = r2.Cross(r2.Sub(q, a), r2.Sub(c, a)) / full
	w[2] = r2.Cross(r2.Sub(b, a), r2.Sub(q, a)) / full
	w[0] = 1 - w[1] - w[2]
	const slack = -1e-9 // lets a point on a shared side be found by one of the two
	return w, w[0] >= slack && w[1] >= slack && w[2] >= slack
}
