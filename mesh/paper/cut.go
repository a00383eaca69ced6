package paper

import (
	"math"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// Cut returns the closed cut line of the outline: every side of an edge moved
// out by the allowance of that edge, corners mitred, loops dropped. Corners
// sharper than 60° are cut off square.
func Cut(outline []r2.Vec, edges []Edge) []r2.Vec {
	allowance := make([]float64, len(outline))
	for _, e := range edges {
		for i := e.From; i != e.To; i = (i + 1) % len(outline) {
			allowance[i] = e.Allowance
		}
	}
	return draft.Offset(outline, allowance)
}

// leaning returns the angle from +Y to d towards +X, turned into ±π/2: a line
// has no head.
func leaning(d r2.Vec) float64 {
	a := math.Atan2(d.X, d.Y)
	switch {
	case a > math.Pi/2:
		a -= math.Pi
	case a <= -math.Pi/2:
		a += math.Pi
	}
	return a
}

// allowanceAt returns the allowance of the edge nearest to v (m).
func (p Piece) allowanceAt(v r2.Vec) float64 { return p.edgeNear(v).Allowance }
