package fit

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// together returns how far residuals of the figures go together: correlations, drawn
// towards none as far as so few cloths cannot tell them (J. Schäfer & K. Strimmer,
// Statistical Applications in Genetics and Molecular Biology 4 (2005) 32, target D).
func together(figures []response, of func(*response) scatter) *mat.SymDense {
	n := len(figures)
	unit := make([][]float64, n)
	for i := range figures {
		unit[i] = standard(of(&figures[i]).off)
	}
	out := mat.NewSymDense(n, nil)
	doubt, square := 0.0, 0.0
	for i := range n {
		for j := range i {
			r, v := correlation(unit[i], unit[j], min(of(&figures[i]).free, of(&figures[j]).free))
			out.SetSym(i, j, r)
			doubt, square = doubt+v, square+r*r
		}
	}
	shrink := 1.0
	if square > 0 {
		shrink = math.Min(1, doubt/square)
	}
	for i := range n {
		out.SetSym(i, i, 1)
		for j := range i {
			out.SetSym(i, j, (1-shrink)*out.At(i, j))
		}
	}
	return out
}

// standard scales residuals to a mean square of 1; residuals that are all 0 stay so.
func standard(v []float64) []float64 {
	square := 0.0
	for _, x := range v {
		square += x * x
	}
	out := make([]float64, len(v))
	if square == 0 {
		return out
	}
	for k, x := range v {
		out[k] = x * math.Sqrt(float64(len(v))/square)
	}
	return out
}

// correlation is that of two scaled residuals, with the variance of its estimate from so
// many of them that are free. Of lists of different lengths there is none to be told.
func correlation(a, b []float64, free int) (r, variance float64) {
	n, nu := float64(len(a)), float64(free)
	if len(a) != len(b) || nu < 2 {
		return 0, 0
	}
	for k := range a {
		r += a[k] * b[k] / n
	}
	for k := range a {
		d := a[k]*b[k] - r
		variance += d * d
	}
	return r, variance / n * nu * nu / math.Pow(nu-1, 3)
}
