package lab

import (
	"math"

	"cowl/sim"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// support is the lower plate of a drape meter: a level round plate with a
// rounded rim, on which the cloth's middle surface rests at Y = 0.
type support struct {
	radius float64 // m
	thick  float64 // m
	round  float64 // m, radius of the rim's edges
}

// plate is the support of the given radius (m). Plates are a few millimetres
// thick with an edge that does not cut (common practice).
func plate(radius float64) support { return support{radius, 0.010, 0.001} }

// Distance implements contact.Obstacle.
func (s support) Distance(p r3.Vec) (float64, r3.Vec) {
	r := math.Hypot(p.X, p.Z)
	out := r3.Vec{X: 1}
	if r > 0 {
		out = r3.Vec{X: p.X / r, Z: p.Z / r}
	}
	y, up := p.Y+sim.Shell+s.thick/2, 1.0
	if y < 0 {
		y, up = -y, -1
	}
	a, b := r-(s.radius-s.round), y-(s.thick/2-s.round)
	switch {
	case a > 0 && b > 0:
		d := math.Hypot(a, b)
		return d - s.round, r3.Add(r3.Scale(a/d, out), r3.Vec{Y: up * b / d})
	case a > b:
		return a - s.round, out
	}
	return b - s.round, r3.Vec{Y: up}
}

// table is a plate on a level floor that ends nowhere; cloth on it has its
// middle surface at the height at (m).
type table struct {
	on contact.Obstacle
	at float64
}

// Distance implements contact.Obstacle.
func (t table) Distance(p r3.Vec) (float64, r3.Vec) {
	d, n := t.on.Distance(p)
	if floor := p.Y - t.at + sim.Shell; floor < d {
		return floor, r3.Vec{Y: 1}
	}
	return d, n
}
