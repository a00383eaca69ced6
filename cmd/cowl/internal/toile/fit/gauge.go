package fit

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// gauge tells how likely it is that a cloth gives what was measured, with all errors and
// how they go together.
type gauge struct {
	figures []response
	missed  *mat.SymDense // how residuals of the cloths go together
	fixed   *mat.SymDense // covariance of what hands, ruler and lattice do

	sd     []float64 // these are used again and again
	errors mat.SymDense
	chol   mat.Cholesky
	off    *mat.VecDense
	solved mat.VecDense
}

// tiny keeps figures without any error from dividing by zero: a thousandth of the unit.
const tiny = 1e-6

func newGauge(figures []response) *gauge {
	n := len(figures)
	handed := together(figures, func(r *response) scatter { return r.handed })
	g := &gauge{
		figures: figures, missed: together(figures, func(r *response) scatter { return r.missed }),
		fixed: mat.NewSymDense(n, nil), off: mat.NewVecDense(n, nil), sd: make([]float64, n),
	}
	for i := range n {
		for j := i; j < n; j++ {
			a, b, v := &figures[i], &figures[j], 0.0
			if a.Style == b.Style {
				v += handed.At(i, j) * math.Sqrt(a.hands/float64(a.Toiles)*b.hands/float64(b.Toiles))
			}
			if a.Kind == b.Kind {
				v += a.Lattice * b.Lattice
			}
			if i == j {
				v += a.Ruler*a.Ruler/float64(a.Toiles) + tiny
			}
			g.fixed.SetSym(i, j, v)
		}
	}
	return g
}

// misfit is χ² of what was measured at coordinates. The likelihood is taken as its
// exponential alone: the determinant of the errors would take it for evidence that the
// response is surer in the middle of the drawn cloths.
func (g *gauge) misfit(x []float64) float64 {
	n, sd := len(g.figures), g.sd
	for i := range g.figures {
		r := &g.figures[i]
		sd[i] = math.Sqrt(r.misses() + r.variance*r.grows(x))
		g.off.SetVec(i, r.Measured-r.value(x))
	}
	g.errors.Reset()
	g.errors.ReuseAsSym(n)
	for i := range n {
		for j := i; j < n; j++ {
			g.errors.SetSym(i, j, g.fixed.At(i, j)+g.missed.At(i, j)*sd[i]*sd[j])
		}
	}
	if !g.chol.Factorize(&g.errors) {
		panic("fit: errors that are none")
	}
	if err := g.chol.SolveVecTo(&g.solved, g.off); err != nil {
		panic("fit: errors that are none: " + err.Error())
	}
	return mat.Dot(g.off, &g.solved)
}
