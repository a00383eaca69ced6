package sim

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// inertia is the fictitious mass of a node for a unit step: one along the
// cloth, a far smaller one across it. Yarns hardly stretch but bend freely, so
// with one mass for both the folds would creep while the yarns ring.
type inertia struct {
	normal        r3.Vec  // unit; 0 where the node has no neighbours across
	along, across float64 // kg
	factor        float64 // transverse mass factor, 1 and more: what across is multiplied by, see guard
}

// nodeStiffness is what the mass of a node is made from.
type nodeStiffness struct {
	near  [4]int32   // next and last along the warp, next and last along the weft; itself where missing
	k     [4]float64 // N/m, links to them
	shear float64    // N/m, row sum of the shear stiffness of its cells
	bend  float64    // N/m, row sum of bending and twist
}

// Row sums of the absolute stiffness matrix bound its largest eigenvalue
// (Gershgorin), and a quarter of it is the smallest mass for which a unit step
// is stable; a tenth is to spare for what the geometry adds.
const stable = 1.1 / 4

// share splits the square of the sum of an along and an across move,
// (a + b)² ≤ (1 + share)·a² + (1 + 1/share)·b².
const share = 0.5

// leastAcross is the smallest mass across over that along where a coarse level helps the
// cloth along, leastAlone where there is none: lighter, a coarse lattice flutters.
const (
	leastAcross = 0.03
	leastAlone  = 0.1
)

// reshape sets the masses of the nodes lo to hi for the cloth at x. Across, a
// yarn counts with its tension and with the square of its slope to the normal;
// even gives both ways the mass along.
func (c *Cloth) reshape(lo, hi int, x []r3.Vec, even bool, out []inertia) {
	least := leastAcross
	if meshes[0]*c.h > broadest {
		least = leastAlone
	}
	for i := lo; i < hi; i++ {
		k, o := &c.stiffness[i], &out[i]
		n, ok := c.normal(k, x)
		along, across := 0.0, 0.0
		var lean float64 // sum of the squared slopes of the yarns
		for j, m := range k.near {
			if k.k[j] == 0 {
				continue
			}
			d := r3.Sub(x[m], x[i])
			l := math.Sqrt(max(r3.Norm2(d), tiny))
			slope := r3.Dot(d, n) / l
			slope *= slope
			tension := math.Abs(k.k[j] * (1 - c.h/l))
			across += 2*tension + 2*(1+1/share)*k.k[j]*slope
			along += tension + 2*(1+share)*k.k[j]
			lean += slope / 2
		}
		u, v := r3.Sub(x[k.near[0]], x[k.near[1]]), r3.Sub(x[k.near[2]], x[k.near[3]])
		sheared := math.Abs(r3.Dot(u, v)) / math.Sqrt(max(r3.Norm2(u)*r3.Norm2(v), tiny))
		across += k.shear * (sheared + (1+1/share)*lean/2)
		along += k.shear * (1 + share + sheared)
		o.normal, o.along = n, stable*(along+k.bend)
		if o.across = min(o.along, max(stable*(across+k.bend), least*o.along)); even || !ok {
			o.across = o.along
		}
	}
}

// normal returns the unit normal of the cloth at a node from the neighbours it
// has; false where they lie in one line.
func (c *Cloth) normal(k *nodeStiffness, x []r3.Vec) (r3.Vec, bool) {
	n := r3.Cross(r3.Sub(x[k.near[0]], x[k.near[1]]), r3.Sub(x[k.near[2]], x[k.near[3]]))
	l := math.Sqrt(r3.Norm2(n))
	if l == 0 {
		return r3.Vec{}, false
	}
	return r3.Scale(1/l, n), true
}

// answer returns how much a unit step of force f speeds the node up, with what
// contact and holds add to its mass.
func (o *inertia) answer(f r3.Vec, extra float64) r3.Vec {
	a, n := 1/(o.along+extra), 1/(min(o.along, o.across*o.factor)+extra)
	n = (n - a) * (f.X*o.normal.X + f.Y*o.normal.Y + f.Z*o.normal.Z)
	return r3.Vec{X: a*f.X + n*o.normal.X, Y: a*f.Y + n*o.normal.Y, Z: a*f.Z + n*o.normal.Z}
}

// guard raises the transverse mass factor of a node whose force turns round undiminished, the sign of
// a mass too small for its stiffness: layers and sharp folds can be stiffer
// across than the row sums know. It forgets slowly.
func (o *inertia) guard(now, before r3.Vec) {
	turn := now.X*before.X + now.Y*before.Y + now.Z*before.Z
	if turn < -0.9*(before.X*before.X+before.Y*before.Y+before.Z*before.Z) {
		o.factor = min(1.5*o.factor, 1/leastAcross)
	} else {
		o.factor = max(1, 0.95*o.factor)
	}
}
