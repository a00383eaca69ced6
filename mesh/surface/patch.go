package surface

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// patch is the surface over one triangle: three cubics that meet in its middle,
// given by the control points of their Bézier nets (G. Farin, "Triangular
// Bernstein–Bézier patches", Computer Aided Geometric Design 3, 1986, §7; the
// names in brackets are those of the net of the side from corner i to corner j).
type patch struct {
	corner [3]r3.Vec    // [300]
	edge   [3][2]r3.Vec // of side i from corner i to the next: [210], [120]
	spoke  [3]r3.Vec    // from corner i towards the middle: [201]
	face   [3]r3.Vec    // of side i: [111]
	inner  [3]r3.Vec    // before the middle, from corner i: [102]
	middle r3.Vec       // [003]
	grad   [3]r2.Vec    // gradients of the barycentric coordinates, 1/m
}

// patchOf returns the patch over the flat corners q with the places p and the
// slopes g there.
func patchOf(q [3]r2.Vec, p [3]r3.Vec, g [3]slope) patch {
	c := patch{corner: p}
	mid := r2.Scale(1./3, r2.Add(q[0], r2.Add(q[1], q[2])))
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		c.edge[i][0] = r3.Add(p[i], r3.Scale(1./3, g[i].along(r2.Sub(q[j], q[i]))))
		c.edge[i][1] = r3.Add(p[j], r3.Scale(1./3, g[j].along(r2.Sub(q[i], q[j]))))
		c.spoke[i] = r3.Add(p[i], r3.Scale(1./3, g[i].along(r2.Sub(mid, q[i]))))
		turn := r2.Sub(q[k], q[j])
		area := r2.Cross(r2.Sub(q[1], q[0]), r2.Sub(q[2], q[0]))
		c.grad[i] = r2.Vec{X: -turn.Y / area, Y: turn.X / area}
	}
	for i := range 3 {
		c.face[i] = c.facePoint(i, q[i], q[(i+1)%3], mid)
	}
	for i := range 3 {
		c.inner[i] = third(c.spoke[i], c.face[i], c.face[(i+2)%3])
	}
	c.middle = third(c.inner[0], c.inner[1], c.inner[2])
	return c
}

// thin is how far beyond an edge, in its own length, the middle of a triangle
// is looked for at most. Slivers at the outline would multiply what their
// corners disagree in.
const thin = 0.5

// facePoint returns [111] of side i, from a to b: that with which the slope
// across the side changes evenly along it, the same from both its triangles.
func (c *patch) facePoint(i int, a, b, mid r2.Vec) r3.Vec {
	j := (i + 1) % 3
	e := r2.Sub(b, a)
	s := r2.Dot(r2.Sub(mid, a), e) / r2.Norm2(e)
	s = min(max(s, -thin), 1+thin)
	start := r3.Sub(c.spoke[i], mix(c.corner[i], c.edge[i][0], s))
	end := r3.Sub(c.spoke[j], mix(c.edge[i][1], c.corner[j], s))
	return r3.Add(mix(start, end, 0.5), mix(c.edge[i][0], c.edge[i][1], s))
}

func third(a, b, c r3.Vec) r3.Vec { return r3.Scale(1./3, r3.Add(a, r3.Add(b, c))) }

// at returns the place at barycentric coordinates, and the slope there.
func (c *patch) at(l [3]float64) (r3.Vec, slope) {
	k := 0 // the corner farthest away: the side across it owns the place
	for i := range 3 {
		if l[i] < l[k] {
			k = i
		}
	}
	i, j := (k+1)%3, (k+2)%3
	u, v, w := l[i]-l[k], l[j]-l[k], 3*l[k]
	// Twice de Casteljau: from ten points to six to three.
	ten := [10]r3.Vec{c.corner[i], c.edge[i][0], c.edge[i][1], c.corner[j], c.spoke[i], c.face[i], c.spoke[j], c.inner[i],
		c.inner[j], c.middle}
	mean := func(a, b, m r3.Vec) r3.Vec { return r3.Add(r3.Scale(u, a), r3.Add(r3.Scale(v, b), r3.Scale(w, m))) }
	six := [6]r3.Vec{
		mean(ten[0], ten[1], ten[4]), mean(ten[1], ten[2], ten[5]), mean(ten[2], ten[3], ten[6]),
		mean(ten[4], ten[5], ten[7]), mean(ten[5], ten[6], ten[8]), mean(ten[7], ten[8], ten[9]),
	}
	a, b, m := mean(six[0], six[1], six[3]), mean(six[1], six[2], six[4]), mean(six[3], six[4], six[5])
	gu, gv, gw := r2.Sub(c.grad[i], c.grad[k]), r2.Sub(c.grad[j], c.grad[k]), r2.Scale(3, c.grad[k])
	by := func(x, y, z float64) r3.Vec {
		return r3.Scale(3, r3.Add(r3.Scale(x, a), r3.Add(r3.Scale(y, b), r3.Scale(z, m))))
	}
	return mean(a, b, m), slope{by(gu.X, gv.X, gw.X), by(gu.Y, gv.Y, gw.Y)}
}
