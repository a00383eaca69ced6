package sim

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
)

// Gravity is the standard acceleration of free fall, m/s² (CGPM 1901).
const Gravity = 9.80665

// Stiffness is what the cloth opposes to being moved, in SI units.
type Stiffness struct {
	Weight             float64 // kg/m²
	PullWarp, PullWeft float64 // N/m, membrane stiffness C11 and C22
	Shear              float64 // N/m per rad, C66
	BendWarp, BendWeft float64 // N·m
	Twist              float64 // N·m, D66
	BendFriction       float64 // N, friction moment per width: half of the KES-F 2HB; 0 is elastic
	Lock               float64 // rad, shear angle from which the yarns jam; 0 is never
}

// Cloth is the constant mechanical description of a cut lattice: springs along
// the yarns, the shear angle between them, bending along the yarns and twist of
// the cells. Every coefficient is an areal energy times the cloth that carries
// it, so a half-covered cell is half as stiff and half as heavy.
//
// Energies per area: ½C11ε² along the warp, ½C22ε² along the weft, ½Gγ² for the
// shear angle γ, ½Bκ² along each yarn and ½·4·D66·κuv² for twist; C12 = 0.
//
// The bias is not a spring along the diagonals: on a fold across the bias those
// disagree with the yarns about the chord of the bend and stiffen it by
// G·h⁴κ²/(256·B), most of the bending stiffness of limp cloth at 8 mm.
type Cloth struct {
	Lattice *lattice.Lattice
	Load    []float64 // N, len = nodes; weight of the node's cloth
	h       float64   // m, rest length of the yarn links

	pullU, pullV []float64 // N/m, len = nodes; link to Next
	shear        []float64 // J, len = nodes; shear stiffness × cloth of the node's cell
	bendU, bendV []float64 // N/m, len = nodes; stencil centred on the node
	twist        []float64 // N/m, len = nodes; cell of the node
	rub          []float64 // N/m, len = nodes; friction stencils centred on the node, nil if elastic
	lock         float64   // rad, see jam
	base         []float64 // kg, len = nodes; fictitious mass for a unit step, see massOf
	near         []around  // len = nodes
	mid          []r2.Vec  // len = nodes + 1; middle of the cloth in the node's cell
	weight       float64   // N, of the whole piece
}

// NewCloth combines a cut lattice and the stiffness of its cloth.
func NewCloth(l *lattice.Lattice, s Stiffness) *Cloth {
	n := len(l.Rest)
	h := l.Spacing
	c := &Cloth{Lattice: l, h: h, lock: s.Lock, near: neighbours(l), mid: make([]r2.Vec, n+1)}
	for _, f := range []*[]float64{&c.Load, &c.pullU, &c.pullV, &c.shear, &c.bendU, &c.bendV, &c.twist, &c.base} {
		*f = make([]float64, n)
	}
	for i := range n {
		c.Load[i] = s.Weight * Gravity * l.Area[i]
		c.weight += c.Load[i]
		c.pullU[i] = s.PullWarp * l.U[i].Link / (h * h)
		c.pullV[i] = s.PullWeft * l.V[i].Link / (h * h)
		if l.Cell[i].Corner[0] != lattice.None {
			c.mid[i] = l.Cell[i].Mid
			c.shear[i] = s.Shear * l.Cell[i].Area
			c.twist[i] = 4 * s.Twist * l.Cell[i].Area / (h * h * h * h)
		}
		if l.U[i].Prev != lattice.None && l.U[i].Next != lattice.None {
			c.bendU[i] = s.BendWarp * l.Area[i] / (h * h * h * h)
		}
		if l.V[i].Prev != lattice.None && l.V[i].Next != lattice.None {
			c.bendV[i] = s.BendWeft * l.Area[i] / (h * h * h * h)
		}
	}
	if s.BendFriction > 0 {
		c.rub = make([]float64, n)
		for i := range n {
			c.rub[i] = s.BendFriction / yield * l.Area[i] / (h * h * h * h)
		}
	}
	c.massOf()
	return c
}

// massOf sets the fictitious masses for which a unit time step is stable: a
// quarter of the row sum of the absolute stiffness matrix (Gershgorin), with a
// tenth to spare for the geometric stiffness.
func (c *Cloth) massOf() {
	l := c.Lattice
	steep := 1.0
	if c.lock > 0 {
		steep = 21 // the slope of the shear force two knees beyond the locking angle
	}
	pair := func(a, b int32, k float64) {
		c.base[a] += 2 * k
		c.base[b] += 2 * k
	}
	for i := range l.Rest {
		if n := l.U[i].Next; n != lattice.None {
			pair(int32(i), n, c.pullU[i])
		}
		if n := l.V[i].Next; n != lattice.None {
			pair(int32(i), n, c.pullV[i])
		}
		if q := l.Cell[i].Corner; q[0] != lattice.None {
			m := l.Cell[i].Mid
			for k, w := range [4]float64{math.Max(1-m.X, 1-m.Y), math.Max(m.X, 1-m.Y), math.Max(1-m.X, m.Y), math.Max(m.X, m.Y)} {
				c.base[q[k]] += 4*c.twist[i] + 4*w*c.shear[i]*steep/(c.h*c.h)
			}
		}
		var rub float64
		if c.rub != nil {
			rub = c.rub[i]
		}
		c.stencilMass(int32(i), l.U[i], c.bendU[i], rub)
		c.stencilMass(int32(i), l.V[i], c.bendV[i], rub)
	}
	for i := range c.base {
		c.base[i] *= 1.1 / 4
	}
}

// stencilMass adds the rows of one bending stencil 1, −2, 1 of stiffness b and
// friction stiffness rub.
func (c *Cloth) stencilMass(i int32, a lattice.Axis, b, rub float64) {
	if b == 0 {
		return
	}
	b += rub
	c.base[i] += 8 * b
	c.base[a.Prev] += 4 * b
	c.base[a.Next] += 4 * b
}

// Weight returns the weight of the whole piece, N.
func (c *Cloth) Weight() float64 { return c.weight }
