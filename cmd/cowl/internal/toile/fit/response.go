package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// spare is how many more cloths than numbers of the response a figure must have: fewer
// leave its error untold.
const spare = 3

// response is a figure as a straight function of the coordinates.
type response struct {
	Figure
	at       []float64    // the constant, then the slope of each property
	inner    mat.SymDense // inverse of ZᵀZ, for how its own error grows away from the middle
	missed   scatter      // of every cloth from the response
	handed   scatter      // of every hand of every cloth from the mean of its cloth
	variance float64      // of one cloth about the response, by the mean of its hands
	hands    float64      // variance of one hand
	most     float64      // hands in the mean of a cloth
}

// respond fits the response of a figure.
func (e Experiment) respond(f Figure) (response, error) {
	n := len(e.Properties) + 1
	var rows, y []float64
	var which []int
	for i, drawn := range f.Drawn {
		mean, count := present(drawn)
		if count == 0 {
			continue
		}
		which, y = append(which, i), append(y, mean)
		rows = append(append(rows, 1), e.coordinates(e.Cloths[i])...)
	}
	if len(y) < n+spare {
		return response{}, fmt.Errorf("only %d of %d drawn cloths have it, want %d or more", len(y), len(f.Drawn), n+spare)
	}
	z := mat.NewDense(len(y), n, rows)
	var zz mat.SymDense
	zz.SymOuterK(1, z.T())
	var chol mat.Cholesky
	if !chol.Factorize(&zz) {
		return response{}, fmt.Errorf("the drawn cloths do not tell the properties apart")
	}
	r := response{Figure: f, missed: scatter{make([]float64, len(f.Drawn)), len(y) - n}}
	var zy, at mat.VecDense
	zy.MulVec(z.T(), mat.NewVecDense(len(y), y))
	if err := chol.SolveVecTo(&at, &zy); err != nil {
		return response{}, fmt.Errorf("the drawn cloths do not tell the properties apart: %w", err)
	}
	if err := chol.InverseTo(&r.inner); err != nil {
		return response{}, fmt.Errorf("the drawn cloths do not tell the properties apart: %w", err)
	}
	r.at = at.RawVector().Data
	for k, i := range which {
		r.missed.off[i] = y[k] - floats.Dot(r.at, z.RawRowView(k))
	}
	r.variance = r.missed.variance()
	return r, r.scattered()
}

// scattered fills in what hands do to the figure of one cloth.
func (r *response) scattered() error {
	cloths, hands := 0, 0
	for _, drawn := range r.Drawn {
		mean, count := present(drawn)
		for _, v := range drawn {
			d := 0.0
			if !math.IsNaN(v) {
				d = v - mean
			}
			r.handed.off = append(r.handed.off, d)
		}
		if count > 0 {
			cloths, hands = cloths+1, hands+count
		}
	}
	r.handed.free = hands - cloths
	if r.handed.free < spare {
		return fmt.Errorf("too few cloths have it by more than one hand to tell what hands do to it")
	}
	r.hands, r.most = r.handed.variance(), float64(hands)/float64(cloths)
	return nil
}

// scatter are residuals, 0 where there was no value, and their degrees of freedom.
type scatter struct {
	off  []float64
	free int
}

// variance is as wide as Student's t makes it: few cloths tell their own scatter badly.
func (s scatter) variance() float64 {
	return floats.Dot(s.off, s.off) / math.Max(float64(s.free)-2, 1)
}

// misses is the variance of the figure of a cloth about the response that is not the
// hands'.
func (r *response) misses() float64 { return math.Max(0, r.variance-r.hands/r.most) }

// grows is how many times the variance about the response that of the response itself is
// at a point: 1/n in the middle of the n cloths.
func (r *response) grows(x []float64) float64 {
	z := func(i int) float64 {
		if i == 0 {
			return 1
		}
		return x[i-1]
	}
	sum := 0.0
	for i := range len(x) + 1 {
		for j := range len(x) + 1 {
			sum += z(i) * r.inner.At(i, j) * z(j)
		}
	}
	return sum
}

// value is the response at a point.
func (r *response) value(x []float64) float64 { return r.at[0] + floats.Dot(r.at[1:], x) }

// coordinates are those of a cloth.
func (e Experiment) coordinates(times []float64) []float64 {
	out := make([]float64, len(times))
	for i, p := range e.Properties {
		out[i] = p.coordinate(times[i])
	}
	return out
}

// used says what is told of a figure.
func (e Experiment) used(r response) Used {
	u := Used{Figure: r.Figure, Hands: math.Sqrt(r.hands), Response: math.Sqrt(r.misses())}
	for i, p := range e.Properties {
		u.Slopes = append(u.Slopes, r.at[1+i]*(p.coordinate(p.Most)-p.coordinate(p.Least)))
	}
	return u
}

// present is the mean of the values that are there, and how many they are.
func present(v []float64) (mean float64, n int) {
	for _, x := range v {
		if !math.IsNaN(x) {
			mean, n = mean+x, n+1
		}
	}
	return mean / float64(max(n, 1)), n
}
