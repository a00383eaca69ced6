package sim

import (
	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// cell is a square of four crossings 00, 10, 01, 11 along warp and weft.
type cell struct {
	o, u, v, d int32
	sides      [4]side // two along the warp, two along the weft
	shear      float64 // J, shear stiffness × cloth
	rub        float64 // J, the same of the friction of shear
	twist      float64 // N/m, coefficient of the mixed difference o − u − v + d
	midU, midV float64 // 0..1, middle of the cloth in the cell
	off        float64 // (midU − ½)(midV − ½)
}

// side is a side of a cell and the crossings before and behind it along its yarn,
// which together tell how the yarn bends in the cell.
type side struct {
	last, next int32 // before the side and behind it; any crossing where there is none
	ends       uint8 // in bends
}

// bends are the weights of the four crossings of a side and beyond it in the mean second difference of
// two parallel sides. With no crossing at one end the bend at the other is taken for
// both; with none at both, that of the other side for both.
var bends = [...][4]float64{
	{}, {0.25, -0.25, -0.25, 0.25}, {0.5, -1, 0.5, 0}, {0, 0.5, -1, 0.5},
	{0.5, -0.5, -0.5, 0.5}, {1, -2, 1, 0}, {0, 1, -2, 1},
}

// sidesOf returns the sides of a cell with corners q.
func sidesOf(l *lattice.Lattice, q [4]int32) [4]side {
	out := [4]side{sideOf(l.U, q[0], q[1]), sideOf(l.U, q[2], q[3]), sideOf(l.V, q[0], q[2]), sideOf(l.V, q[1], q[3])}
	for k := 0; k < 4; k += 2 {
		a, b := &out[k].ends, &out[k+1].ends
		switch {
		case *a == 0 && *b > 0:
			*b += 3
		case *b == 0 && *a > 0:
			*a += 3
		}
	}
	return out
}

// sideOf returns the side from crossing a to the next, b.
func sideOf(yarn []lattice.Axis, a, b int32) side {
	r := side{a, b, 0}
	if yarn[a].Next != b { // at the tip of a slit a yarn may leave the cell
		return r
	}
	last, next := yarn[a].Prev, yarn[b].Next
	switch {
	case last != lattice.None && next != lattice.None:
		r = side{last, next, 1}
	case last != lattice.None:
		r = side{last, b, 2}
	case next != lattice.None:
		r = side{a, next, 3}
	}
	return r
}

// shearAndTwist adds the forces of ½Gγ² (and what jams, see jam) for the
// departure γ from a right angle between the mean warp edge a and the mean weft
// edge b of a cell, of its friction, whose sets move where it slips, and of twist
// ½t|o − u − v + d|².
//
// Edges are chords. Where yarns bend, a·b of cloth that is not sheared is
// −h⁴·κuv·(κu + κv)/8 and not 0: on a cylinder of any axis, if the yarns keep their
// lengths as chords and the cloth along the axis keeps its own. So a·b is corrected
// by t·s/8, where the mixed difference t is h²·κuv and s, the second differences of
// both yarns in the cell together, h²·(κu + κv) along the normal; and by off·t·t
// where the middle of the cloth is not that of the cell. Without it a fold of
// curvature κ on the bias is too stiff by G·h⁴·κ²/(256·B) of its bending.
func (c *Cloth) shearAndTwist(cells []cell, x []r3.Vec, set []float64, out []contact.Sum) {
	for i := range cells {
		q := &cells[i]
		o, u, v, d := &x[q.o], &x[q.u], &x[q.v], &x[q.d]
		// t is the mixed difference; a = u − o + midV·t and b = v − o + midU·t.
		tx, ty, tz := o.X-u.X-v.X+d.X, o.Y-u.Y-v.Y+d.Y, o.Z-u.Z-v.Z+d.Z
		ax, ay, az := u.X-o.X+q.midV*tx, u.Y-o.Y+q.midV*ty, u.Z-o.Z+q.midV*tz
		bx, by, bz := v.X-o.X+q.midU*tx, v.Y-o.Y+q.midU*ty, v.Z-o.Z+q.midU*tz
		s := q.bent(x)
		ex, ey, ez := s.X/8-q.off*tx, s.Y/8-q.off*ty, s.Z/8-q.off*tz
		aa, bb := max(ax*ax+ay*ay+az*az, tiny), max(bx*bx+by*by+bz*bz, tiny)
		ab := ax*bx + ay*by + az*bz + tx*ex + ty*ey + tz*ez
		p := 1 / (aa * bb)
		k := -q.shear * c.steep(ab*ab*p) * ab * p // dE/ds·s/(|a||b|) for the sine s
		if c.slides {
			k -= q.slide(&set[q.o], ab, p)
		}
		qa, qb := k*ab*p*bb, k*ab*p*aa
		fax, fay, faz := k*bx-qa*ax, k*by-qa*ay, k*bz-qa*az
		fbx, fby, fbz := k*ax-qb*bx, k*ay-qb*by, k*az-qb*bz
		// Each mean edge carries its force to t with its share.
		gx := q.midV*fax + q.midU*fbx - q.twist*tx + k*(ex-q.off*tx)
		gy := q.midV*fay + q.midU*fby - q.twist*ty + k*(ey-q.off*ty)
		gz := q.midV*faz + q.midU*fbz - q.twist*tz + k*(ez-q.off*tz)
		add(&out[q.o].Force, gx-fax-fbx, gy-fay-fby, gz-faz-fbz)
		add(&out[q.u].Force, fax-gx, fay-gy, faz-gz)
		add(&out[q.v].Force, fbx-gx, fby-gy, fbz-gz)
		add(&out[q.d].Force, gx, gy, gz)
		q.carry(r3.Vec{X: k / 8 * tx, Y: k / 8 * ty, Z: k / 8 * tz}, out)
	}
}

// corners lists the ends of the sides of a cell, as sides has them.
func (q *cell) corners() [4][2]int32 {
	return [4][2]int32{{q.o, q.u}, {q.v, q.d}, {q.o, q.v}, {q.u, q.d}}
}

// bent returns the second differences of both yarns in the middle of the cell together, m.
func (q *cell) bent(x []r3.Vec) r3.Vec {
	var s r3.Vec
	for k, c := range q.corners() {
		r := &q.sides[k]
		w := &bends[r.ends]
		l, a, b, n := &x[r.last], &x[c[0]], &x[c[1]], &x[r.next]
		s.X += w[0]*l.X + w[1]*a.X + w[2]*b.X + w[3]*n.X
		s.Y += w[0]*l.Y + w[1]*a.Y + w[2]*b.Y + w[3]*n.Y
		s.Z += w[0]*l.Z + w[1]*a.Z + w[2]*b.Z + w[3]*n.Z
	}
	return s
}

// carry lays a force on what bent returns onto the crossings of the sides and beyond.
func (q *cell) carry(f r3.Vec, out []contact.Sum) {
	for k, c := range q.corners() {
		r := &q.sides[k]
		w := &bends[r.ends]
		add(&out[r.last].Force, w[0]*f.X, w[0]*f.Y, w[0]*f.Z)
		add(&out[c[0]].Force, w[1]*f.X, w[1]*f.Y, w[1]*f.Z)
		add(&out[c[1]].Force, w[2]*f.X, w[2]*f.Y, w[2]*f.Z)
		add(&out[r.next].Force, w[3]*f.X, w[3]*f.Y, w[3]*f.Z)
	}
}
