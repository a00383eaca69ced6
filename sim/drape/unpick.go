package drape

import (
	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// unpick parts layers that pass through each other, smooths cells that have
// fallen into a knot, and reports whether there were any. A crease that is
// carried from a coarse lattice to a fine one can cut itself; as a hand would,
// this eases the cloth around the place until it is open. The way to rest then
// decides again.
func (d *Drape) unpick() bool {
	for turn := range 40 {
		bad := make([]bool, len(d.State.Pos))
		if !d.crossed(bad) && !d.knotted(bad) {
			return turn > 0
		}
		d.ease(bad)
	}
	return true
}

// crossed marks the nodes of layers that pass through each other.
func (d *Drape) crossed(bad []bool) bool {
	s := d.layers()
	tris := contact.PiercedTris(&s)
	for _, t := range tris {
		for _, v := range s.Tris[t] {
			for _, n := range d.Skin.Points[v].Node {
				bad[n] = true
			}
		}
	}
	return len(tris) > 0
}

// knot is the yarn strain beyond which a cell has turned inside out. Those that
// were seen had 37 % and more; on 20 mm the pins of the cowl point, nearer to each
// other than the crossings, strain a yarn by up to 22 %.
const knot = 0.3

// knotted marks the nodes of yarns that are strained beyond what cloth can be.
func (d *Drape) knotted(bad []bool) bool {
	links := d.System.Cloth.Overstrained(d.State.Pos, knot)
	for _, l := range links {
		bad[l[0]], bad[l[1]] = true, true
	}
	return len(links) > 0
}

// ease moves the chosen nodes halfway to the mean of their neighbours along the yarns.
func (d *Drape) ease(chosen []bool) {
	next := make([]r3.Vec, len(d.State.Pos))
	copy(next, d.State.Pos)
	for i := range next {
		if !chosen[i] {
			continue
		}
		var sum r3.Vec
		n := 0.0
		u, v := d.Lattice.U[i], d.Lattice.V[i]
		for _, k := range [4]int32{u.Prev, u.Next, v.Prev, v.Next} {
			if k != lattice.None {
				sum, n = r3.Add(sum, d.State.Pos[k]), n+1
			}
		}
		if n == 0 { // of the rim: it hangs by its shears alone and follows them
			continue
		}
		next[i] = r3.Scale(0.5, r3.Add(next[i], r3.Scale(1/n, sum)))
	}
	copy(d.State.Pos, next)
}
