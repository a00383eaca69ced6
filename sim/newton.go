package sim

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// smooth reports whether the forces in this system have a slope that can be
// differenced: nothing touches, nothing rubs, no tape goes taut, and what is held is fixed.
func (s *System) smooth() bool {
	c := s.Cloth
	return s.Obstacle == nil && s.Gap == 0 && len(s.Ties) == 0 && len(s.Holds) == 0 && !c.rubs && !c.slides &&
		len(c.Lattice.Slits) == 0
}

// Newton brings a narrow strip to rest in place. It pays where the walk must carry slow
// swings from end to end, and costs as the length of the strip and the cube of its width: on
// 4,700 nodes, 25 mm of 200, a step takes as long as some 200 of the walk, and ten of them
// may be enough. Of Settings, Residual, Steps and Report count. What touches or rubs, is held
// by more than fixed nodes, or is too wide, it leaves as it is, after no step.
//
// A step solves (K + λM)·d = f, K the stiffness as the cloth lies, M the masses, λ the
// least of a row that makes the matrix definite and lowers the energy (J. Nocedal, S. Wright,
// Numerical Optimization, 2nd ed. 2006, chapter 3.4, from memory).
func Newton(ctx context.Context, s *System, st *State, o Settings) Result {
	r := Result{Status: StepLimit}
	if !s.smooth() {
		return r
	}
	n := &newton{w: NewStepper(s, st), old: make([]r3.Vec, len(st.Pos))}
	n.w.age = 1 // masses are not asked for
	if n.slope = newSlope(n.w); n.slope == nil {
		return r
	}
	n.energy = n.potential()
	clear(st.Vel)
	for ; ; r.Steps++ {
		n.w.unbalance()
		r.Residual = n.w.Residual()
		if o.Report != nil {
			o.Report(r.Steps, r.Residual)
		}
		switch {
		case ctx.Err() != nil:
			r.Status = Cancelled
			return r
		case r.Residual <= o.Residual:
			r.Status = Settled
			return r
		case r.Steps == o.Steps || !n.step():
			return r
		}
	}
}

// newton is a strip on its way.
type newton struct {
	w      *Stepper
	slope  *slope
	old    []r3.Vec // m, places before the step
	shift  float64  // λ, N/m on a node of mean weight
	energy float64  // J
}

// potential returns the energy of the cloth, stored and of height, J.
func (n *newton) potential() float64 {
	s, down := n.w.system, n.w.system.down()
	e := s.Stored(n.w.state.Pos).Total()
	for i, p := range n.w.state.Pos {
		e -= s.Cloth.Load[i] * r3.Dot(down, p)
	}
	return e
}

// step moves the cloth to less energy; false if there is none to be found.
func (n *newton) step() bool {
	n.slope.read()
	copy(n.old, n.w.state.Pos)
	for range shifts {
		if d, ok := n.slope.solve(n.shift); ok && n.lower(d) {
			return true
		}
		copy(n.w.state.Pos, n.old)
		n.shift = max(4*n.shift, leastShift)
	}
	return false
}

// Shifts are tried from leastShift (N/m) on, each four times the last.
const (
	leastShift = 1e-9
	shifts     = 40
)

// lower moves the free nodes by d, by half or by a quarter of it, whichever is the first to
// lower the energy. A whole step that does makes the next shift smaller.
func (n *newton) lower(d []float64) bool {
	const rounding = 1e-13 // of the energy
	for _, share := range [3]float64{1, 0.5, 0.25} {
		for k, i := range n.slope.free {
			n.w.state.Pos[i] = r3.Add(n.old[i], r3.Scale(share, r3.Vec{X: d[3*k], Y: d[3*k+1], Z: d[3*k+2]}))
		}
		e := n.potential()
		if !(e < n.energy+rounding*math.Abs(n.energy)) {
			continue
		}
		if n.energy = e; share == 1 {
			n.shift /= 8
		}
		if n.shift < leastShift {
			n.shift = 0
		}
		return true
	}
	return false
}
