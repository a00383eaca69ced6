package sim

import (
	"context"
	"math"

	"cowl/sim/contact"

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
type Stepper struct {
	scene   *Scene
	state   *State
	owned   []owned  // len = nodes + 1
	force   []r3.Vec // N, len = nodes
	mass    []float64
	form    *contact.Against
	self    *contact.Self
	kinetic float64 // J, of the last step
	travel  float64 // m, sum of the largest moves of all steps
}

// NewStepper prepares the walk; the state stays the caller's.
func NewStepper(s *Scene, st *State) *Stepper {
	n := len(st.Pos)
	w := &Stepper{scene: s, state: st, owned: make([]owned, n+1), force: make([]r3.Vec, n), mass: make([]float64, n)}
	l := s.Cloth.Lattice
	if s.Obstacle != nil {
		stiff := make([]float64, n)
		for i := range stiff {
			stiff[i] = press * l.Area[i]
		}
		w.form = contact.NewAgainst(s.Obstacle, Shell, s.Friction, stiff)
	}
	if s.Gap > 0 {
		w.self = contact.NewSelf(l, s.Gap, press*l.Spacing*l.Spacing/2)
	}
	return w
}

// press is the penalty stiffness of the form per area of cloth, N/m³: a cloth
// of 1 N/m² that hangs at 100 times its weight sinks in by 0.05 mm.
const press = 2e6

// Shell is the distance of the cloth's middle surface from the form, m.
const Shell = 1e-3

// balance computes the unbalanced force on every node and the fictitious masses.
func (w *Stepper) balance() {
	c, st := w.scene.Cloth, w.state
	c.own(st.Pos, w.owned)
	if c.rub != nil {
		c.rubbing(st.Pos, st.Set, w.owned)
	}
	c.gather(w.owned, w.force)
	copy(w.mass, c.base)
	for k, h := range w.scene.Holds {
		if st.Grip[k] == 0 {
			continue
		}
		f := st.Pull(h, k)
		for j, n := range h.Point.Node {
			w.force[n] = r3.Add(w.force[n], r3.Scale(h.Point.Weight[j], f))
			w.mass[n] += 0.55 * st.Grip[k] * math.Abs(h.Point.Weight[j])
		}
	}
	if w.form != nil {
		w.form.Add(st.Pos, w.force, w.mass, w.travel)
	}
	if w.self != nil {
		w.self.Add(st.Pos, w.force, w.mass, w.travel)
	}
}

// Step moves the cloth one step towards rest.
func (w *Stepper) Step() {
	w.balance()
	st := w.state
	most := stride * w.scene.Cloth.h
	kick := 1.0
	if w.kinetic == 0 {
		kick = 0.5 // from a standstill velocities are half a step behind
	}
	var kinetic, far float64
	for i := range st.Pos {
		if w.scene.Fixed != nil && w.scene.Fixed[i] {
			continue
		}
		m := w.mass[i]
		v := r3.Add(st.Vel[i], r3.Scale(kick/m, w.force[i]))
		if l := math.Sqrt(r3.Norm2(v)); l > most {
			v, far = r3.Scale(most/l, v), most
		} else if l > far {
			far = l
		}
		kinetic += m * r3.Norm2(v)
		st.Vel[i] = v
		st.Pos[i] = r3.Add(st.Pos[i], v)
	}
	w.travel += far
	if kinetic < w.kinetic {
		w.stop()
		w.travel += far / 2
		kinetic = 0
	}
	w.kinetic = kinetic
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
	return NewStepper(s, st).Walk(ctx, o)
}
