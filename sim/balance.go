package sim

import (
	"math"

	"cowl/mesh/lattice"
	"cowl/sim/contact"
	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r3"
)

// presses returns the penalty stiffness of every node, N/m: a quarter of each
// cell that it is a corner of. By the cloth of the node alone a node just outside
// the outline would give way under what its cells carry.
func presses(l *lattice.Lattice) []float64 {
	out := make([]float64, len(l.Rest))
	for _, q := range l.Cell {
		if q.Corner[0] == lattice.None {
			continue
		}
		for _, n := range q.Corner {
			out[n] += press * q.Area / 4
		}
	}
	return out
}

// press is the penalty stiffness of the form per area of cloth, N/m³: a cloth
// of 1 N/m² that hangs at 100 times its weight sinks in by 0.05 mm.
const press = 2e6

// loadHalf sums what one half of the parts of the cloth, and the first the
// holds and tapes, do to the nodes.
func (w *Stepper) loadHalf(half int) {
	sum := w.sum[half]
	clear(sum)
	if w.age%reshapeEvery == 0 {
		for _, r := range w.free[half] {
			w.system.Cloth.reshape(r.first, r.last, w.state.Pos, w.Even, w.mass)
		}
	}
	w.cloth.elastic(half, w.state.Pos, w.state.Slip, w.curls[half], sum)
	if half == 0 {
		w.hold(sum)
		w.stay(sum)
		w.system.Clock.lap(Yarns)
	}
	if w.self != nil {
		w.self.Add(half, w.state.Pos, sum, w.motion)
	}
	if half == 0 {
		w.system.Clock.lap(Layers)
	}
}

// hold adds the pull of pins, fingers and hands.
func (w *Stepper) hold(sum []contact.Sum) {
	for k, h := range w.system.Holds {
		w.draw(Hand{h, w.state.Target[k], w.state.Grip[k]}, sum)
	}
	for _, h := range w.state.Hands {
		w.draw(h, sum)
	}
}

// draw adds the pull of one hold.
func (w *Stepper) draw(h Hand, sum []contact.Sum) {
	if h.Grip == 0 {
		return
	}
	f := h.Pull(w.state.Pos)
	for j, n := range h.Point.Node {
		sum[n].Force = r3.Add(sum[n].Force, r3.Scale(h.Point.Weight[j], f))
		sum[n].Mass += 0.55 * h.Grip * math.Abs(h.Point.Weight[j])
	}
}

// freeRuns returns the runs of nodes of a half that may move.
func (s *System) freeRuns(half int) []span {
	lo, hi := forkjoin.Half(len(s.Cloth.Load), half)
	if s.Fixed == nil {
		return []span{{lo, hi}}
	}
	var out []span
	for i := lo; i < hi; i++ {
		switch {
		case s.Fixed[i]:
		case i > lo && !s.Fixed[i-1]:
			out[len(out)-1].last = i + 1
		default:
			out = append(out, span{i, i + 1})
		}
	}
	return out
}

// balance sums up what acts on the free nodes of a half, weight and form included.
func (w *Stepper) balance(half int) {
	for _, r := range w.free[half] {
		w.balanceRun(r.first, r.last)
	}
}

func (w *Stepper) balanceRun(lo, hi int) {
	a, b, load, down := w.sum[0], w.sum[1], w.system.Cloth.Load, w.system.down()
	for i := lo; i < hi; i++ {
		f, g := &a[i], &b[i]
		f.Force.X = f.Force.X + g.Force.X + load[i]*down.X
		f.Force.Y = f.Force.Y + g.Force.Y + load[i]*down.Y
		f.Force.Z = f.Force.Z + g.Force.Z + load[i]*down.Z
		f.Mass += g.Mass
	}
	if w.form != nil {
		w.form.Add(lo, hi, w.state.Pos, a, w.motion)
	}
}

// unbalance reads the forces on the free nodes where they are, without a step.
func (w *Stepper) unbalance() {
	w.pair.Both(w.load)
	w.pair.Both(w.balance)
	for i := range w.force {
		w.force[i] = w.sum[0][i].Force
	}
}

// weighHalf balances the nodes of a half and sums them up for the level.
func (w *Stepper) weighHalf(half int) {
	w.balance(half)
	for _, r := range w.free[half] {
		for i := r.first; i < r.last; i++ {
			f := w.sum[0][i].Force
			w.mass[i].guard(f, w.force[i])
			w.force[i] = f
		}
	}
	if !w.Even {
		for _, n := range w.levels {
			n.restrict(half, w.free[half], w.sum[0])
		}
	}
}
