package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// box is the part of the known ranges that a grid covers, as multiples.
type box struct{ least, most []float64 }

// cells is how many cells a grid has along each property.
const cells = 15

// dust is the weight, as a share of that of the heaviest, of a cell of a property that
// the second grid need not cover.
const dust = 1e-5

// weigh returns what is likely of every property, and the misfit of the likeliest cloth:
// by a grid over the known ranges, and another over what of them has any weight.
func (e Experiment) weigh(figures []response) ([]Interval, float64) {
	g := newGauge(figures)
	whole := box{}
	for _, p := range e.Properties {
		whole.least, whole.most = append(whole.least, p.Least), append(whole.most, p.Most)
	}
	first, _ := e.grid(whole, g.misfit)
	part := whole.around(first)
	weights, misfit := e.grid(part, g.misfit)
	knowing, _ := e.grid(whole, func([]float64) float64 { return 0 })
	var out []Interval
	for i, p := range e.Properties {
		in := Interval{Property: p, Low: part.at(i, weights[i], 0.05), Middle: part.at(i, weights[i], 0.5),
			High: part.at(i, weights[i], 0.95)}
		before := whole.at(i, knowing[i], 0.95) - whole.at(i, knowing[i], 0.05)
		in.Share = 0.9 * (in.High - in.Low) / before
		in.Tells = in.Share < Wide
		out = append(out, in)
	}
	return out, misfit
}

// grid walks over a box and returns the weight of every cell of every property, all
// others summed over, and χ² of the heaviest cell; chi says it of coordinates.
func (e Experiment) grid(b box, chi func(x []float64) float64) (weights [][]float64, misfit float64) {
	n, total := len(e.Properties), 1
	for range n {
		total *= cells
	}
	x, logs, heaviest := make([]float64, n), make([]float64, total), math.Inf(-1)
	for c := range total {
		for i, rest := 0, c; i < n; i, rest = i+1, rest/cells {
			times := b.cell(i, rest%cells)
			x[i] = e.Properties[i].coordinate(times)
			logs[c] += math.Log(e.Properties[i].likely(times))
		}
		m := chi(x)
		if logs[c] -= m / 2; logs[c] > heaviest {
			heaviest, misfit = logs[c], m
		}
	}
	for range n {
		weights = append(weights, make([]float64, cells))
	}
	for c, log := range logs {
		w := math.Exp(log - heaviest)
		for i, rest := 0, c; i < n; i, rest = i+1, rest/cells {
			weights[i][rest%cells] += w
		}
	}
	return weights, misfit
}

// cell is the multiple of property i in the middle of its k-th cell.
func (b box) cell(i, k int) float64 { return b.edge(i, float64(k)+0.5) }

// edge is the multiple of property i so many cells from its least.
func (b box) edge(i int, k float64) float64 {
	return b.least[i] + (b.most[i]-b.least[i])*k/cells
}

// at is the multiple of property i below which a share of the weight lies.
func (b box) at(i int, weights []float64, share float64) float64 {
	left := share * floats.Sum(weights)
	for k, w := range weights {
		if left <= w && w > 0 {
			return b.edge(i, float64(k)+left/w)
		}
		left -= w
	}
	return b.most[i]
}

// around is the part of the box whose cells have weight.
func (b box) around(weights [][]float64) box {
	out := box{slices.Clone(b.least), slices.Clone(b.most)}
	for i, w := range weights {
		least := dust * slices.Max(w)
		first, last := slices.IndexFunc(w, func(v float64) bool { return v > least }), cells-1
		for w[last] <= least {
			last--
		}
		out.least[i], out.most[i] = b.edge(i, float64(max(first-1, 0))), b.edge(i, float64(min(last+2, cells)))
	}
	return out
}

// allowed is the χ² of n figures that chance exceeds once in 20 times.
func allowed(n int) float64 { return distuv.ChiSquared{K: float64(n)}.Quantile(0.95) }
