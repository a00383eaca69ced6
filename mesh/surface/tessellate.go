package surface

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// flatly is the area in space of a square metre in the flat below which the
// slopes of a place tell no normal: the cloth is turned sharply there.
const flatly = 0.25

// fine is a surface being drawn: its vertices and triangles stay, and their places are laid.
type fine struct {
	*base
	slopes []slope // len = vertices of base
	parts  int     // an edge is drawn in
	out    Surface
	edges  map[[2]int32]int32 // first vertex inside an edge, from its lower end on
	first  []int32            // len = triangles of base + 1; the first vertex that lies on each
	sharp  []int32            // vertices without a normal
}

// tessellate divides every triangle in parts² smaller ones, one triangle after the other.
func (b *base) tessellate(g []slope, parts int) *fine {
	f := &fine{base: b, slopes: g, parts: parts, edges: make(map[[2]int32]int32, len(b.pos)+len(b.tris))}
	f.reserve()
	f.out.Flat = append(f.out.Flat, b.flat...)
	f.out.Pos = append(f.out.Pos, b.pos...)
	f.out.from, f.out.share = b.from, b.share
	for i := range b.pos {
		f.out.put([3]int32{int32(i), int32(i), int32(i)}, [3]float64{1, 0, 0})
	}
	for k, t := range b.tris {
		f.first = append(f.first, int32(len(f.out.Flat)))
		f.divide(t, b.facing[k])
	}
	f.first = append(f.first, int32(len(f.out.Flat)))
	f.out.Pos = append(f.out.Pos, make([]r3.Vec, len(f.out.Flat)-len(b.pos))...)
	f.out.Normal = make([]r3.Vec, len(f.out.Flat))
	for i, s := range g {
		f.out.Normal[i] = f.normal(int32(i), s)
	}
	return f
}

// reserve makes room for what is drawn. A sheet without holes has as many edges as vertices
// and triangles.
func (f *fine) reserve() {
	v, t, n := len(f.pos), len(f.tris), f.parts
	all := v + (v+t)*(n-1) + t*(n-1)*(n-2)/2
	f.out.Flat, f.out.Pos = make([]r2.Vec, 0, all), make([]r3.Vec, 0, all)
	f.out.corner, f.out.weight = make([][3]int32, 0, all), make([][3]float64, 0, all)
	f.out.Tris, f.out.Facing = make([][3]int32, 0, t*n*n), make([]bool, 0, t*n*n)
	f.first = make([]int32, 0, t+1)
}

// lay puts the vertices on the triangles chosen where they belong, of which the cubics
// count as much as soft says, 0 to 1, one a vertex of base.
func (f *fine) lay(soft []float64, chosen []bool) {
	for k, t := range f.tris {
		if !chosen[k] || f.first[k] == f.first[k+1] {
			continue
		}
		p := patchOf([3]r2.Vec{f.flat[t[0]], f.flat[t[1]], f.flat[t[2]]}, [3]r3.Vec{f.pos[t[0]], f.pos[t[1]], f.pos[t[2]]},
			[3]slope{f.slopes[t[0]], f.slopes[t[1]], f.slopes[t[2]]})
		for i := f.first[k]; i < f.first[k+1]; i++ {
			f.place(&p, i, soft)
		}
	}
}

// place lays a vertex.
func (f *fine) place(p *patch, i int32, soft []float64) {
	at, s := p.at(f.out.weight[i])
	var facet r3.Vec
	much := 0.0
	for k, v := range f.out.corner[i] {
		facet = r3.Add(facet, r3.Scale(f.out.weight[i][k], f.pos[v]))
		much += f.out.weight[i][k] * soft[v]
	}
	if much < 1 {
		at = mix(facet, at, much)
	}
	f.out.Pos[i] = at
	if f.out.Normal[i] == (r3.Vec{}) {
		f.out.Normal[i] = f.normal(i, s)
	}
}

// normal returns the unit normal of a slope, or notes that vertex i has none.
func (f *fine) normal(i int32, s slope) r3.Vec {
	n := r3.Cross(s.x, s.y)
	if l := r3.Norm(n); l > flatly {
		return r3.Scale(1/l, n)
	}
	f.sharp = append(f.sharp, i)
	return r3.Vec{}
}

// surface is what is drawn, as it is laid now.
func (f *fine) surface() Surface {
	if len(f.sharp) > 0 {
		n := f.out.Normals()
		for _, i := range f.sharp {
			f.out.Normal[i] = n[i]
		}
	}
	return f.out
}

// divide adds the parts of a triangle.
func (f *fine) divide(t [3]int32, facing bool) {
	n := f.parts
	var rows [most + 1][most + 1]int32 // by steps from corner 0 to 1 and to 2
	for i := range n + 1 {
		for j := range n + 1 - i {
			rows[i][j] = f.vertex(t, i, j)
		}
	}
	for i := range n {
		for j := range n - i {
			f.add([3]int32{rows[i][j], rows[i+1][j], rows[i][j+1]}, facing)
			if i+j < n-1 {
				f.add([3]int32{rows[i+1][j], rows[i+1][j+1], rows[i][j+1]}, facing)
			}
		}
	}
}

func (f *fine) add(t [3]int32, facing bool) {
	f.out.Tris, f.out.Facing = append(f.out.Tris, t), append(f.out.Facing, facing)
}

// vertex returns the vertex i steps towards corner 1 and j towards corner 2,
// which on a side is that of the neighbour.
func (f *fine) vertex(t [3]int32, i, j int) int32 {
	n := f.parts
	k := n - i - j
	switch {
	case k == n:
		return t[0]
	case i == n:
		return t[1]
	case j == n:
		return t[2]
	case j == 0:
		return f.onSide(t, 0, i)
	case k == 0:
		return f.onSide(t, 1, j)
	case i == 0:
		return f.onSide(t, 2, k)
	}
	return f.inside(t, [3]float64{float64(k) / float64(n), float64(i) / float64(n), float64(j) / float64(n)})
}

// onSide returns the vertex so many steps along a side, making all of the side
// where it is met first.
func (f *fine) onSide(t [3]int32, side, step int) int32 {
	a, b := t[side], t[(side+1)%3]
	key := [2]int32{min(a, b), max(a, b)}
	if a > b {
		step = f.parts - step
	}
	first, ok := f.edges[key]
	if !ok {
		first = int32(len(f.out.Flat))
		f.edges[key] = first
		for s := 1; s < f.parts; s++ {
			var l [3]float64
			x := float64(s) / float64(f.parts)
			if a > b {
				x = 1 - x
			}
			l[side], l[(side+1)%3] = 1-x, x
			f.inside(t, l)
		}
	}
	return first + int32(step) - 1
}

// inside makes a vertex.
func (f *fine) inside(t [3]int32, l [3]float64) int32 {
	var q r2.Vec
	for k, v := range t {
		q = r2.Add(q, r2.Scale(l[k], f.flat[v]))
	}
	f.out.Flat = append(f.out.Flat, q)
	f.out.put(t, l)
	return int32(len(f.out.Flat)) - 1
}
