package surface

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// base is a sheet whose triangles end at the fold line.
type base struct {
	flat    []r2.Vec   // m, len = vertices
	pos     []r3.Vec   // m, len = vertices
	was     []r3.Vec   // m, len = vertices; pos before fair
	run     []tangent  // len = vertices; along the curve on which it lies, set by fair
	side    []int8     // len = vertices; -1 front, 0 on the fold line, 1 facing
	from    [][2]int32 // len = vertices; the ends of the edge that was split there, or itself twice
	share   []float64  // len = vertices; how far from the one end to the other
	tris    [][3]int32
	facing  []bool    // len = len(tris)
	stiff   []bool    // len = vertices of the sheet; they stay as they lie on the lattice
	off     []float64 // m, len = vertices of the sheet; by how much their flat place was put above the line it lies near
	foldY   float64   // m
	spacing float64
}

// near is the part of a spacing within which a vertex counts as on the fold line.
const near = 0.06

// split returns the sheet with its triangles cut along y = foldY.
func split(s mesh.Sheet, foldY float64, stiff []bool) *base {
	b := &base{spacing: spacing(&s), foldY: foldY, stiff: stiff, pos: append([]r3.Vec(nil), s.Pos...),
		flat: append([]r2.Vec(nil), s.Flat...)}
	b.off = make([]float64, len(s.Flat))
	for i, q := range s.Flat {
		side := int8(0)
		if d := q.Y - foldY; math.Abs(d) > near*b.spacing {
			side = int8(math.Copysign(1, d))
		} else {
			b.flat[i].Y, b.off[i] = foldY, -d
		}
		b.side = append(b.side, side)
		b.from, b.share = append(b.from, [2]int32{int32(i), int32(i)}), append(b.share, 0)
	}
	b.tris, b.run = s.Tris, make([]tangent, len(s.Flat))
	cells := turned(&s, b.gradients(b.all()), stiff)
	b.tris = nil
	cuts := map[[2]int32]int32{}
	for _, t := range cells {
		b.cut(t, foldY, cuts)
	}
	b.run = make([]tangent, len(b.flat))
	return b
}

// spacing returns the side of a cell, m: the longest edges are diagonals.
func spacing(s *mesh.Sheet) float64 {
	long := 0.0
	for _, t := range s.Tris {
		for k := range 3 {
			long = max(long, r2.Norm(r2.Sub(s.Flat[t[k]], s.Flat[t[(k+1)%3]])))
		}
	}
	return long / math.Sqrt2
}

// cut adds the triangle t, in up to three parts where the fold line crosses it.
func (b *base) cut(t [3]int32, foldY float64, cuts map[[2]int32]int32) {
	var front, facing []int32
	for k, v := range t {
		w := t[(k+1)%3]
		if b.side[v] <= 0 {
			front = append(front, v)
		}
		if b.side[v] >= 0 {
			facing = append(facing, v)
		}
		if b.side[v]*b.side[w] < 0 {
			m := b.middle(v, w, foldY, cuts)
			front, facing = append(front, m), append(facing, m)
		}
	}
	b.fan(front, false)
	b.fan(facing, true)
}

// middle returns the vertex at which the edge between v and w meets the fold line.
func (b *base) middle(v, w int32, foldY float64, cuts map[[2]int32]int32) int32 {
	key := [2]int32{min(v, w), max(v, w)}
	if m, ok := cuts[key]; ok {
		return m
	}
	p, q := b.flat[key[0]], b.flat[key[1]]
	t := (foldY - p.Y) / (q.Y - p.Y)
	m := int32(len(b.flat))
	b.flat = append(b.flat, r2.Vec{X: p.X + t*(q.X-p.X), Y: foldY})
	b.pos = append(b.pos, mix(b.pos[key[0]], b.pos[key[1]], t))
	b.side = append(b.side, 0)
	b.from, b.share = append(b.from, key), append(b.share, t)
	cuts[key] = m
	return m
}

// sliver is twice the area in cells from which a triangle is drawn.
const sliver = 1e-9

// fan adds a convex polygon of three or four corners; of fewer there is none,
// and one that lies on the fold line whole belongs to the front.
func (b *base) fan(p []int32, facing bool) {
	if facing && len(p) == 3 && b.side[p[0]] == 0 && b.side[p[1]] == 0 && b.side[p[2]] == 0 {
		return
	}
	for k := 2; k < len(p); k++ {
		t := [3]int32{p[0], p[k-1], p[k]}
		if r2.Cross(r2.Sub(b.flat[t[1]], b.flat[t[0]]), r2.Sub(b.flat[t[2]], b.flat[t[0]])) > sliver*b.spacing*b.spacing {
			b.tris, b.facing = append(b.tris, t), append(b.facing, facing)
		}
	}
}

func mix(a, b r3.Vec, t float64) r3.Vec { return r3.Add(r3.Scale(1-t, a), r3.Scale(t, b)) }
