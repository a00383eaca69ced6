package surface

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// flatly is the area in space of a square metre in the flat below which the
// slopes of a place tell no normal: the cloth is turned sharply there.
const flatly = 0.25

// fine is a surface being drawn.
type fine struct {
	*base
	soft  []float64 // len = vertices of base; how much of the cubics is drawn
	parts int       // an edge is drawn in
	out   Surface
	edges map[[2]int32]int32 // first vertex inside an edge, from its lower end on
	sharp []int32            // vertices without a normal
}

// tessellate draws every triangle in parts² smaller ones, one triangle after
// the other.
func (b *base) tessellate(g []slope, soft []float64, parts int) Surface {
	f := fine{base: b, soft: soft, parts: parts, edges: map[[2]int32]int32{}}
	f.out.Flat = append(f.out.Flat, b.flat...)
	f.out.Pos = append(f.out.Pos, b.pos...)
	f.out.Normal = make([]r3.Vec, len(b.pos))
	f.out.from, f.out.share = b.from, b.share
	for i, s := range g {
		f.out.put([3]int32{int32(i), int32(i), int32(i)}, [3]float64{1, 0, 0})
		f.out.Normal[i] = f.normal(int32(i), s)
	}
	for k, t := range b.tris {
		p := patchOf([3]r2.Vec{b.flat[t[0]], b.flat[t[1]], b.flat[t[2]]}, [3]r3.Vec{b.pos[t[0]], b.pos[t[1]], b.pos[t[2]]},
			[3]slope{g[t[0]], g[t[1]], g[t[2]]})
		f.draw(t, &p, b.facing[k])
	}
	if len(f.sharp) > 0 {
		n := f.out.Normals()
		for _, i := range f.sharp {
			f.out.Normal[i] = n[i]
		}
	}
	return f.out
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

// draw adds the parts of a triangle.
func (f *fine) draw(t [3]int32, p *patch, facing bool) {
	n := f.parts
	var rows [most + 1][most + 1]int32 // by steps from corner 0 to 1 and to 2
	for i := range n + 1 {
		for j := range n + 1 - i {
			rows[i][j] = f.vertex(t, p, i, j)
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
func (f *fine) vertex(t [3]int32, p *patch, i, j int) int32 {
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
		return f.onSide(p, t, 0, i)
	case k == 0:
		return f.onSide(p, t, 1, j)
	case i == 0:
		return f.onSide(p, t, 2, k)
	}
	return f.place(p, [3]float64{float64(k) / float64(n), float64(i) / float64(n), float64(j) / float64(n)}, t)
}

// onSide returns the vertex so many steps along a side, making all of the side
// where it is met first.
func (f *fine) onSide(p *patch, t [3]int32, side, step int) int32 {
	a, b := t[side], t[(side+1)%3]
	key := [2]int32{min(a, b), max(a, b)}
	if a > b {
		step = f.parts - step
	}
	first, ok := f.edges[key]
	if !ok {
		first = int32(len(f.out.Pos))
		f.edges[key] = first
		for s := 1; s < f.parts; s++ {
			var l [3]float64
			x := float64(s) / float64(f.parts)
			if a > b {
				x = 1 - x
			}
			l[side], l[(side+1)%3] = 1-x, x
			f.place(p, l, t)
		}
	}
	return first + int32(step) - 1
}

// place makes a vertex.
func (f *fine) place(p *patch, l [3]float64, t [3]int32) int32 {
	at, s := p.at(l)
	i := int32(len(f.out.Pos))
	var q r2.Vec
	var facet r3.Vec
	soft := 0.0
	for k, v := range t {
		q = r2.Add(q, r2.Scale(l[k], f.flat[v]))
		facet = r3.Add(facet, r3.Scale(l[k], f.pos[v]))
		soft += l[k] * f.soft[v]
	}
	if soft < 1 {
		at = mix(facet, at, soft)
	}
	f.out.Pos, f.out.Flat = append(f.out.Pos, at), append(f.out.Flat, q)
	f.out.Normal = append(f.out.Normal, f.normal(i, s))
	f.out.put(t, l)
	return i
}
