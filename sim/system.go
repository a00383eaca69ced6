// Package sim brings a piece of cloth to rest under its weight, on pins and
// against an obstacle. It knows neither the dress form nor any drawing.
//
// The way to rest is dynamic relaxation with kinetic damping: A. S. Day, "An
// introduction to dynamic relaxation", The Engineer 219 (1965); M. R. Barnes,
// "Form finding and analysis of tension structures by dynamic relaxation",
// Int. J. Space Structures 14(2) (1999). Start at System and Relax.
package sim

import (
	"iter"
	"slices"

	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Hold is a pin or a guiding finger: a point of the cloth drawn to a target by
// a spring. Stiffness and target live in the State so that a finger can move.
type Hold struct {
	Name  string
	Point lattice.Point
	Only  r3.Vec // 1 along the axes that are held, 0 along free ones
}

// Hand is a hold that comes and goes on the way.
type Hand struct {
	Hold
	Target r3.Vec  // m
	Grip   float64 // N/m
}

// All holds a point along every axis.
var All = r3.Vec{X: 1, Y: 1, Z: 1}

// System is everything that stays the same on the way to rest.
type System struct {
	Cloth    *Cloth
	Holds    []Hold
	Ties     []Tie            // stay tapes
	Fixed    []bool           // len = nodes, or nil; nodes that never move
	Obstacle contact.Obstacle // nil for a free hang
	Friction float64          // cloth on obstacle
	Rub      float64          // friction of cloth on cloth
	Gap      float64          // m, distance kept between layers of cloth; 0 lets them pass
	Down     r3.Vec           // unit, where the weight pulls to; zero: down, against Y
	Closed   []r2.Vec         // m, len = nodes, or nil; see contact.Self.Sew
	Alone    bool             // keep to one core; the bits are the same
	Clock    *Clock           // where the time goes; nil: nobody asks
}

// down returns where the weight pulls to.
func (s *System) down() r3.Vec {
	if s.Down == (r3.Vec{}) {
		return r3.Vec{Y: -1}
	}
	return s.Down
}

// State is everything that changes. Make it with NewState.
type State struct {
	Pos, Vel []r3.Vec  // m, m per step; len = nodes
	Target   []r3.Vec  // m, len = holds
	Grip     []float64 // N/m, len = holds; 0 lets go
	Hands    []Hand    // beside the holds of the scene
	Slip     Slip      // of the friction of bending and shear; flat cloth has none
}

// NewState returns cloth at rest at pos (m, len = nodes), held by nothing.
func NewState(s *System, pos []r3.Vec) *State {
	if len(pos) != len(s.Cloth.Load) {
		panic("sim: one position a node is wanted")
	}
	return &State{
		Pos: pos, Vel: make([]r3.Vec, len(pos)),
		Target: make([]r3.Vec, len(s.Holds)), Grip: make([]float64, len(s.Holds)),
		Slip: Slip{make([]float64, len(pos)), make([]float64, len(pos)), make([]float64, len(pos))},
	}
}

// Clone returns a copy that shares nothing with st.
func (st *State) Clone() *State {
	return &State{
		Pos: slices.Clone(st.Pos), Vel: slices.Clone(st.Vel),
		Target: slices.Clone(st.Target), Grip: slices.Clone(st.Grip), Hands: slices.Clone(st.Hands),
		Slip: Slip{slices.Clone(st.Slip.U), slices.Clone(st.Slip.V), slices.Clone(st.Slip.Shear)},
	}
}

// Pull returns the force (N) that hold k puts on the cloth.
func (st *State) Pull(h Hold, k int) r3.Vec {
	return Hand{h, st.Target[k], st.Grip[k]}.Pull(st.Pos)
}

// Pull returns the force (N) on cloth at pos.
func (h Hand) Pull(pos []r3.Vec) r3.Vec {
	d, g := r3.Sub(h.Target, h.Point.At(pos)), h.Grip
	return r3.Vec{X: g * h.Only.X * d.X, Y: g * h.Only.Y * d.Y, Z: g * h.Only.Z * d.Z}
}

// Pulls yields every hold with its pull (N), the hands last.
func (st *State) Pulls(s *System) iter.Seq2[Hold, r3.Vec] {
	return func(yield func(Hold, r3.Vec) bool) {
		for k, h := range s.Holds {
			if !yield(h, st.Pull(h, k)) {
				return
			}
		}
		for _, h := range st.Hands {
			if !yield(h.Hold, h.Pull(st.Pos)) {
				return
			}
		}
	}
}
