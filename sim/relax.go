package sim

import (
	"math"

	"cowl/sim/contact"
	"cowl/sim/forkjoin"

	"gonum.org/v1/gonum/spatial/r3"
)

// stride is the longest move of a node in one step, in lattice spacings.
// Without it strongly sheared starts overflow.
const stride = 0.02

// Stepper walks a state to rest. Make it with NewStepper.
//
// Each half of the cloth adds its forces to a sum of its own, and the two are
// added node by node; so the bits do not depend on who did the work.
type Stepper struct {
	Even bool // one mass for moves along and across the cloth: slower but steadier

	system *System
	state  *State
	cloth  *Cloth           // that of the system without what moves nothing
	free   [2][]span        // the nodes of each half that may move
	sum    [2][]contact.Sum // len = nodes
	curls  [2]*curls        // of each half
	force  []r3.Vec         // N, len = nodes; unbalanced
	mass   []inertia        // len = nodes
	age    int              // steps taken
	form   *contact.Against
	self   *contact.Self
	levels []*level // move broad slack places as a whole; none until the first step that is not even
	coarse bool     // the levels are there
	pair   *forkjoin.Pair
	still  bool      // the cloth stood still before this step
	motion float64   // m, sum of the largest moves of all steps
	moved  [2]motion // of each half in the last step
	load   func(int) // what a half does first,
	weigh  func(int) // next,
	move   func(int) // and last
}

// motion is what a half of the cloth did in a step.
type motion struct{ power, far float64 } // J a step, m

// NewStepper prepares the walk; the state stays the caller's.
func NewStepper(s *System, st *State) *Stepper {
	n := len(st.Pos)
	w := &Stepper{
		system: s, state: st, cloth: s.Cloth.loose(s.Fixed), force: make([]r3.Vec, n), mass: make([]inertia, n), still: true,
		pair:  forkjoin.New(!s.Alone),
		sum:   [2][]contact.Sum{make([]contact.Sum, n), make([]contact.Sum, n)},
		curls: [2]*curls{newCurls(n), newCurls(n)},
	}
	for i := range w.mass {
		w.mass[i].factor = 1
	}
	w.load, w.weigh, w.move = w.loadHalf, w.weighHalf, w.moveHalf
	for half := range w.free {
		w.free[half] = s.freeRuns(half)
	}
	l := s.Cloth.Lattice
	if s.Obstacle != nil {
		w.form = contact.NewAgainst(s.Obstacle, Shell, s.Friction, presses(l))
	}
	if s.Gap > 0 {
		w.self = contact.NewSelf(l, s.Gap, press*l.Spacing*l.Spacing/2)
		w.self.Friction = s.Rub
		w.self.Sew(s.Closed)
	}
	return w
}

// Shell is the distance of the cloth's middle surface from the form, m.
const Shell = 1e-3

// reshapeEvery is how many steps the masses hold; in that time a node moves a
// fifth of a spacing at most.
const reshapeEvery = 10

// moveHalf moves the free nodes of a half.
func (w *Stepper) moveHalf(half int) {
	var m motion // far is a square
	for _, r := range w.free[half] {
		m = w.moveRun(r.first, r.last, m)
	}
	m.far = math.Sqrt(m.far)
	w.moved[half] = m
}

// moveRun moves the nodes lo to hi and returns m, its far a square, with what they did. Power
// is that of the forces on the mean of old and new velocity, the change of kinetic energy in
// the step.
func (w *Stepper) moveRun(lo, hi int, m motion) motion {
	st, most, kick := w.state, stride*w.system.Cloth.h, 1.0
	if w.still {
		kick = 0.5 // from a standstill velocities are half a step behind
	}
	for i := lo; i < hi; i++ {
		s, v, p := &w.sum[0][i], &st.Vel[i], &st.Pos[i]
		d := r3.Scale(kick, w.quicken(i))
		m.power += s.Force.X*(2*v.X+d.X) + s.Force.Y*(2*v.Y+d.Y) + s.Force.Z*(2*v.Z+d.Z)
		v.X, v.Y, v.Z = v.X+d.X, v.Y+d.Y, v.Z+d.Z
		l2 := v.X*v.X + v.Y*v.Y + v.Z*v.Z
		if l2 > most*most {
			*v, l2 = r3.Scale(most/math.Sqrt(l2), *v), most*most
		}
		m.far = max(m.far, l2)
		w.tell(i, math.Sqrt(l2))
		p.X, p.Y, p.Z = p.X+v.X, p.Y+v.Y, p.Z+v.Z
	}
	return m
}

// tell says to self-contact how far a node has moved, m.
func (w *Stepper) tell(i int, by float64) {
	if w.self != nil {
		w.self.Moved(i, by)
	}
}

// quicken returns by how much a unit step of the force on node i speeds it up,
// m a step.
func (w *Stepper) quicken(i int) r3.Vec {
	s := &w.sum[0][i]
	d := w.mass[i].answer(s.Force, s.Mass)
	if w.Even {
		return d
	}
	for _, n := range w.levels {
		d = r3.Add(d, n.prolong(i))
	}
	return d
}

// Step moves the cloth one step towards rest.
func (w *Stepper) Step() {
	clock := w.system.Clock
	clock.start()
	if w.self != nil {
		w.self.Ready(w.state.Pos, w.motion, w.pair)
	}
	clock.lap(Listing)
	if !w.Even && !w.coarse {
		w.coarsen()
	}
	w.pair.Both(w.load)
	w.pair.Both(w.weigh)
	w.correct()
	clock.lap(Balance)
	w.pair.Both(w.move)
	clock.lap(Moving)
	w.age++
	far := max(w.moved[0].far, w.moved[1].far)
	w.motion += far
	w.still = w.moved[0].power+w.moved[1].power < 0
	if w.still {
		w.stop()
		w.motion += far / 2
	}
}

// Ease moves the cloth one step towards rest and sets it still: what is crushed
// opens, and throws nothing about.
func (w *Stepper) Ease() {
	w.Step()
	clear(w.state.Vel)
	w.still = true
}

// stop takes back half a step, to about the peak of kinetic energy, and sets
// the cloth still.
func (w *Stepper) stop() {
	st := w.state
	for i, v := range st.Vel {
		w.tell(i, r3.Norm(v)/2)
		st.Pos[i] = r3.Sub(st.Pos[i], r3.Scale(0.5, v))
		st.Vel[i] = r3.Vec{}
	}
}

// Residual returns the sum of the sizes of the unbalanced forces on the free
// nodes over the weight of the piece, as of the last step.
func (w *Stepper) Residual() float64 {
	var sum float64
	for _, half := range w.free {
		for _, r := range half {
			for _, f := range w.force[r.first:r.last] {
				sum += r3.Norm(f)
			}
		}
	}
	return sum / w.system.Cloth.weight
}
