// Package lattice lays a grid of yarn crossings over a piece of cloth and cuts
// it exactly to the outline.
//
// A node is a crossing of one warp and one weft yarn. Cells that the outline
// crosses are kept with the part of them that is cloth: all areas are integrals
// over that part, so area, mass and centre of mass of the cut piece are exact
// at every grain angle. A node just outside the outline is then a degree of
// freedom of a cut cell, not cloth of its own. Start at Cut.
package lattice

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// None marks a neighbour or cell that does not exist.
const None = int32(-1)

// sliver is the share of a cell below which its cloth is dropped: one part in
// a million of a cell changes no figure and would only make weightless nodes.
const sliver = 1e-6

// Options says how the lattice lies on the piece.
type Options struct {
	Spacing float64 // m, between yarn crossings along warp and weft
	Grain   float64 // rad, from the centre front (+Y) to the warp, towards +X
	Origin  r2.Vec  // m, flat point that is a yarn crossing
	Slits   []Slit  // cuts without width, see Slit
}

// Lattice is the cut cloth. Nodes are numbered along the warp first.
type Lattice struct {
	Options
	Rest []r2.Vec   // m, len = nodes; place in the flat piece
	Area []float64  // m², len = nodes; cloth that belongs to the node (bilinear share)
	U, V []Axis     // len = nodes; neighbours and link areas along warp and weft
	Cell []CellArea // len = nodes; the cell whose low corner is the node

	lo    [2]int   // lattice index of the corner of the box
	size  [2]int   // nodes of the box along warp and weft
	index []int32  // low node of the cell at a box place, or of the place itself, or None
	cells []cover  // the cells that hold cloth
	parts []part   // covered polygon of each triangle that the outline cuts
	edge  []r2.Vec // the outline, lattice units
	halves
}

// Axis holds what a node shares with its neighbours along one yarn.
type Axis struct {
	Prev, Next int32   // node, or None
	Link       float64 // m², cloth carried by the yarn from here to Next
}

// CellArea is the cell with corners (0,0), (1,0), (0,1), (1,1) along warp and weft.
type CellArea struct {
	Corner [4]int32 // nodes 00, 10, 01, 11; Corner[0] is None where there is no cell
	Area   float64  // m², cloth inside the cell
	Mid    r2.Vec   // 0..1, centroid of that cloth along warp and weft of the cell
}

// Warp returns the unit direction of the warp in the flat piece.
func (o Options) Warp() r2.Vec { return r2.Vec{X: math.Sin(o.Grain), Y: math.Cos(o.Grain)} }

// Weft returns the unit direction of the weft, a quarter turn
// counter-clockwise from the warp.
func (o Options) Weft() r2.Vec { return r2.Vec{X: -math.Cos(o.Grain), Y: math.Sin(o.Grain)} }

// local returns p in lattice units along warp and weft.
func (o Options) local(p r2.Vec) (u, v float64) {
	d := r2.Sub(p, o.Origin)
	return r2.Dot(d, o.Warp()) / o.Spacing, r2.Dot(d, o.Weft()) / o.Spacing
}

// flat is the inverse of local.
func (o Options) flat(u, v float64) r2.Vec {
	return r2.Add(o.Origin, r2.Add(r2.Scale(u*o.Spacing, o.Warp()), r2.Scale(v*o.Spacing, o.Weft())))
}

// Cut lays a lattice over the closed counter-clockwise outline (m) and cuts it.
// It fails if the spacing is not positive, or too coarse to place a crossing.
func Cut(outline []r2.Vec, o Options) (*Lattice, error) {
	if !(o.Spacing > 0) || len(outline) < 3 {
		return nil, fmt.Errorf("lattice: spacing %g m over %d outline points, want a positive spacing and 3 points or more",
			o.Spacing, len(outline))
	}
	l := &Lattice{Options: o}
	poly := make([]r2.Vec, len(outline))
	for i, p := range outline {
		poly[i].X, poly[i].Y = o.local(p)
	}
	l.edge = poly
	l.frame(poly)
	l.fill(poly)
	l.weigh()
	if len(l.Rest) < 9 {
		return nil, fmt.Errorf("lattice: spacing %.1f mm leaves %d yarn crossings in the piece, want a finer spacing",
			o.Spacing*1000, len(l.Rest))
	}
	return l, nil
}

// frame sets the box of lattice places that holds the outline.
func (l *Lattice) frame(poly []r2.Vec) {
	lo, hi := poly[0], poly[0]
	for _, p := range poly {
		lo = r2.Vec{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y)}
		hi = r2.Vec{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y)}
	}
	l.lo = [2]int{int(math.Floor(lo.X)) - 1, int(math.Floor(lo.Y)) - 1}
	l.size = [2]int{int(math.Ceil(hi.X)) - l.lo[0] + 2, int(math.Ceil(hi.Y)) - l.lo[1] + 2}
}

// place returns the box place of lattice index (i, j) counted from the box corner.
func (l *Lattice) place(i, j int) int { return j*l.size[0] + i }

// fill covers the cells and numbers their nodes.
func (l *Lattice) fill(poly []r2.Vec) {
	l.cells = l.cover(poly)
	if len(l.Slits) > 0 {
		l.part()
		return
	}
	l.number()
}

// number gives a node number to every corner of a covered cell.
func (l *Lattice) number() {
	l.index = make([]int32, l.size[0]*l.size[1])
	for k := range l.index {
		l.index[k] = None
	}
	for _, c := range l.cells {
		for n := range 4 {
			l.index[l.place(c.i+n%2, c.j+n/2)] = 0
		}
	}
	for j := range l.size[1] {
		for i := range l.size[0] {
			if k := l.place(i, j); l.index[k] != None {
				l.index[k] = l.node(i, j)
			}
		}
	}
	for k := range l.cells {
		c := &l.cells[k]
		for n := range 4 {
			c.node[n] = l.index[l.place(c.i+n%2, c.j+n/2)]
		}
	}
}

// node makes a node at box place (i, j).
func (l *Lattice) node(i, j int) int32 {
	l.Rest = append(l.Rest, l.flat(float64(i+l.lo[0]), float64(j+l.lo[1])))
	return int32(len(l.Rest) - 1)
}

// weigh fills areas and neighbours from the moments of the covered cells.
func (l *Lattice) weigh() {
	n := len(l.Rest)
	l.Area, l.U, l.V, l.Cell = make([]float64, n), make([]Axis, n), make([]Axis, n), make([]CellArea, n)
	for i := range n {
		l.U[i], l.V[i] = Axis{Prev: None, Next: None}, Axis{Prev: None, Next: None}
		l.Cell[i].Corner = [4]int32{None, None, None, None}
	}
	s2 := l.Spacing * l.Spacing
	for _, c := range l.cells {
		q, m := c.node, c.m
		l.Cell[q[0]] = CellArea{Corner: q, Area: m.a * s2, Mid: r2.Vec{X: m.u / m.a, Y: m.v / m.a}}
		for k, share := range [4]float64{m.a - m.u - m.v + m.uv, m.u - m.uv, m.v - m.uv, m.uv} {
			l.Area[q[k]] += share * s2
		}
		join(l.U, q[0], q[1], (m.a-m.v)*s2)
		join(l.U, q[2], q[3], m.v*s2)
		join(l.V, q[0], q[2], (m.a-m.u)*s2)
		join(l.V, q[1], q[3], m.u*s2)
	}
}

// join links a to b along an axis and adds the cloth that the link carries. At
// the tip of a slit a yarn goes on in two: it follows the one that comes first.
func join(axis []Axis, a, b int32, area float64) {
	if axis[a].Next != None && axis[a].Next != b || axis[b].Prev != None && axis[b].Prev != a {
		return
	}
	axis[a].Next, axis[b].Prev = b, a
	axis[a].Link += area
}
