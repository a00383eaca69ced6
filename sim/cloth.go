package sim

import (
	"iter"

	"cowl/mesh/lattice"
)

// Gravity is the standard acceleration of free fall, m/s² (CGPM 1901).
const Gravity = 9.80665

// Stiffness is what the cloth opposes to being moved, in SI units.
type Stiffness struct {
	Weight                   float64 // kg/m²
	TensileWarp, TensileWeft float64 // N/m, membrane stiffness C11 and C22
	Shear                    float64 // N/m per rad, C66
	BendWarp, BendWeft       float64 // N·m
	Twist                    float64 // N·m, D66
	BendFriction             float64 // N, friction moment per width: half of the KES-F 2HB; 0 is elastic
	ShearFriction            float64 // N/m, friction force per width: half of the KES-F 2HG; 0 is elastic
	Softening                float64 // m, −B1/B0 of the moment B0·κ + B1·κ² along a yarn; 0 is a straight line
	Lock                     float64 // rad, shear angle from which the yarns jam; 0 is never
}

// Cloth is the constant mechanical description of a cut lattice: springs along
// the yarns, the shear angle between them, bending along the yarns and twist of
// the cells. Every coefficient is an areal energy times the cloth that carries
// it, so a half-covered cell is half as stiff and half as heavy.
//
// Energies per area: ½C11ε² along the warp, ½C22ε² along the weft, ½Gγ² for the
// shear angle γ, ½Bκ² along each yarn (less where it softens, see secant) and
// ½·4·D66·κuv² for twist; C12 = 0.
//
// The bias is not a spring along the diagonals: on a fold across the bias those
// disagree with the yarns about the chord of the bend and stiffen it by
// G·h⁴κ²/(256·B), most of the bending stiffness of limp cloth at 8 mm.
type Cloth struct {
	Lattice *lattice.Lattice
	Load    []float64 // N, len = nodes; weight of the node's cloth and what is sewn to it
	h       float64   // m, rest length of the yarn links

	links        []link
	bendU, bendV []stencil
	cells        []cell
	spans        [2][2]span      // of bendU and bendV, by half
	rubs, slides bool            // there is friction of bending, of shear
	soft         float64         // m, see secant
	lock         float64         // rad, see jam
	stiffness    []nodeStiffness // len = nodes
	weight       float64         // N, of the whole piece, sum of Load
}

// NewCloth combines a cut lattice and the stiffness of its cloth.
func NewCloth(l *lattice.Lattice, s Stiffness) *Cloth {
	n, h := len(l.Rest), l.Spacing
	c := &Cloth{Lattice: l, h: h, soft: s.Softening, lock: s.Lock, rubs: s.BendFriction > 0, slides: s.ShearFriction > 0,
		Load: make([]float64, n)}
	h2, h4 := h*h, h*h*h*h
	for i := range n {
		c.Load[i] = s.Weight * Gravity * l.Area[i]
		c.weight += c.Load[i]
		for k, a := range [2]lattice.Axis{l.U[i], l.V[i]} {
			pull, b, list := s.TensileWarp, s.BendWarp, &c.bendU
			if k == 1 {
				pull, b, list = s.TensileWeft, s.BendWeft, &c.bendV
			}
			if a.Next != lattice.None {
				c.links = append(c.links, link{int32(i), a.Next, pull * a.Link / h2})
			}
			if a.Prev != lattice.None && a.Next != lattice.None {
				*list = append(*list, stencil{a.Prev, int32(i), a.Next, b * l.Area[i] / h4,
					s.BendFriction / yield * l.Area[i] / h4})
			}
		}
		if q := l.Cell[i]; q.Corner[0] != lattice.None {
			c.cells = append(c.cells, cell{
				o: q.Corner[0], u: q.Corner[1], v: q.Corner[2], d: q.Corner[3], midU: q.Mid.X, midV: q.Mid.Y,
				off:   (q.Mid.X - 0.5) * (q.Mid.Y - 0.5),
				shear: s.Shear * q.Area, rub: s.ShearFriction / shearYield * q.Area, twist: 4 * s.Twist * q.Area / h4,
			})
			c.cells[len(c.cells)-1].tell(l)
		}
	}
	c.spans = [2][2]span{spans(c.bendU, c.cells), spans(c.bendV, c.cells)}
	c.tie()
	return c
}

// tie sums for every node what its mass is made from.
func (c *Cloth) tie() {
	c.stiffness = make([]nodeStiffness, len(c.Load))
	for i := range c.stiffness {
		o := int32(i)
		c.stiffness[i].near = [4]int32{o, o, o, o}
	}
	for _, l := range c.links {
		j := 0
		if c.Lattice.V[l.a].Next == l.b {
			j = 2
		}
		a, b := &c.stiffness[l.a], &c.stiffness[l.b]
		a.near[j], a.k[j] = l.b, l.k
		b.near[j+1], b.k[j+1] = l.a, l.k
	}
	for _, list := range [2][]stencil{c.bendU, c.bendV} {
		for _, s := range list {
			c.stiffness[s.o].bend += 8 * (s.k + s.rub)
			c.stiffness[s.p].bend += 4 * (s.k + s.rub)
			c.stiffness[s.n].bend += 4 * (s.k + s.rub)
		}
	}
	for i := range c.cells {
		q := &c.cells[i]
		for n, w := range q.moves() {
			c.stiffness[n].bend += 4 * q.twist
			c.stiffness[n].shear += 4 * w * c.stiffest(q) / (c.h * c.h)
		}
	}
}

// corners lists the crossings of a cell.
func (q *cell) corners() [4]int32 { return [4]int32{q.o, q.u, q.v, q.d} }

// moves lists the corners of a cell with the larger of the shares of their moves in its mean
// edges.
func (q *cell) moves() iter.Seq2[int32, float64] {
	return func(yield func(int32, float64) bool) {
		u, v := q.midU, q.midV
		_ = yield(q.o, max(1-u, 1-v)) && yield(q.u, max(u, 1-v)) && yield(q.v, max(1-u, v)) && yield(q.d, max(u, v))
	}
}

// stiffest returns the shear stiffness of a cell at its steepest: with friction,
// and where the cloth locks two knees beyond the locking angle.
func (c *Cloth) stiffest(q *cell) float64 {
	if c.lock > 0 {
		return 21*q.shear + q.rub
	}
	return q.shear + q.rub
}

// Sew adds a weight (N) at a place of the cloth.
func (c *Cloth) Sew(at lattice.Point, weight float64) {
	for k, n := range at.Node {
		c.Load[n] += at.Weight[k] * weight
	}
	c.weight += weight
}

// Weight returns the weight of the whole piece with what is sewn to it, N.
func (c *Cloth) Weight() float64 { return c.weight }
