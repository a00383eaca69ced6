// Package stats says what a handful of placings tell: their mean and spread,
// how often each count came, and whether a difference between two cuts stands
// out of the scatter. A value that is NaN stands for a placing that gave none.
// Start at Compare.
package stats

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Difference is what paired placings say of two cuts.
type Difference struct {
	Pairs int     // placings that both cuts have
	Mean  float64 // of second less first
	Error float64 // standard error of Mean; 0 for fewer than two pairs
	Limit float64 // Mean must be further from zero than this; +Inf: nothing can be told
	Clear bool    // it is
}

// fewest is the least number of pairs from which anything is claimed: two
// hands that happen to agree are no scatter.
const fewest = 3

// chance is how often a sheet without any true difference may claim one.
const chance = 0.05

// Compare tells whether second differs from first by more than the scatter.
// The k-th values of both come from the same hand, so what the hand does to
// both falls out: the paired t-test of Student (Biometrika 6, 1908), two-sided.
// of is how many comparisons stand on the same sheet; each is held to
// 1 − 0.05/of (Bonferroni), so that a sheet of many lines is not trusted more
// than one of few.
func Compare(first, second []float64, of int) Difference {
	if len(first) != len(second) {
		panic("stats: first and second differ in length")
	}
	var d []float64
	for k := range first {
		if x := second[k] - first[k]; !math.IsNaN(x) {
			d = append(d, x)
		}
	}
	out := Difference{Pairs: len(d), Limit: math.Inf(1)}
	out.Mean, out.Error = Summary(d)
	out.Error /= math.Sqrt(float64(max(len(d), 1)))
	if len(d) < fewest {
		return out
	}
	out.Limit = Student(len(d)-1, of) * out.Error
	out.Clear = math.Abs(out.Mean) > out.Limit
	return out
}

// Student returns how many standard errors a mean of n + 1 values must lie from
// zero to stand out, with of comparisons on the sheet.
func Student(n, of int) float64 {
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n)}
	return t.Quantile(1 - chance/float64(2*max(of, 1)))
}

// Summary returns mean and sample standard deviation (n − 1) of the values that
// are there; NaN, 0 for none, and no deviation for one.
func Summary(v []float64) (mean, deviation float64) {
	v = present(v)
	if len(v) == 0 {
		return math.NaN(), 0
	}
	if len(v) == 1 {
		return v[0], 0
	}
	return stat.MeanStdDev(v, nil)
}

// present returns the values that are not NaN.
func present(v []float64) []float64 {
	var out []float64
	for _, x := range v {
		if !math.IsNaN(x) {
			out = append(out, x)
		}
	}
	return out
}
