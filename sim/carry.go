package sim

import (
	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
)

// Take lays the cloth of st, of lattice l, as that of old lies, of lattice from, with
// the friction that it holds. At tells where on the old piece a flat place of the new
// one lies; nil: at the same place. It returns how many crossings have no place
// there; these stay where they are.
func (st *State) Take(l *lattice.Lattice, old *State, from *lattice.Lattice, at func(r2.Vec) r2.Vec) (missed int) {
	if at == nil {
		at = func(q r2.Vec) r2.Vec { return q }
	}
	wide := l.Spacing / from.Spacing
	half := r2.Scale(l.Spacing/2, r2.Add(l.Warp(), l.Weft()))
	for i, q := range l.Rest {
		p, ok := from.Locate(at(q))
		if !ok {
			missed++
			continue
		}
		st.Pos[i] = p.At(old.Pos)
		st.Slip.U[i], st.Slip.V[i] = wide*wide*mean(p, old.Slip.U), wide*wide*mean(p, old.Slip.V)
		if c, ok := from.LocateCells(at(r2.Add(q, half))); ok {
			st.Slip.Shear[i] = mean(c, old.Slip.Shear)
		}
	}
	return missed
}

// mean returns a value of the nodes at p.
func mean(p lattice.Point, of []float64) float64 {
	sum := 0.0
	for k, n := range p.Node {
		sum += p.Weight[k] * of[n]
	}
	return sum
}
