package drape

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
)

// What is left of a dart is sewn along its whole length, up to where its legs lie
// nearer than two layers do.
const (
	stitchStep  = 0.010 // m
	stitchStiff = 50.0  // N/m: a pull of 10 g opens the seam by 2 mm
)

// stitches sew up the open darts of both halves.
func (j Job) stitches(l *lattice.Lattice) ([]sim.Tie, error) {
	d := j.Cowl.DartLeft
	if len(d) < 3 {
		return nil, nil
	}
	var out []sim.Tie
	for _, side := range [2]float64{1, -1} {
		for _, s := range steps(0, 1, stitchStep/r2.Norm(r2.Sub(d[0], d[1]))) {
			outer, inner := lerp(d[1], d[0], s), lerp(d[1], d[2], s)
			if r2.Norm(r2.Sub(outer, inner)) <= j.gap() {
				continue
			}
			a, ok := l.Locate(sided(outer, side))
			b, on := l.Locate(sided(inner, side))
			if !ok || !on {
				return nil, fmt.Errorf("drape: the dart at (%.1f, %.1f) cm lies off the cloth", outer.X*100, outer.Y*100)
			}
			out = append(out, sim.Tie{A: a, B: b, Long: j.gap(), Stiff: stitchStiff * j.gap()})
		}
	}
	return out, nil
}

// inDart returns how far inside the open dart a place of the flat piece lies, m: the
// cloth there begins behind the front, so that the dart folds inwards.
func inDart(p draft.Cowl, q r2.Vec) float64 {
	d := p.DartLeft
	if len(d) < 3 {
		return 0
	}
	q.X = math.Abs(q.X)
	left, right := r2.Unit(r2.Sub(d[0], d[1])), r2.Unit(r2.Sub(d[2], d[1]))
	way := r2.Sub(q, d[1])
	return math.Max(0, math.Min(r2.Cross(way, left), r2.Cross(right, way)))
}

func lerp(a, b r2.Vec, t float64) r2.Vec { return r2.Add(a, r2.Scale(t, r2.Sub(b, a))) }
