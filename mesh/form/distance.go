package form

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// gridStep is the spacing of the distance grid, m.
const gridStep = 0.004

// gridMargin is how far the distance grid reaches beyond the form, m.
const gridMargin = 0.06

// grid holds signed distances at the nodes of a box. Only X >= 0 is stored:
// the form is its own mirror image. Node i = 0 lies on X = 0.
type grid struct {
	y0, z0     float64
	nx, ny, nz int
	d          []float32 // m, len nx·ny·nz, x slowest, z fastest
}

// at returns the trilinear distance and its gradient.
func (g *grid) at(p r3.Vec) (float64, r3.Vec) {
	const inv = 1 / gridStep
	mirror := math.Signbit(p.X)
	if mirror {
		p.X = -p.X
	}
	u, v, w := p.X*inv, (p.Y-g.y0)*inv, (p.Z-g.z0)*inv
	if !(u < float64(g.nx-1) && v >= 0 && v < float64(g.ny-1) && w >= 0 && w < float64(g.nz-1)) {
		return g.beyond(p, mirror)
	}
	i, j, k := int(u), int(v), int(w)
	d, n := g.inside((i*g.ny+j)*g.nz+k, u-float64(i), v-float64(j), w-float64(k))
	if mirror {
		n.X = -n.X
	}
	return d, n
}

// inside interpolates in the cell whose first node is o.
func (g *grid) inside(o int, u, v, w float64) (float64, r3.Vec) {
	const inv = 1 / gridStep
	a := g.d[o : o+g.nz+2 : o+g.nz+2]
	o += g.ny * g.nz
	b := g.d[o : o+g.nz+2 : o+g.nz+2]
	d000, d001, d010, d011 := float64(a[0]), float64(a[1]), float64(a[g.nz]), float64(a[g.nz+1])
	d100, d101, d110, d111 := float64(b[0]), float64(b[1]), float64(b[g.nz]), float64(b[g.nz+1])
	x00, x01, x10, x11 := d100-d000, d101-d001, d110-d010, d111-d011
	c00, c01, c10, c11 := d000+u*x00, d001+u*x01, d010+u*x10, d011+u*x11
	y0, y1 := c10-c00, c11-c01
	e0, e1 := c00+v*y0, c01+v*y1
	gx0, gx1 := x00+v*(x10-x00), x01+v*(x11-x01)
	return e0 + w*(e1-e0), r3.Vec{
		X: (gx0 + w*(gx1-gx0)) * inv,
		Y: (y0 + w*(y1-y0)) * inv,
		Z: (e1 - e0) * inv,
	}
}

// beyond extends the distance outside the box: the distance at the nearest
// point of the box plus the way to it, with the gradient of that sum.
func (g *grid) beyond(p r3.Vec, mirror bool) (float64, r3.Vec) {
	i, u, du := clampCell(p.X/gridStep, g.nx)
	j, v, dv := clampCell((p.Y-g.y0)/gridStep, g.ny)
	k, w, dw := clampCell((p.Z-g.z0)/gridStep, g.nz)
	d, n := g.inside((i*g.ny+j)*g.nz+k, u, v, w)
	out := r3.Scale(gridStep, r3.Vec{X: du, Y: dv, Z: dw})
	way := r3.Norm(out)
	if du != 0 {
		n.X = out.X / way
	}
	if dv != 0 {
		n.Y = out.Y / way
	}
	if dw != 0 {
		n.Z = out.Z / way
	}
	if mirror {
		n.X = -n.X
	}
	return d + way, n
}

// clampCell splits a coordinate in grid steps into the nearest cell of n nodes,
// the place in it and what lies beyond. NaN goes beyond.
func clampCell(x float64, n int) (cell int, frac, beyond float64) {
	in := 0.0
	if x > 0 {
		in = min(x, float64(n-1))
	}
	cell = min(int(in), n-2)
	return cell, in - float64(cell), x - in
}
