// Package contact keeps the cloth off the form and off itself. Contact and
// friction are forces inside the way to rest, never a correction after it.
// Start at Against and Self.
package contact

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Obstacle is a rigid body that the cloth cannot enter.
type Obstacle interface {
	// Distance returns the signed distance of p (m, positive outside) and its
	// gradient. It must be safe for concurrent use.
	Distance(p r3.Vec) (d float64, grad r3.Vec)
}

// Sum is what acts on a node: the force (N) and the fictitious mass (kg, for a
// unit step) that keeps a step against its stiffness stable.
type Sum struct {
	Force r3.Vec
	Mass  float64
}

// Against is the contact of cloth nodes with an obstacle: a penalty on the
// depth below a shell around the obstacle, and Coulomb friction by anchors
// that stick until the pull exceeds μ times the press, then slide along.
type Against struct {
	Obstacle Obstacle
	Shell    float64   // m, distance at which the cloth's middle surface rests
	Friction float64   // coefficient μ
	Stiff    []float64 // N/m, len = nodes; penalty stiffness

	anchor []r3.Vec  // m, len = nodes; where the node sticks, if it touches
	touch  []bool    // len = nodes
	next   []float64 // m, len = nodes; motion before which the node cannot reach the shell
}

// NewAgainst prepares contact for len(stiff) nodes.
func NewAgainst(o Obstacle, shell, friction float64, stiff []float64) *Against {
	n := len(stiff)
	return &Against{Obstacle: o, Shell: shell, Friction: friction, Stiff: stiff,
		anchor: make([]r3.Vec, n), touch: make([]bool, n), next: make([]float64, n)}
}

// soon is how far off a node already has the mass that contact will need, m: a
// light node would bounce if it became heavy on touching.
const soon = 1e-3

// harden sets how the press rises with depth: k·depth·(1 + (harden·depth/shell)²).
// The weight of cloth stays on the linear part; layers squeezed between a tight
// front and the form are held on the shell.
const harden = 3

// Add adds press and friction on the nodes lo to hi at x to sum. Motion (m) is
// the sum of the largest moves of all steps so far; a node that is farther from
// the shell than it can have moved is passed over.
func (a *Against) Add(lo, hi int, x []r3.Vec, sum []Sum, motion float64) {
	for i := lo; i < hi; i++ {
		if motion < a.next[i] {
			continue
		}
		d, g := a.Obstacle.Distance(x[i])
		depth := a.Shell - d
		if depth <= 0 {
			a.touch[i] = false
			if -depth > soon {
				a.next[i] = motion - (depth+soon)/2
			} else {
				sum[i].Mass += 0.55 * 2 * a.Stiff[i]
			}
			continue
		}
		q := harden * depth / a.Shell
		press := a.Stiff[i] * depth * (1 + q*q)
		sum[i].Force = r3.Add(sum[i].Force, r3.Add(r3.Scale(press, g), a.rub(i, x[i], g, press)))
		sum[i].Mass += 0.55 * a.Stiff[i] * (2 + 3*q*q)
	}
}

// rub returns the friction on node i at x with normal g and the given press,
// and moves its anchor when it slides.
func (a *Against) rub(i int, x, g r3.Vec, press float64) r3.Vec {
	if a.Friction == 0 {
		return r3.Vec{}
	}
	if !a.touch[i] {
		a.touch[i], a.anchor[i] = true, x
	}
	t := r3.Sub(x, a.anchor[i])
	t = r3.Sub(t, r3.Scale(r3.Dot(t, g)/r3.Norm2(g), g))
	most := a.Friction * press / a.Stiff[i]
	if l := math.Sqrt(r3.Norm2(t)); l > most {
		t = r3.Scale(most/l, t)
		a.anchor[i] = r3.Sub(x, t)
	}
	return r3.Scale(-a.Stiff[i], t)
}
