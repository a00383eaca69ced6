package drape

import (
	"math"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// strains returns for every vertex of the skin the yarn strain of largest size
// at the crossings that hold it. Links with less than a quarter of a cell of
// cloth say nothing, as in sim.Cloth.MaxStrain.
func (d *Drape) strains() []float64 {
	l, x := d.Lattice, d.State.Pos
	node := make([]float64, len(x))
	larger := func(i int32, e float64) {
		if math.Abs(e) > math.Abs(node[i]) {
			node[i] = e
		}
	}
	least := 0.25 * l.Spacing * l.Spacing
	for i := range x {
		for _, a := range [2]lattice.Axis{l.U[i], l.V[i]} {
			if a.Next == lattice.None || a.Link < least {
				continue
			}
			e := r3.Norm(r3.Sub(x[a.Next], x[i]))/l.Spacing - 1
			larger(int32(i), e)
			larger(a.Next, e)
		}
	}
	return d.onSkin(node)
}

// shears returns for every vertex of the skin the shear angle (rad), the mean
// of the cells around, weighted by their cloth.
func (d *Drape) shears() []float64 {
	l, x := d.Lattice, d.State.Pos
	node, cloth := make([]float64, len(x)), make([]float64, len(x))
	for i := range l.Cell {
		q := l.Cell[i].Corner
		if q[0] == lattice.None {
			continue
		}
		a := r3.Add(r3.Sub(x[q[1]], x[q[0]]), r3.Sub(x[q[3]], x[q[2]]))
		b := r3.Add(r3.Sub(x[q[2]], x[q[0]]), r3.Sub(x[q[3]], x[q[1]]))
		angle := math.Asin(math.Max(-1, math.Min(1, r3.Cos(a, b))))
		for _, n := range q {
			node[n] += angle * l.Cell[i].Area
			cloth[n] += l.Cell[i].Area
		}
	}
	for i := range node {
		if cloth[i] > 0 {
			node[i] /= cloth[i]
		}
	}
	return d.onSkin(node)
}

// onSkin carries a field of the crossings to the vertices of the skin.
func (d *Drape) onSkin(node []float64) []float64 {
	out := make([]float64, len(d.Skin.Points))
	for v, p := range d.Skin.Points {
		for k, n := range p.Node {
			out[v] += p.Weight[k] * node[n]
		}
	}
	return out
}

// clearances returns the distance of every place from the form (m), 0 if there is none.
func (d *Drape) clearances(at []r3.Vec) []float64 {
	out := make([]float64, len(at))
	if d.Job.Free {
		return out
	}
	for v, p := range at {
		out[v], _ = d.Job.Form.Distance(p)
	}
	return out
}
