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
	rim        *[2][4]float64 // what tells returns; nil: quarters
	shear      float64        // J, shear stiffness × cloth
	rub        float64        // J, the same of the friction of shear
	twist      float64        // N/m, coefficient of the mixed difference o − u − v + d
	midU, midV float64        // 0..1, middle of the cloth in the cell
	off        float64        // (midU − ½)(midV − ½)
}

// quarters are what tells returns of a cell that is not at the rim.
var quarters = [2][4]float64{{0.25, 0.25, 0.25, 0.25}, {0.25, 0.25, 0.25, 0.25}}

// tells returns the shares of the curls of warp and of weft at the corners in that of the cell.
func (q *cell) tells() *[2][4]float64 {
	if q.rim == nil {
		return &quarters
	}
	return q.rim
}

// tell sets how the curls at the corners tell those of both yarns in the middle of the
// cell. With no crossing at one end of a side the curl at the other is taken for both; with
// none at both, that of the other side for both.
func (q *cell) tell(l *lattice.Lattice) {
	var tells [2][4]float64
	for k, yarn := range [2][]lattice.Axis{l.U, l.V} {
		first, second := [2]int{0, 1 + k}, [2]int{2 - k, 3} // corners of the two sides along the yarn
		n := [4]int32{q.o, q.u, q.v, q.d}
		a, b := told(l, yarn, n[first[0]], n[first[1]]), told(l, yarn, n[second[0]], n[second[1]])
		switch none := [2]float64{}; {
		case a == none:
			b = [2]float64{2 * b[0], 2 * b[1]}
		case b == none:
			a = [2]float64{2 * a[0], 2 * a[1]}
		}
		t := &tells[k]
		t[first[0]], t[first[1]], t[second[0]], t[second[1]] = a[0], a[1], b[0], b[1]
	}
	if tells != quarters {
		q.rim = &tells
	}
}

// thin is the share of a cell of cloth below which a crossing at the rim does not tell
// how a yarn bends: nothing holds it there.
const thin = 0.25

// told returns how much the curls at crossing a and at the next, b, count in the mean of two
// parallel sides.
func told(l *lattice.Lattice, yarn []lattice.Axis, a, b int32) [2]float64 {
	if yarn[a].Next != b { // at the tip of a slit a yarn may leave the cell
		return [2]float64{}
	}
	firm := func(n int32) bool { return n != lattice.None && l.Area[n] >= thin*l.Spacing*l.Spacing }
	switch before, behind := firm(yarn[a].Prev), firm(yarn[b].Next); {
	case before && behind:
		return [2]float64{0.25, 0.25}
	case before:
		return [2]float64{0.5, 0}
	case behind:
		return [2]float64{0, 0.5}
	}
	return [2]float64{}
}

// shearAndTwist adds the forces of ½Gγ² (and what jams, see jam) for the
// departure γ from a right angle between the mean warp edge a and the mean weft
// edge b of a cell, of its friction, whose sets move where it slips, and of twist
// ½t|o − u − v + d|².
//
// Edges are chords. Where yarns bend, a·b of cloth that is not sheared is
// −h⁴·κuv·(κu + κv)/8 and not 0: on a cylinder of any axis, if the yarns keep their
// lengths as chords and the cloth along the axis keeps its own. So a·b is corrected, from
// the mixed difference t and the second differences s of both yarns, by tn·(sn/8 − off·tn) of
// their parts tn and sn along the normal a × b, h²·κuv and h²·(κu + κv). What lies in the
// cloth is no bend, but shear that varies. In a crushed cell it fades, see known.
// Without it a fold of curvature κ on the bias is too stiff by G·h⁴·κ²/(256·B) of its bending.
//
// It takes a quarter of a step, so it is one loop over plain numbers.
func (c *Cloth) shearAndTwist(cells []cell, x []r3.Vec, set []float64, curl *curls, out []contact.Sum) {
	for i := range cells {
		q := &cells[i]
		o, u, v, d := &x[q.o], &x[q.u], &x[q.v], &x[q.d]
		// a = u − o + midV·t and b = v − o + midU·t.
		t := r3.Vec{X: o.X - u.X - v.X + d.X, Y: o.Y - u.Y - v.Y + d.Y, Z: o.Z - u.Z - v.Z + d.Z}
		a := r3.Vec{X: u.X - o.X + q.midV*t.X, Y: u.Y - o.Y + q.midV*t.Y, Z: u.Z - o.Z + q.midV*t.Z}
		b := r3.Vec{X: v.X - o.X + q.midU*t.X, Y: v.Y - o.Y + q.midU*t.Y, Z: v.Z - o.Z + q.midU*t.Z}
		s, n := curl.in(q), r3.Cross(a, b)
		r, turn := c.known(r3.Norm2(n))
		tn, sn := r3.Dot(t, n), r3.Dot(s, n)
		byT, byS, by := r*(sn/8-2*q.off*tn), r*tn/8, r*tn*(sn/8-q.off*tn) // slopes in tn and sn, and what is taken off
		turn *= by
		w := r3.Vec{X: byT*t.X + byS*s.X - turn*n.X, Y: byT*t.Y + byS*s.Y - turn*n.Y, Z: byT*t.Z + byS*s.Z - turn*n.Z}
		aa, bb, ab := max(r3.Norm2(a), tiny), max(r3.Norm2(b), tiny), r3.Dot(a, b)+by
		if short := min(aa, bb); short < c.h*c.h/(1+share) {
			c.ballast(q, short, out)
		}
		p := 1 / (aa * bb)
		k := -q.shear * c.steep(ab*ab*p) * ab * p // dE/ds·s/(|a||b|) for the sine s
		if c.slides {
			k -= q.slide(&set[q.o], ab, p)
		}
		qa, qb := k*ab*p*bb, k*ab*p*aa
		bw, wa := r3.Cross(b, w), r3.Cross(w, a)
		fax, fay, faz := k*(b.X+bw.X)-qa*a.X, k*(b.Y+bw.Y)-qa*a.Y, k*(b.Z+bw.Z)-qa*a.Z
		fbx, fby, fbz := k*(a.X+wa.X)-qb*b.X, k*(a.Y+wa.Y)-qb*b.Y, k*(a.Z+wa.Z)-qb*b.Z
		// Each mean edge carries its force to t with its share.
		gx := q.midV*fax + q.midU*fbx - q.twist*t.X + k*(byT*n.X)
		gy := q.midV*fay + q.midU*fby - q.twist*t.Y + k*(byT*n.Y)
		gz := q.midV*faz + q.midU*fbz - q.twist*t.Z + k*(byT*n.Z)
		add(&out[q.o].Force, gx-fax-fbx, gy-fay-fby, gz-faz-fbz)
		add(&out[q.u].Force, fax-gx, fay-gy, faz-gz)
		add(&out[q.v].Force, fbx-gx, fby-gy, fbz-gz)
		add(&out[q.d].Force, gx, gy, gz)
		curl.pullOn(q, r3.Scale(k, r3.Scale(byS, n)))
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
		r = 1 / n2
		return r, 2 * r
	}
	n2 = max(n2, tiny*tiny)
	s := math.Sqrt(n2) / least
	g := 10 + s*(6*s-15)
	return s * s * s * g / n2, (2 - 30*(1-s)*(1-s)/g) / n2
}
