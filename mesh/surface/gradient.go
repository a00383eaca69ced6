package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// slope is how a vertex and what is near it go on in the flat: the change of
// the place in space for each metre along X and Y of the piece, no unit.
type slope struct{ x, y r3.Vec }

// along returns the change of place over the flat step d, m.
func (s slope) along(d r2.Vec) r3.Vec { return r3.Add(r3.Scale(d.X, s.x), r3.Scale(d.Y, s.y)) }

// reach is how far a vertex looks about for its slope, in spacings: over the
// eight crossings around it.
const reach = 1.6

// all is a choice of every vertex.
func (b *base) all() []bool {
	out := make([]bool, len(b.pos))
	for i := range out {
		out[i] = true
	}
	return out
}

// gradients returns the slope at every vertex, len = vertices: that of the
// quadratic through it that fits what is chosen around it best. Front and
// facing are fitted each by itself: where they turn into each other one
// quadratic fits neither. On the fold line the slope is the mean of theirs,
// which runs from the one over to the other. Along a curve it is the curve's.
func (b *base) gradients(chosen []bool) []slope {
	every := make([]int32, len(b.pos))
	for i := range every {
		every[i] = int32(i)
	}
	return b.slopes(every, chosen)
}

// slopes returns the slopes of the vertices listed, see gradients.
func (b *base) slopes(list []int32, chosen []bool) []slope {
	rings, weight := b.rings(), b.shares()
	out := make([]slope, len(list))
	var walk walker
	for k, i := range list {
		near := walk.around(b, rings, i)
		layer := func(side int8) (slope, bool) {
			f := fit{span: b.spacing}
			for _, j := range near {
				if chosen[j] && b.side[j]*side >= 0 {
					f.add(r2.Sub(b.flat[j], b.flat[i]), r3.Sub(b.pos[j], b.pos[i]), weight[j])
					f.beyond = f.beyond || b.side[j] != 0
				}
			}
			return f.slope(), f.beyond
		}
		out[k] = meetSlope(b.side[i], layer)
		out[k].follow(b.run[i])
	}
	return out
}

// meetSlope returns the slope of the layer on which a vertex lies, or the mean of
// both where both begin.
func meetSlope(side int8, layer func(int8) (slope, bool)) slope {
	if side != 0 {
		s, _ := layer(side)
		return s
	}
	front, isFront := layer(-1)
	facing, isFacing := layer(1)
	switch {
	case !isFacing:
		return front
	case !isFront:
		return facing
	}
	return slope{mix(front.x, facing.x, 0.5), mix(front.y, facing.y, 0.5)}
}

// tangent is how the place changes along a curve in the flat.
type tangent struct {
	flat  r2.Vec // unit; zero: the vertex is on no curve
	space r3.Vec // for each metre in the flat, no unit
}

// follow changes the slope along a curve to that of the curve.
func (s *slope) follow(t tangent) {
	miss := r3.Sub(t.space, s.along(t.flat))
	s.x = r3.Add(s.x, r3.Scale(t.flat.X, miss))
	s.y = r3.Add(s.y, r3.Scale(t.flat.Y, miss))
}

// shares returns the cloth that belongs to each vertex in cells, len =
// vertices, so that many vertices close together count no more than one.
func (b *base) shares() []float64 {
	out := make([]float64, len(b.pos))
	for _, t := range b.tris {
		a := r2.Cross(r2.Sub(b.flat[t[1]], b.flat[t[0]]), r2.Sub(b.flat[t[2]], b.flat[t[0]])) / 6
		for _, v := range t {
			out[v] += a / (b.spacing * b.spacing)
		}
	}
	return out
}

// rings lists the neighbours of every vertex.
func (b *base) rings() [][]int32 {
	out := make([][]int32, len(b.pos))
	for _, t := range b.tris {
		for k := range 3 {
			out[t[k]] = append(out[t[k]], t[(k+1)%3], t[(k+2)%3])
		}
	}
	return out
}

// walker finds what lies around a vertex.
type walker struct {
	seen  []int32 // len = vertices; the walk on which it was seen last
	walks int32
	queue []int32
}

// around lists the vertices within reach of i that can be come to from it over
// its own layer, so that neither a slit nor the fold line is crossed.
func (w *walker) around(b *base, rings [][]int32, i int32) []int32 {
	if w.seen == nil {
		w.seen = make([]int32, len(b.pos))
	}
	w.walks++
	w.queue = append(w.queue[:0], i)
	w.seen[i] = w.walks
	limit := reach * reach * b.spacing * b.spacing
	for at := 0; at < len(w.queue); at++ {
		for _, j := range rings[w.queue[at]] {
			if w.seen[j] == w.walks || b.side[i]*b.side[j] < 0 || r2.Norm2(r2.Sub(b.flat[j], b.flat[i])) > limit {
				continue
			}
			w.seen[j] = w.walks
			w.queue = append(w.queue, j)
		}
	}
	return w.queue[1:]
}

// fit gathers the normal equations of the quadratic through the origin, its
// terms in spans: u, v, u²/2, uv, v²/2.
type fit struct {
	span   float64 // m
	beyond bool    // it has places off the fold line
	a      [5][5]float64
	b      [5]r3.Vec
}

// add takes in a place that lies d (m) away in the flat and p (m) in space. It
// counts the less the farther it is.
func (f *fit) add(d r2.Vec, p r3.Vec, weight float64) {
	u, v := d.X/f.span, d.Y/f.span
	weight *= math.Exp(-2 * (u*u + v*v))
	row := [5]float64{u, v, u * u / 2, u * v, v * v / 2}
	for i, x := range row {
		for j, y := range row {
			f.a[i][j] += weight * x * y
		}
		f.b[i] = r3.Add(f.b[i], r3.Scale(weight*x, p))
	}
}

// ridge keeps a fit from bending where too few places tell how: in a corner,
// and along a strip of one cell.
const ridge = 0.02

// slope solves the equations by Gauss's elimination without pivots: the matrix
// is symmetric and positive.
func (f *fit) slope() slope {
	for k := range f.a {
		f.a[k][k] += 1e-9
		if k > 1 {
			f.a[k][k] += ridge
		}
	}
	for k := range f.a {
		for i := k + 1; i < 5; i++ {
			m := f.a[i][k] / f.a[k][k]
			for j := k; j < 5; j++ {
				f.a[i][j] -= m * f.a[k][j]
			}
			f.b[i] = r3.Sub(f.b[i], r3.Scale(m, f.b[k]))
		}
	}
	for k := 4; k >= 0; k-- {
		for j := k + 1; j < 5; j++ {
			f.b[k] = r3.Sub(f.b[k], r3.Scale(f.a[k][j], f.b[j]))
		}
		f.b[k] = r3.Scale(1/f.a[k][k], f.b[k])
	}
	return slope{r3.Scale(1/f.span, f.b[0]), r3.Scale(1/f.span, f.b[1])}
}
