package form

import (
	"math"
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// finder fills a distance grid: each node gets its nearest triangle. Nodes
// next to the surface try every triangle near them; the others take over the
// triangle of a neighbour if it is nearer, swept in all eight directions (Tsai,
// Rapid and accurate computation of the distance function using grids, J.
// Comput. Phys. 178, 2002).
type finder struct {
	*grid
	tri  []triangle
	id   []int32   // their place in the surface
	near []int32   // nearest triangle so far, −1 = none
	dist []float64 // squared distance to it
	when []int8    // the sweep that found it, −1 = none
}

// distances returns the signed distance grid of a closed surface that is
// symmetric about X = 0.
func distances(s mesh.Surface) *grid {
	lo, hi := bounds(s.Pos)
	g := &grid{y0: lo.Y - gridMargin, z0: lo.Z - gridMargin}
	count := func(length float64) int { return int(math.Ceil(length/gridStep)) + 1 }
	g.nx, g.ny, g.nz = count(hi.X+gridMargin), count(hi.Y-lo.Y+2*gridMargin), count(hi.Z-lo.Z+2*gridMargin)
	f := &finder{grid: g}
	size := g.nx * g.ny * g.nz
	f.near, f.dist, f.when = make([]int32, size), make([]float64, size), make([]int8, size)
	for i := range f.near {
		f.near[i], f.dist[i], f.when[i] = -1, math.Inf(1), -1
	}
	f.scatter(s)
	for dir := range int8(8) {
		f.sweep(dir)
	}
	f.polish(s)
	f.sign()
	return g
}

// bounds returns the corners of the box around p.
func bounds(p []r3.Vec) (lo, hi r3.Vec) {
	lo, hi = p[0], p[0]
	for _, q := range p {
		lo = r3.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
		hi = r3.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
	}
	return lo, hi
}

// try offers triangle t to node o at p, and reports whether it is the nearest so far.
func (f *finder) try(o int, p r3.Vec, t int32) bool {
	q := r3.Norm2(f.tri[t].from(p))
	if q >= f.dist[o] {
		return false
	}
	f.dist[o], f.near[o] = q, t
	return true
}

func (f *finder) place(i, j, k int) r3.Vec {
	return r3.Vec{X: float64(i) * gridStep, Y: f.y0 + float64(j)*gridStep, Z: f.z0 + float64(k)*gridStep}
}

// scatter offers each triangle to the nodes within two steps of it. Triangles
// of the other half reach nodes on X >= 0 only next to the middle plane.
func (f *finder) scatter(s mesh.Surface) {
	const reach = 2 * gridStep
	for n, t := range s.Tris {
		c := []r3.Vec{s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]}
		lo, hi := bounds(c)
		if hi.X < -reach {
			continue
		}
		id := int32(len(f.tri))
		f.id = append(f.id, int32(n))
		f.tri = append(f.tri, newTriangle(c[0], c[1], c[2]))
		from := func(x, x0 float64) int { return max(int(math.Ceil((x-reach-x0)/gridStep)), 0) }
		to := func(x, x0 float64) int { return int((x + reach - x0) / gridStep) }
		for i := from(lo.X, 0); i <= to(hi.X, 0); i++ {
			for j := from(lo.Y, f.y0); j <= to(hi.Y, f.y0); j++ {
				for k := from(lo.Z, f.z0); k <= to(hi.Z, f.z0); k++ {
					f.try((i*f.ny+j)*f.nz+k, f.place(i, j, k), id)
				}
			}
		}
	}
}

// sweep passes the nearest triangles on in one of the eight diagonal
// directions. A neighbour that has found nothing since it was last asked the same way is not
// asked again.
func (f *finder) sweep(dir int8) {
	walk := func(n int, bit int8) (first, end, step int) {
		if dir&bit != 0 {
			return n - 1, -1, -1
		}
		return 0, n, 1
	}
	i0, i1, di := walk(f.nx, 1)
	j0, j1, dj := walk(f.ny, 2)
	k0, k1, dk := walk(f.nz, 4)
	asked := [3]int8{before(dir, 1), before(dir, 2), before(dir, 4)}
	for i := i0; i != i1; i += di {
		for j := j0; j != j1; j += dj {
			o := (i*f.ny+j)*f.nz + k0
			for k := k0; k != k1; k += dk {
				adopt := func(nb int, asked int8) {
					if t := f.near[nb]; t >= 0 && f.when[nb] > asked && t != f.near[o] && f.try(o, f.place(i, j, k), t) {
						f.when[o] = dir
					}
				}
				if i != i0 {
					adopt(o-di*f.ny*f.nz, asked[0])
				}
				if j != j0 {
					adopt(o-dj*f.nz, asked[1])
				}
				if k != k0 {
					adopt(o-dk, asked[2])
				}
				o += dk
			}
		}
	}
}

// before returns the last sweep before dir that went the same way along an axis; −2 if none did.
func before(dir, axis int8) int8 {
	for d := dir - 1; d >= 0; d-- {
		if (d^dir)&axis == 0 {
			return d
		}
	}
	return -2
}

// polish makes the distances within reach of cloth exact: sweeping can miss the
// nearest triangle where it is nearest to no neighbour, but then it lies beside
// the one that was found.
func (f *finder) polish(s mesh.Surface) {
	const band = 0.04
	beside := f.ring(s)
	for i := range f.nx {
		for j := range f.ny {
			for k := range f.nz {
				o := (i*f.ny+j)*f.nz + k
				if f.dist[o] > band*band {
					continue
				}
				p := f.place(i, j, k)
				for last := int32(-1); last != f.near[o]; {
					last = f.near[o]
					for _, t := range beside[last] {
						f.try(o, p, t)
					}
				}
			}
		}
	}
}

// ring lists for each prepared triangle those that share a vertex with it.
func (f *finder) ring(s mesh.Surface) [][]int32 {
	at := make([][]int32, len(s.Pos))
	for i, id := range f.id {
		for _, v := range s.Tris[id] {
			at[v] = append(at[v], int32(i))
		}
	}
	out := make([][]int32, len(f.tri))
	for i, id := range f.id {
		for _, v := range s.Tris[id] {
			out[i] = append(out[i], at[v]...)
		}
		slices.Sort(out[i])
		out[i] = slices.Compact(out[i])
	}
	return out
}

// sign stores the signed distances: outside where the node lies before the
// plane of its nearest triangle. That is exact while neighbouring triangles
// meet at less than a right angle.
func (f *finder) sign() {
	f.d = make([]float32, len(f.dist))
	o := 0
	for i := range f.nx {
		for j := range f.ny {
			for k := range f.nz {
				d := math.Sqrt(f.dist[o])
				t := &f.tri[f.near[o]]
				if r3.Dot(t.n, t.from(f.place(i, j, k))) < 0 {
					d = -d
				}
				f.d[o] = float32(d)
				o++
			}
		}
	}
}
