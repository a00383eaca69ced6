package form

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// triangle is prepared for point queries.
type triangle struct {
	a, ab, ac, n     r3.Vec // m: a corner and two edges; n: unit normal
	abab, abac, acac float64
	invDet           float64 // 1/(abab·acac − abac²)
	invB, invC, inv3 float64 // 1/squared length of ab, ac and the third edge
}

// newTriangle prepares the triangle a b c.
func newTriangle(a, b, c r3.Vec) triangle {
	t := triangle{a: a, ab: r3.Sub(b, a), ac: r3.Sub(c, a)}
	t.n = r3.Unit(r3.Cross(t.ab, t.ac))
	t.abab, t.abac, t.acac = r3.Dot(t.ab, t.ab), r3.Dot(t.ab, t.ac), r3.Dot(t.ac, t.ac)
	t.invDet = 1 / (t.abab*t.acac - t.abac*t.abac)
	t.invB, t.invC = 1/t.abab, 1/t.acac
	t.inv3 = 1 / (t.abab + t.acac - 2*t.abac)
	return t
}

// from returns the vector (m) from the nearest point of the triangle to p.
func (t *triangle) from(p r3.Vec) r3.Vec {
	d := r3.Sub(p, t.a)
	db, dc := r3.Dot(d, t.ab), r3.Dot(d, t.ac)
	u := (db*t.acac - dc*t.abac) * t.invDet
	v := (dc*t.abab - db*t.abac) * t.invDet
	if u < 0 || v < 0 || u+v > 1 {
		u, v = t.rim(db, dc)
	}
	return r3.Vec{
		X: d.X - u*t.ab.X - v*t.ac.X,
		Y: d.Y - u*t.ab.Y - v*t.ac.Y,
		Z: d.Z - u*t.ab.Z - v*t.ac.Z,
	}
}

// rim returns the coordinates along ab and ac of the nearest point on the three
// edges to a point whose offset from the corner has the products db and dc with
// ab and ac.
func (t *triangle) rim(db, dc float64) (u, v float64) {
	clamp := func(x float64) float64 { return min(max(x, 0), 1) }
	best := math.Inf(1)
	try := func(a, b float64) {
		// Squared distance less the constant |d|².
		q := a*a*t.abab + b*b*t.acac + 2*a*b*t.abac - 2*a*db - 2*b*dc
		if q < best {
			best, u, v = q, a, b
		}
	}
	try(clamp(db*t.invB), 0)
	try(0, clamp(dc*t.invC))
	m := clamp((dc - db + t.abab - t.abac) * t.inv3)
	try(1-m, m)
	return u, v
}
