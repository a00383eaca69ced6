package lattice

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Point is a place on the cloth, held by the three crossings around it.
// Weights sum to 1; they leave 0..1 only where the point lies off the cloth.
type Point struct {
	Node   [3]int32
	Weight [3]float64
}

// At returns where the point lies when the crossings lie at pos (m).
func (p Point) At(pos []r3.Vec) r3.Vec {
	var x r3.Vec
	for k, n := range p.Node {
		x = r3.Add(x, r3.Scale(p.Weight[k], pos[n]))
	}
	return x
}

// Locate holds the flat point q (m) by its three nearest crossings. A point
// off the cloth is held by the nearest cell within four spacings; false beyond.
func (l *Lattice) Locate(q r2.Vec) (Point, bool) {
	return l.LocateFrom(q, q)
}

// LocateFrom holds the flat point q (m) by the crossings about another, near: so a place
// on the rim, where cells hold next to no cloth, hangs on the cloth beside it. False as
// in Locate.
func (l *Lattice) LocateFrom(near, q r2.Vec) (Point, bool) {
	u, v := l.local(near)
	node, ok := l.nearestCell(int(math.Floor(u))-l.lo[0], int(math.Floor(v))-l.lo[1], u, v)
	if !ok {
		return Point{}, false
	}
	u, v = l.local(q)
	u0, v0 := l.local(l.Rest[node])
	return l.hold(node, u-u0, v-v0), true
}

// LocateCells holds the flat point q (m) by the three cells whose centres are nearest
// about it, each by the node that owns it: for what cells have one of. Only cells
// that are there have a weight; false where there is none, or as Locate.
func (l *Lattice) LocateCells(q r2.Vec) (Point, bool) {
	p, ok := l.Locate(r2.Sub(q, r2.Scale(l.Spacing/2, r2.Add(l.Warp(), l.Weft()))))
	if !ok {
		return p, false
	}
	sum := 0.0
	for k, n := range p.Node {
		if l.Cell[n].Corner[0] == None || p.Weight[k] < 0 {
			p.Weight[k] = 0
		}
		sum += p.Weight[k]
	}
	if sum == 0 {
		return p, false
	}
	for k := range p.Weight {
		p.Weight[k] /= sum
	}
	return p, true
}

// hold returns the weights of the triangle of the cell at node that faces (u, v).
func (l *Lattice) hold(node int32, u, v float64) Point {
	q := l.Cell[node].Corner
	if u >= v {
		return Point{[3]int32{q[0], q[1], q[3]}, [3]float64{1 - u, u - v, v}}
	}
	return Point{[3]int32{q[0], q[3], q[2]}, [3]float64{1 - v, u, v - u}}
}

// nearestCell returns the low node of the cell whose centre lies nearest to
// (u, v), looking at most four cells around (i, j).
func (l *Lattice) nearestCell(i, j int, u, v float64) (int32, bool) {
	best, at := math.Inf(1), None
	for ring := 0; ring <= 4; ring++ {
		for dj := -ring; dj <= ring; dj++ {
			for di := -ring; di <= ring; di++ {
				node := l.cellAt(i+di, j+dj, u, v)
				if node == None {
					continue
				}
				cu, cv := l.local(l.Rest[node])
				if d := math.Hypot(u-cu-0.5, v-cv-0.5); d < best {
					best, at = d, node
				}
			}
		}
		if at != None {
			return at, true
		}
	}
	return None, false
}

// cellAt returns the low node of the cell at box place (i, j), or None; of a
// cell that a slit parts, that of the side on which (u, v) lies.
func (l *Lattice) cellAt(i, j int, u, v float64) int32 {
	if i < 0 || j < 0 || i >= l.size[0] || j >= l.size[1] {
		return None
	}
	if sides := l.sides[l.place(i, j)]; sides != nil {
		return l.sideOf(sides, r2.Vec{X: u, Y: v})
	}
	node := l.index[l.place(i, j)]
	if node == None || l.Cell[node].Corner[0] == None {
		return None
	}
	return node
}
