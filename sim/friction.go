package sim

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// yield is the curvature over which the friction of bending builds up, 1/m.
// The KES-F bending tester reads slope and hysteresis beyond 0.5/cm; within a
// tenth of a 1/cm the branches of its loop have parted (common practice).
const yield = 10.0

// Set is where the friction of bending sits: for every stencil the curvature,
// as a second difference along the normal (m), from which the friction moment
// is counted. It lags behind the bend by at most yield. Warp and weft; len =
// nodes.
type Set struct{ U, V []float64 }

// rubbing adds the friction of bending to what the nodes own and moves the
// sets of stencils that slip. The moment per width is at most Stiffness.BendFriction,
// whatever the speed: the bilinear loop of the KES-F bending test.
func (c *Cloth) rubbing(x []r3.Vec, set Set, f []owned) {
	slip := yield * c.h * c.h
	for i := range x {
		k := c.rub[i]
		if k == 0 {
			continue
		}
		u, v := c.Lattice.U[i], c.Lattice.V[i]
		n, ok := normal(x, int32(i), u, v)
		if !ok {
			continue
		}
		if u.Prev != lattice.None && u.Next != lattice.None {
			f[i].bu = r3.Add(f[i].bu, r3.Scale(k*lag(&set.U[i], along(x, u.Prev, int32(i), u.Next, n), slip), n))
		}
		if v.Prev != lattice.None && v.Next != lattice.None {
			f[i].bv = r3.Add(f[i].bv, r3.Scale(k*lag(&set.V[i], along(x, v.Prev, int32(i), v.Next, n), slip), n))
		}
	}
}

// lag returns how far the bend d is from its set, and drags the set along
// where that is more than the slip.
func lag(set *float64, d, slip float64) float64 {
	l := d - *set
	if math.Abs(l) > slip {
		l = math.Copysign(slip, l)
		*set = d - l
	}
	return l
}

// along returns the part of the second difference at o along n.
func along(x []r3.Vec, p, o, q int32, n r3.Vec) float64 {
	a, b, c := &x[p], &x[o], &x[q]
	return n.X*(a.X-2*b.X+c.X) + n.Y*(a.Y-2*b.Y+c.Y) + n.Z*(a.Z-2*b.Z+c.Z)
}

// normal returns the unit normal of the cloth at node i from the neighbours it
// has; the friction turns with it when the cloth turns.
func normal(x []r3.Vec, i int32, u, v lattice.Axis) (r3.Vec, bool) {
	or := func(n int32) int32 {
		if n == lattice.None {
			return i
		}
		return n
	}
	n := r3.Cross(r3.Sub(x[or(u.Next)], x[or(u.Prev)]), r3.Sub(x[or(v.Next)], x[or(v.Prev)]))
	l := math.Sqrt(r3.Norm2(n))
	if l == 0 {
		return n, false
	}
	return r3.Scale(1/l, n), true
}
