package sim

import (
	"context"
	"math"

	"cowl/mesh/lattice"
	"cowl/sim/contact"
	"cowl/sim/crew"

	"gonum.org/v1/gonum/spatial/r3"
)

// Status says how a run ended.
type Status string

// The ways a run can end.
const (
	Settled   Status = "settled"
	StepLimit Status = "step-limit"
	Diverged  Status = "diverged"
	Cancelled Status = "cancelled"
)

// Settings steers the way to rest; the zero value is the documented default.
type Settings struct {
	Residual float64                          // total unbalanced force over weight at rest; 0 means 1e-3
	Steps    int                              // step limit; 0 means 200,000
	Report   func(step int, residual float64) // called every 200 steps, may be nil
	Even     bool                             // see Stepper
	Watch    func(*Stepper)                   // called after every step, may be nil; may change holds, targets and grips
}

// Result tells how the way to rest ended.
type Result struct {
	Status   Status
	Steps    int
	Residual float64 // total unbalanced force over the weight of the piece
}

// checkEvery is how many steps lie between two readings of the residual.
const checkEvery = 50

// stride is the longest move of a node in one step, in lattice spacings.
// Without it strongly sheared starts overflow.
const stride = 0.02

// Stepper walks a state to rest. Make it with NewStepper.
//
// Each half of the cloth adds its forces to a sum of its own, and the two are
// added node by node; so the bits do not depend on who did the work.
type Stepper struct {
	Even bool // one mass for moves along and across the cloth: slower but steadier

	scene  *Scene
	state  *State
	sum    [2][]contact.Sum // len = nodes
	force  []r3.Vec         // N, len = nodes; unbalanced
	mass   []inertia        // len = nodes
	age    int              // steps taken
	form   *contact.Against
	self   *contact.Self
	crew   *crew.Crew
	still  bool      // the cloth stood still before this step
	travel float64   // m, sum of the largest moves of all steps
	moved  [2]motion // of each half in the last step
	pull   func(int) // what a half does first
	move   func(int) // and then
}

// motion is what a half of the cloth did in a step.
type motion struct{ power, far float64 } // J a step, m

// NewStepper prepares the walk; the state stays the caller's.
func NewStepper(s *Scene, st *State) *Stepper {
	n := len(st.Pos)
	w := &Stepper{
		scene: s, state: st, force: make([]r3.Vec, n), mass: make([]inertia, n), still: true, crew: crew.New(!s.Alone),
		sum: [2][]contact.Sum{make([]contact.Sum, n), make([]contact.Sum, n)},
	}
	for i := range w.mass {
		w.mass[i].heavy = 1
	}
	w.pull, w.move = w.pullHalf, w.moveHalf
	l := s.Cloth.Lattice
	if s.Obstacle != nil {
		w.form = contact.NewAgainst(s.Obstacle, Shell, s.Friction, presses(l))
	}
	if s.Gap > 0 {
		w.self = contact.NewSelf(l, s.Gap, press*l.Spacing*l.Spacing/2)
	}
	return w
}

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

// Shell is the distance of the cloth's middle surface from the form, m.
const Shell = 1e-3

// span returns the nodes of a half.
func (w *Stepper) span(half int) (lo, hi int) {
	n := len(w.force)
	if half == 0 {
		return 0, n / 2
	}
	return n / 2, n
}

// reshapeEvery is how many steps the masses hold; in that time a node moves a
// fifth of a spacing at most.
const reshapeEvery = 10

// pullHalf sums what one half of the parts of the cloth, and the first the
// holds and tapes, do to the nodes.
func (w *Stepper) pullHalf(half int) {
	sum := w.sum[half]
	clear(sum)
	if w.age%reshapeEvery == 0 {
		lo, hi := w.span(half)
		w.scene.Cloth.reshape(lo, hi, w.state.Pos, w.Even, w.mass)
	}
	w.scene.Cloth.elastic(half, w.state.Pos, w.state.Set, sum)
	if half == 0 {
		w.hold(sum)
		w.stay(sum)
	}
	if w.self != nil {
		w.self.Add(half, w.state.Pos, sum, w.travel)
	}
}

// hold adds the pull of pins and fingers.
func (w *Stepper) hold(sum []contact.Sum) {
	for k, h := range w.scene.Holds {
		if w.state.Grip[k] == 0 {
			continue
		}
		f := w.state.Pull(h, k)
		for j, n := range h.Point.Node {
			sum[n].Force = r3.Add(sum[n].Force, r3.Scale(h.Point.Weight[j], f))
			sum[n].Mass += 0.55 * w.state.Grip[k] * math.Abs(h.Point.Weight[j])
		}
	}
}

// balance sums up what acts on the nodes of a half, weight and form included.
func (w *Stepper) balance(half int) {
	lo, hi := w.span(half)
	a, b, load := w.sum[0], w.sum[1], w.scene.Cloth.Load
	for i := lo; i < hi; i++ {
		f, g := &a[i], &b[i]
		f.Force.X, f.Force.Y, f.Force.Z = f.Force.X+g.Force.X, f.Force.Y+g.Force.Y-load[i], f.Force.Z+g.Force.Z
		f.Mass += g.Mass
	}
	if w.form != nil {
		w.form.Add(lo, hi, w.state.Pos, a, w.travel)
	}
}

// moveHalf balances and moves the nodes of a half. Power is that of the forces
// on the mean of old and new velocity, the change of kinetic energy in the step.
func (w *Stepper) moveHalf(half int) {
	w.balance(half)
	lo, hi := w.span(half)
	st, most, kick := w.state, stride*w.scene.Cloth.h, 1.0
	if w.still {
		kick = 0.5 // from a standstill velocities are half a step behind
	}
	var m motion // far is a square
	for i := lo; i < hi; i++ {
		if w.scene.Fixed != nil && w.scene.Fixed[i] {
			w.force[i] = w.sum[0][i].Force
			continue
		}
		s, o, v, p := &w.sum[0][i], &w.mass[i], &st.Vel[i], &st.Pos[i]
		o.guard(s.Force, w.force[i])
		w.force[i] = s.Force
		d := r3.Scale(kick, o.answer(s.Force, s.Mass))
		m.power += s.Force.X*(2*v.X+d.X) + s.Force.Y*(2*v.Y+d.Y) + s.Force.Z*(2*v.Z+d.Z)
		v.X, v.Y, v.Z = v.X+d.X, v.Y+d.Y, v.Z+d.Z
		l2 := v.X*v.X + v.Y*v.Y + v.Z*v.Z
		if l2 > most*most {
			*v, l2 = r3.Scale(most/math.Sqrt(l2), *v), most*most
		}
		m.far = max(m.far, l2)
		p.X, p.Y, p.Z = p.X+v.X, p.Y+v.Y, p.Z+v.Z
	}
	m.far = math.Sqrt(m.far)
	w.moved[half] = m
}

// Step moves the cloth one step towards rest.
func (w *Stepper) Step() {
	if w.self != nil {
		w.self.Ready(w.state.Pos, w.travel, w.crew)
	}
	w.crew.Both(w.pull)
	w.crew.Both(w.move)
	w.age++
	far := max(w.moved[0].far, w.moved[1].far)
	w.travel += far
	w.still = w.moved[0].power+w.moved[1].power < 0
	if w.still {
		w.stop()
		w.travel += far / 2
	}
}

// stop takes back half a step, to about the peak of kinetic energy, and sets
// the cloth still.
func (w *Stepper) stop() {
	st := w.state
	for i, v := range st.Vel {
		st.Pos[i] = r3.Sub(st.Pos[i], r3.Scale(0.5, v))
		st.Vel[i] = r3.Vec{}
	}
}

// Residual returns the sum of the sizes of the unbalanced forces on the free
// nodes over the weight of the piece, as of the last step.
func (w *Stepper) Residual() float64 {
	var sum float64
	for i, f := range w.force {
		if w.scene.Fixed == nil || !w.scene.Fixed[i] {
			sum += r3.Norm(f)
		}
	}
	return sum / w.scene.Cloth.weight
}

// Walk steps to rest or to the limit.
func (w *Stepper) Walk(ctx context.Context, o Settings) Result {
	if o.Residual == 0 {
		o.Residual = 1e-3
	}
	if o.Steps == 0 {
		o.Steps = 200_000
	}
	r := Result{Status: StepLimit}
	for r.Steps < o.Steps {
		w.Step()
		r.Steps++
		if o.Watch != nil {
			if o.Watch(w); ctx.Err() != nil {
				r.Status, r.Residual = Cancelled, w.Residual()
				return r
			}
		}
		if r.Steps%checkEvery != 0 {
			continue
		}
		r.Residual = w.Residual()
		if o.Report != nil && r.Steps%(4*checkEvery) == 0 {
			o.Report(r.Steps, r.Residual)
		}
		switch {
		case ctx.Err() != nil:
			r.Status = Cancelled
			return r
		case math.IsNaN(r.Residual) || math.IsInf(r.Residual, 0):
			r.Status = Diverged
			return r
		case r.Residual <= o.Residual:
			r.Status = Settled
			return r
		}
	}
	r.Residual = w.Residual()
	return r
}

// Relax brings the state to rest in place.
func Relax(ctx context.Context, s *Scene, st *State, o Settings) Result {
	w := NewStepper(s, st)
	w.Even = o.Even
	return w.Walk(ctx, o)
}
