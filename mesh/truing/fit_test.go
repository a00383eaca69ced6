package truing

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// The first two sets of F. J. Anscombe, "Graphs in Statistical Analysis", The American
// Statistician 27 (1973), p. 19: both have the line y = 3.00 + 0.500 x.
func TestFit(t *testing.T) {
	x := []float64{10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5}
	first := []float64{8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68}
	second := []float64{9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74}
	var f fit
	for i := range x {
		f.add(1, x[i], r2.Vec{X: first[i], Y: second[i]})
	}
	a, b, ok := f.solve(1e-3)
	for _, q := range []struct {
		what            string
		got, want, most float64
	}{
		{"intercept of the first", a.X, 3.00, 0.005}, {"slope of the first", b.X, 0.500, 0.0005},
		{"intercept of the second", a.Y, 3.00, 0.005}, {"slope of the second", b.Y, 0.500, 0.0005},
		{"mean of the first", f.mean().X, 7.50, 0.005}, {"mean of the second", f.mean().Y, 7.50, 0.005},
	} {
		if !ok || math.Abs(q.got-q.want) > q.most {
			t.Errorf("%s = %.5f, %t, want %.3f ± %.4f", q.what, q.got, ok, q.want, q.most)
		}
	}
}

// What cannot be told is not: one place, the same place again, places on a line.
func TestFitRefuses(t *testing.T) {
	for what, at := range map[string][][2]float64{
		"nothing": {}, "one place": {{1, 0.5}}, "one place twice": {{1, 0.5}, {1, 0.5}},
		"places on a line": {{1, 2}, {2, 4}, {3, 6}}, "nothing along u and v": {{0, 0}, {0, 0}},
	} {
		var f fit
		for _, p := range at {
			f.add(p[0], p[1], r2.Vec{X: 1, Y: 2})
		}
		if a, b, ok := f.solve(1e-3); ok {
			t.Errorf("%s: solve = %v, %v, want it refused", what, a, b)
		}
	}
}
