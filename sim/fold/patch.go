package fold

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// patchReach is the radius of a patch in lattice spacings: some 28 vertices.
// Half a spacing more or less changed the largest error of sine crests on 10 mm
// by 0.1 mm at most.
const patchReach = 3

// patch is a smooth surface through the vertices near a flat place. A sheet of
// triangles cuts its crests by the height of an arc over a chord; the vertices
// are all that lies on the cloth itself, so the patch passes through them and
// asks nothing of how they are joined: straight, bias or cut.
//
// It is the polyharmonic spline with kernel r³ and a linear part (Duchon,
// "Splines minimizing rotation-invariant semi-norms in Sobolev spaces", 1977):
// through points on a line it would be the natural cubic spline.
type patch struct {
	origin r2.Vec   // m, flat place of its middle
	unit   float64  // m, the lattice spacing
	at     []r2.Vec // units from origin, flat places of the vertices
	weight []r3.Vec // m, len = len(at) + 3: of the kernels, of 1, x and y
}

// patchAt fits the patch about q to the vertices of s among near; false if
// these do not determine it. Of two vertices in nearly one place the second is
// left out: they are the shores of a slit, or a rim beside a crossing.
func patchAt(s *mesh.Sheet, near []int32, q r2.Vec, spacing float64) (patch, bool) {
	p := patch{origin: q, unit: spacing}
	var right []r3.Vec
	for _, i := range near {
		d := p.from(s.Flat[i])
		if r2.Norm2(d) <= patchReach*patchReach && !crowded(p.at, d) {
			p.at, right = append(p.at, d), append(right, s.Pos[i])
		}
	}
	p.weight = append(right, r3.Vec{}, r3.Vec{}, r3.Vec{})
	return p, solve(p.matrix(), p.weight)
}

// crowded reports whether q lies within a quarter of a spacing of one of at.
func crowded(at []r2.Vec, q r2.Vec) bool {
	const least = 0.25
	for _, c := range at {
		if r2.Norm2(r2.Sub(c, q)) < least*least {
			return true
		}
	}
	return false
}

// matrix returns the rows of the conditions on the weights: the patch passes
// through its vertices, and its kernels hold no linear part.
func (p patch) matrix() [][]float64 {
	n := len(p.at)
	rows := make([][]float64, n+3)
	all := make([]float64, len(rows)*len(rows))
	for i := range rows {
		rows[i] = all[i*len(rows) : (i+1)*len(rows)]
	}
	for i, a := range p.at {
		for j, b := range p.at[:i] {
			k := cube(r2.Sub(a, b))
			rows[i][j], rows[j][i] = k, k
		}
		for j, v := range [3]float64{1, a.X, a.Y} {
			rows[i][n+j], rows[n+j][i] = v, v
		}
	}
	return rows
}

// point returns the place in space of flat place q.
func (p patch) point(q r2.Vec) r3.Vec {
	d, n := p.from(q), len(p.at)
	out := r3.Add(p.weight[n], r3.Add(r3.Scale(d.X, p.weight[n+1]), r3.Scale(d.Y, p.weight[n+2])))
	for i, c := range p.at {
		out = r3.Add(out, r3.Scale(cube(r2.Sub(d, c)), p.weight[i]))
	}
	return out
}

func (p patch) from(q r2.Vec) r2.Vec { return r2.Scale(1/p.unit, r2.Sub(q, p.origin)) }

// cube returns |d|³.
func cube(d r2.Vec) float64 {
	q := r2.Norm2(d)
	return q * math.Sqrt(q)
}

// solve replaces b by the solution x of a·x = b by elimination with row
// exchange; it spoils a. False if a is singular.
func solve(a [][]float64, b []r3.Vec) bool {
	for k := range a {
		exchange(a, b, k)
		if math.Abs(a[k][k]) < same {
			return false
		}
		for i := k + 1; i < len(a); i++ {
			m := a[i][k] / a[k][k]
			for j := k + 1; j < len(a); j++ {
				a[i][j] -= m * a[k][j]
			}
			b[i] = r3.Sub(b[i], r3.Scale(m, b[k]))
		}
	}
	for k := len(a) - 1; k >= 0; k-- {
		for j := k + 1; j < len(a); j++ {
			b[k] = r3.Sub(b[k], r3.Scale(a[k][j], b[j]))
		}
		b[k] = r3.Scale(1/a[k][k], b[k])
	}
	return true
}

// exchange brings the row with the largest element of column k, from row k on, to row k.
func exchange(a [][]float64, b []r3.Vec, k int) {
	p := k
	for i := k + 1; i < len(a); i++ {
		if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
			p = i
		}
	}
	a[k], a[p], b[k], b[p] = a[p], a[k], b[p], b[k]
}
