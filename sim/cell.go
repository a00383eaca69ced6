package sim

import (
	"math"

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

// bends are the weights of the four crossings of a side, and before and behind it, in
// the mean second difference of two parallel sides. With no crossing at one end the bend at the other is taken for
// both; with none at both, that of the other side for both.
var bends = [...][4]float64{
	{}, {0.25, -0.25, -0.25, 0.25}, {0.5, -1, 0.5, 0}, {0, 0.5, -1, 0.5},
	{0.5, -0.5, -0.5, 0.5}, {1, -2, 1, 0}, {0, 1, -2, 1},
}

// sidesOf returns the sides of a cell with corners q.
func sidesOf(l *lattice.Lattice, q [4]int32) [4]side {
	out := [4]side{sideOf(l, l.U, q[0], q[1]), sideOf(l, l.U, q[2], q[3]), sideOf(l, l.V, q[0], q[2]),
		sideOf(l, l.V, q[1], q[3])}
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

// thin is the share of a cell of cloth below which a crossing at the rim does not tell
// how a yarn bends: nothing holds it there.
const thin = 0.25

// sideOf returns the side from crossing a to the next, b.
func sideOf(l *lattice.Lattice, yarn []lattice.Axis, a, b int32) side {
	r := side{a, b, 0}
	if yarn[a].Next != b { // at the tip of a slit a yarn may leave the cell
		return r
	}
	last, next := yarn[a].Prev, yarn[b].Next
	firm := func(n int32) bool { return n != lattice.None && l.Area[n] >= thin*l.Spacing*l.Spacing }
	switch {
	case firm(last) && firm(next):
		r = side{last, next, 1}
	case firm(last):
		r = side{last, b, 2}
	case firm(next):
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
// lengths as chords and the cloth along the axis keeps its own. So a·b is corrected by
// what bowed returns. Without it a fold of curvature κ on the bias is too stiff by
// G·h⁴·κ²/(256·B) of its bending.
func (c *Cloth) shearAndTwist(cells []cell, x []r3.Vec, set []float64, out []contact.Sum) {
	for i := range cells {
		q := &cells[i]
		o, u, v, d := &x[q.o], &x[q.u], &x[q.v], &x[q.d]
		// t is the mixed difference; a = u − o + midV·t and b = v − o + midU·t.
		t := r3.Vec{X: o.X - u.X - v.X + d.X, Y: o.Y - u.Y - v.Y + d.Y, Z: o.Z - u.Z - v.Z + d.Z}
		a := r3.Vec{X: u.X - o.X + q.midV*t.X, Y: u.Y - o.Y + q.midV*t.Y, Z: u.Z - o.Z + q.midV*t.Z}
		b := r3.Vec{X: v.X - o.X + q.midU*t.X, Y: v.Y - o.Y + q.midU*t.Y, Z: v.Z - o.Z + q.midU*t.Z}
		w := c.bowed(q, a, b, t, q.bent(x))
		aa, bb, ab := max(r3.Norm2(a), tiny), max(r3.Norm2(b), tiny), r3.Dot(a, b)+w.by
		if short := min(aa, bb); short < c.h*c.h/(1+share) {
			c.ballast(q, short, out)
		}
		p := 1 / (aa * bb)
		k := -q.shear * c.steep(ab*ab*p) * ab * p // dE/ds·s/(|a||b|) for the sine s
		if c.slides {
			k -= q.slide(&set[q.o], ab, p)
		}
		qa, qb := k*ab*p*bb, k*ab*p*aa
		fax, fay, faz := k*(b.X+w.a.X)-qa*a.X, k*(b.Y+w.a.Y)-qa*a.Y, k*(b.Z+w.a.Z)-qa*a.Z
		fbx, fby, fbz := k*(a.X+w.b.X)-qb*b.X, k*(a.Y+w.b.Y)-qb*b.Y, k*(a.Z+w.b.Z)-qb*b.Z
		// Each mean edge carries its force to t with its share.
		gx := q.midV*fax + q.midU*fbx - q.twist*t.X + k*w.t.X
		gy := q.midV*fay + q.midU*fby - q.twist*t.Y + k*w.t.Y
		gz := q.midV*faz + q.midU*fbz - q.twist*t.Z + k*w.t.Z
		add(&out[q.o].Force, gx-fax-fbx, gy-fay-fby, gz-faz-fbz)
		add(&out[q.u].Force, fax-gx, fay-gy, faz-gz)
		add(&out[q.v].Force, fbx-gx, fby-gy, fbz-gz)
		add(&out[q.d].Force, gx, gy, gz)
		q.carry(r3.Scale(k, w.s), out)
	}
}

// ballast adds to the mass of the corners of a cell what its shear is stiffer by where
// one of its mean edges, of which short is the square, is shorter than the row sums of
// tie know of: an angle turns with the move of a corner over the edge. Where a corner
// with little cloth at the rim has folded over, a mean edge is next to nothing. With the mass of a flat
// cell such corners swung for ever (denim, two folds laid: at the pins of the shoulder).
func (c *Cloth) ballast(q *cell, short float64, out []contact.Sum) {
	k := stable * 4 * c.stiffest(q) * (1/short - (1+share)/(c.h*c.h))
	for n, w := range q.moves() {
		out[n].Mass += k * w
	}
}

// crushed is the area that the mean edges of a cell span, over that of the flat cell,
// under which what they hide of its shear fades: they are no chords of a bend any more.
// Undiminished it grows without bound. Of 24 fronts hung free on 20 mm with a dart left
// open 11 never came to rest, cells in the dart swinging with up to a hundred times the
// weight. Other cells are left as they are.
const crushed = 0.3

// known returns by what the products of parts along a × b are multiplied to be of parts
// along the unit normal, 1/m⁴, and by how much it falls with a × b, over itself, 1/m⁴;
// n2 is the square of a × b. Where the cell is not crushed they are 1/n2 and 2/n2; from
// there they fade with the share s of that area as s³(10 − 15s + 6s²), smooth twice over.
func (c *Cloth) known(n2 float64) (r, turn float64) {
	least := crushed * c.h * c.h
	if n2 >= least*least {
		return 1 / n2, 2 / n2
	}
	n2 = max(n2, tiny*tiny)
	s := math.Sqrt(n2) / least
	g := 10 + s*(6*s-15)
	return s * s * s * g / n2, (2 - 30*(1-s)*(1-s)/g) / n2
}

// bow is what a·b is corrected by, m², and its slopes, m.
type bow struct {
	by         float64
	a, b, t, s r3.Vec
}

// bowed returns by how much the bend of the yarns hides shear in the product of the mean
// edges a and b of a cell, from its mixed difference t and the second differences s of
// both yarns: tn·(sn/8 − off·tn) of their parts tn and sn along the normal a × b, h²·κuv
// and h²·(κu + κv). What lies in the cloth is no bend, but shear that varies. In
// a crushed cell it fades, see known.
func (c *Cloth) bowed(q *cell, a, b, t, s r3.Vec) bow {
	n := r3.Cross(a, b)
	r, turn := c.known(r3.Norm2(n))
	tn, sn := r3.Dot(t, n), r3.Dot(s, n)
	byT, byS, by := r*(sn/8-2*q.off*tn), r*tn/8, r*tn*(sn/8-q.off*tn)
	turn *= by
	w := r3.Vec{X: byT*t.X + byS*s.X - turn*n.X, Y: byT*t.Y + byS*s.Y - turn*n.Y, Z: byT*t.Z + byS*s.Z - turn*n.Z}
	return bow{by, r3.Cross(b, w), r3.Cross(w, a), r3.Scale(byT, n), r3.Scale(byS, n)}
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
