package form

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// gridStep is the spacing of the distance grid, m.
const gridStep = 0.004

// gridMargin is how far the distance grid reaches beyond the form, m.
const gridMargin = 0.06

// grid holds the coefficients of a signed distance at the nodes of a box: of
// quadratic B-splines, whose sum has a gradient without jumps. Between faces of
// trilinear cells the normal jumps, and cloth that wants to rest on a face
// never does. Only X >= 0 is stored: the form is its own mirror image. Node
// i = 0 lies on X = 0.
type grid struct {
	y0, z0     float64
	nx, ny, nz int
	d          []float32 // m, len nx·ny·nz, x slowest, z fastest
}

// smooth turns distances at the nodes into coefficients. The B-splines give a
// node ⅛ of its neighbours on a line; that is taken off beforehand, so on a
// smooth surface the distance is met to the fourth order in the step at the
// nodes and to the third between them.
func (g *grid) smooth() {
	plane := g.ny * g.nz
	out := make([]float32, len(g.d))
	for i := range g.nx {
		for j := range g.ny {
			for k := range g.nz {
				o := (i*g.ny+j)*g.nz + k
				c := g.d[o]
				last := o - plane
				if i == 0 {
					last = o + plane
				}
				if i < g.nx-1 {
					c -= (g.d[last] + g.d[o+plane] - 2*g.d[o]) / 8
				}
				if j > 0 && j < g.ny-1 {
					c -= (g.d[o-g.nz] + g.d[o+g.nz] - 2*g.d[o]) / 8
				}
				if k > 0 && k < g.nz-1 {
					c -= (g.d[o-1] + g.d[o+1] - 2*g.d[o]) / 8
				}
				out[o] = c
			}
		}
	}
	g.d = out
}

// at returns the distance and its gradient. Outside the box that is the
// distance at the nearest point of the box plus the way to it, and the gradient
// of that sum.
func (g *grid) at(p r3.Vec) (float64, r3.Vec) {
	const inv = 1 / gridStep
	mirror := math.Signbit(p.X)
	if mirror {
		p.X = -p.X
	}
	u, v, w := p.X*inv, (p.Y-g.y0)*inv, (p.Z-g.z0)*inv
	a, b, c := within(u, 0, g.nx), within(v, 0.5, g.ny), within(w, 0.5, g.nz)
	d, n := g.inside(a, b, c)
	if a != u || b != v || c != w {
		out := r3.Scale(gridStep, r3.Vec{X: u - a, Y: v - b, Z: w - c})
		d, n = beyond(d, n, out)
	}
	if mirror {
		n.X = -n.X
	}
	return d, n
}

// within returns the nearest coordinate, in steps, that has nodes on both sides.
func within(x, least float64, n int) float64 {
	if !(x > least) {
		return least
	}
	return min(x, float64(n)-1.5)
}

// beyond adds the way out of the box to the distance on it.
func beyond(d float64, n, out r3.Vec) (float64, r3.Vec) {
	way := r3.Norm(out)
	if out.X != 0 {
		n.X = out.X / way
	}
	if out.Y != 0 {
		n.Y = out.Y / way
	}
	if out.Z != 0 {
		n.Z = out.Z / way
	}
	return d + way, n
}

// inside sums the B-splines at a place in steps.
func (g *grid) inside(u, v, w float64) (float64, r3.Vec) {
	const inv = 1 / gridStep
	i, j, k := min(int(u+0.5), g.nx-2), min(int(v+0.5), g.ny-2), min(int(w+0.5), g.nz-2)
	p, q, r := weigh(u-float64(i)), weigh(v-float64(j)), weigh(w-float64(k))
	plane := g.ny * g.nz
	mid := i * plane
	last := mid - plane
	if i == 0 {
		last = plane
	}
	o := (j-1)*g.nz + k - 1
	var d float64
	var n r3.Vec
	for x, at := range [3]int{last + o, mid + o, mid + plane + o} {
		f0, s0 := g.line(at, &r)
		f1, s1 := g.line(at+g.nz, &r)
		f2, s2 := g.line(at+2*g.nz, &r)
		e := q.by[0]*f0 + q.by[1]*f1 + q.by[2]*f2
		ey := q.slope[0]*f0 + q.slope[1]*f1 + q.slope[2]*f2
		ez := q.by[0]*s0 + q.by[1]*s1 + q.by[2]*s2
		d += p.by[x] * e
		n.X += p.slope[x] * e
		n.Y += p.by[x] * ey
		n.Z += p.by[x] * ez
	}
	return d, r3.Scale(inv, n)
}

// line sums three nodes on a line along Z from node o, and their slope.
func (g *grid) line(o int, r *weights) (sum, slope float64) {
	c := (*[3]float32)(g.d[o:])
	c0, c1, c2 := float64(c[0]), float64(c[1]), float64(c[2])
	return r.by[0]*c0 + r.by[1]*c1 + r.by[2]*c2, r.slope[0]*c0 + r.slope[1]*c1 + r.slope[2]*c2
}

// weights are those of three neighbouring nodes on a line, and their slopes.
type weights struct{ by, slope [3]float64 }

// weigh returns the quadratic B-splines at t from the middle node, −½..½.
func weigh(t float64) weights {
	a, b := 0.5-t, 0.5+t
	return weights{[3]float64{a * a / 2, 0.75 - t*t, b * b / 2}, [3]float64{-a, -2 * t, b}}
}
