package sim

import (
	"math"

	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// level is a coarse level over the flat cloth with a hat on every knot of it: 1 at
// the knot, falling to 0 towards its neighbours. What the unbalanced forces do
// to a hat as a whole moves all nodes under it at once. Without it a broad slack
// place creeps to rest, since each node carries the mass that its stiff yarns ask
// for. It is one level of an additive preconditioner (J. Bramble, J. Pasciak,
// J. Xu, "Parallel multilevel preconditioners", Math. Comp. 55, 1990) with masses
// for stiffnesses.
type level struct {
	hat    [][4]int32   // len = nodes; hats over a node
	height [][4]float64 // len = nodes; of those hats there, sum 1; 0 on fixed nodes
	links  [][4]burden  // len = links of the cloth
	cells  [][4]burdens // len = cells of the cloth
	still  []float64    // N/m, len = hats; row sums of bending and twist
	mass   []symmetric  // kg, len = hats, without contact
	got    [2][]dose    // len = hats; by half of the nodes
	move   []r3.Vec     // m a step, len = hats
}

// dose is what acts on a hat: force (N) and the mass of contact and holds (kg).
type dose struct {
	force r3.Vec
	mass  float64
}

// meshes are the distances of the hats, in spacings, of the levels over a cloth.
// A second level of 16 halves the steps of a hung square of 121 × 121 but throws
// strips over and pushes layers through each other.
var meshes = [...]float64{4}

// broadest is the widest mesh of a level, m: hats wider than a fold push layers
// through each other.
const broadest = 0.05

// newLevel makes a coarse level over a scene, its hats so many spacings apart.
func newLevel(s *System, mesh float64) *level {
	l := s.Cloth.Lattice
	n := &level{hat: make([][4]int32, len(l.Rest)), height: make([][4]float64, len(l.Rest))}
	number := map[[2]int]int32{}
	for i, p := range l.Rest {
		d := r2.Scale(1/l.Spacing, r2.Sub(p, l.Origin))
		u, v := math.Round(r2.Dot(d, l.Warp()))/mesh, math.Round(r2.Dot(d, l.Weft()))/mesh
		a, b := math.Floor(u), math.Floor(v)
		u, v = u-a, v-b
		for k, o := range [4][2]int{{0, 0}, {1, 0}, {0, 1}, {1, 1}} {
			at := [2]int{int(a) + o[0], int(b) + o[1]}
			if _, ok := number[at]; !ok {
				number[at] = int32(len(number))
			}
			n.hat[i][k] = number[at]
		}
		if s.Fixed == nil || !s.Fixed[i] {
			n.height[i] = [4]float64{(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v}
		}
	}
	n.mass, n.move, n.still = make([]symmetric, len(number)), make([]r3.Vec, len(number)), make([]float64, len(number))
	n.got = [2][]dose{make([]dose, len(number)), make([]dose, len(number))}
	n.tie(s.Cloth)
	return n
}

// restrict sums what acts on the free nodes of a half up by hats.
func (n *level) restrict(half int, free []span, sum []contact.Sum) {
	out := n.got[half]
	clear(out)
	for _, r := range free {
		for i := r.first; i < r.last; i++ {
			f, m := &sum[i].Force, sum[i].Mass
			for k, h := range n.hat[i] {
				w, o := n.height[i][k], &out[h]
				o.force.X, o.force.Y, o.force.Z, o.mass = o.force.X+w*f.X, o.force.Y+w*f.Y, o.force.Z+w*f.Z, o.mass+w*m
			}
		}
	}
}

// solve sets by how much a unit step of what was restricted speeds the hats up.
func (n *level) solve() {
	for h := range n.move {
		a, b := &n.got[0][h], &n.got[1][h]
		n.move[h] = r3.Scale(lent, n.mass[h].solve(a.mass+b.mass, r3.Add(a.force, b.force)))
	}
}

// lent is the share of a stable step that each level takes beside the whole step
// of the nodes. What is stiff for nodes is not what is stiff for hats, and row
// sums are on the safe side, so that together they stay stable.
const lent = 0.5

// prolong returns by how much the hats over a node speed it up, m a step.
func (n *level) prolong(i int) r3.Vec {
	var d r3.Vec
	for k, h := range n.hat[i] {
		w, m := n.height[i][k], &n.move[h]
		d.X, d.Y, d.Z = d.X+w*m.X, d.Y+w*m.Y, d.Z+w*m.Z
	}
	return d
}

// levelEvery is how many steps the masses of the level hold. Its hats are broad
// and feel less how a node turns.
const levelEvery = 50

// coarsen adds the levels that are not too broad for folds.
func (w *Stepper) coarsen() {
	w.coarse = true
	for _, m := range meshes {
		if m*w.system.Cloth.h <= broadest {
			n := newLevel(w.system, m)
			n.reshape(w.system.Cloth, w.state.Pos)
			w.levels = append(w.levels, n)
		}
	}
}

// correct sets what the level adds to the moves of the nodes.
func (w *Stepper) correct() {
	if w.Even {
		return
	}
	for _, n := range w.levels {
		if w.age%levelEvery == 0 {
			n.reshape(w.system.Cloth, w.state.Pos)
		}
		n.solve()
	}
}
