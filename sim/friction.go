package sim

import (
	"math"

	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// yield is the curvature over which the friction of bending builds up, 1/m.
// The KES-F bending tester reads slope and hysteresis beyond 0.5/cm; within a
// tenth of a 1/cm the branches of its loop have parted (common practice).
const yield = 10.0

// Slip is where the friction of the cloth sits: for every node the curvatures
// along warp and weft, as second differences along the normal (m), and the sine
// of the shear of its cell, from which friction is counted. They lag behind the
// bend by at most yield and behind the sine of the shear by at most shearYield.
// State.Take carries it to another lattice.
type Slip struct{ U, V, Shear []float64 }

// face sets the normals at the nodes of two lists of stencils, which lie in the order of
// their nodes; none where the neighbours of a node lie in one line.
func (c *Cloth) face(u, v []stencil, x, normal []r3.Vec) {
	lo, hi := int32(len(x)), int32(0)
	for _, list := range [2][]stencil{u, v} {
		if n := len(list); n > 0 {
			lo, hi = min(lo, list[0].o), max(hi, list[n-1].o+1)
		}
	}
	for i := lo; i < hi; i++ {
		normal[i], _ = c.normal(&c.stiffness[i], x)
	}
}

// rub adds the friction of bending and moves the sets of stencils that slip.
// The moment per width is at most Stiffness.BendFriction, whatever the speed:
// the bilinear loop of the KES-F bending test.
func (c *Cloth) rub(list []stencil, set []float64, curl, normal []r3.Vec, out []contact.Sum) {
	slip := yield * c.h * c.h
	for i := range list {
		s := &list[i]
		n := normal[s.o]
		if n == (r3.Vec{}) {
			continue
		}
		s.pull(r3.Scale(-s.rub*lag(&set[s.o], r3.Dot(n, curl[s.o]), slip), n), out)
	}
}

// lag returns how far the bend or shear d is from its set, and drags the set along
// where that is more than the slip.
func lag(set *float64, d, slip float64) float64 {
	l := d - *set
	if math.Abs(l) > slip {
		l = math.Copysign(slip, l)
		*set = d - l
	}
	return l
}

// shearYield is the shear over which the friction of shear builds up, rad. The
// KES-F shear tester reads its hysteresis at 0.5°, where the branches of the
// loop have parted; half of that is common practice.
const shearYield = 0.25 * math.Pi / 180

// slide returns the friction of shear of a cell over the lengths of its edges,
// as k in shearAndTwist, and moves the set where it slips.
func (q *cell) slide(set *float64, ab, p float64) float64 {
	r := math.Sqrt(p)
	s := ab * r
	return q.rub * lag(set, s, shearYield) * r / max(flattest, math.Sqrt(max(0, 1-s*s)))
}
