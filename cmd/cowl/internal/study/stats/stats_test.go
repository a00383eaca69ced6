package stats

import (
	"math"
	"testing"
)

var nan = math.NaN()

// The hours of sleep gained by ten patients under two drugs: Student, "The
// probable error of a mean", Biometrika 6 (1908), section IX. Mean difference
// 1.58, its standard deviation 1.23 (n − 1), t = 4.06 on 9 degrees of freedom;
// the 95 % interval is 0.7001–2.4599 (the paired t-test on this data in the
// manual of the language R, data set "sleep").
func TestCompareStudent(t *testing.T) {
	first := []float64{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}
	second := []float64{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4}
	d := Compare(first, second, 1)
	if d.Pairs != 10 || !d.Clear {
		t.Errorf("Compare = %+v, want a clear difference of 10 pairs", d)
	}
	near(t, "mean", d.Mean, 1.58, 1e-9)
	near(t, "t", d.Mean/d.Error, 4.0621, 5e-5)
	near(t, "lower end", d.Mean-d.Limit, 0.7001142, 1e-6)
	near(t, "upper end", d.Mean+d.Limit, 2.4598858, 1e-6)
	// p = 0.002833: clear among 17 comparisons (0.05/17 = 0.00294), not among 18.
	if !Compare(first, second, 17).Clear || Compare(first, second, 18).Clear {
		t.Error("Bonferroni: want clear among 17 comparisons and not among 18")
	}
}

// Two-sided 5 % points of Student's t from the usual printed table (R. A.
// Fisher, Statistical Methods for Research Workers, 1925, table IV).
func TestStudent(t *testing.T) {
	for _, q := range []struct {
		n    int
		want float64
	}{{2, 4.303}, {4, 2.776}, {9, 2.262}, {19, 2.093}, {29, 2.045}} {
		near(t, "5 % point", Student(q.n, 1), q.want, 5e-4)
	}
	near(t, "1 % point on 4", Student(4, 5), 4.604, 5e-4) // the same table
}

func TestCompareEdges(t *testing.T) {
	for _, q := range []struct {
		name          string
		first, second []float64
		pairs         int
		clear         bool
	}{
		{"one placing", []float64{1}, []float64{9}, 1, false},
		{"two placings", []float64{1, 1}, []float64{9, 9}, 2, false},
		{"no scatter, no difference", []float64{2, 2, 2}, []float64{2, 2, 2}, 3, false},
		{"no scatter, a difference", []float64{1, 1, 1}, []float64{2, 2, 2}, 3, true},
		{"hand falls out", []float64{1, 50, 100, 30}, []float64{3, 52.1, 101.9, 32}, 4, true},
		{"scatter", []float64{1, 5, 3, 4}, []float64{4, 2, 5, 3}, 4, false},
		{"a placing missing", []float64{1, nan, 1, 1, 1}, []float64{2, 2, 2, nan, 2}, 3, true},
		{"all missing", []float64{nan, 1}, []float64{1, nan}, 0, false},
	} {
		if d := Compare(q.first, q.second, 1); d.Pairs != q.pairs || d.Clear != q.clear {
			t.Errorf("%s: Compare = %+v, want %d pairs, clear %t", q.name, d, q.pairs, q.clear)
		}
	}
}

func TestSpoken(t *testing.T) {
	for _, q := range []struct {
		v    []float64
		want string
	}{
		{nil, "no count"},
		{[]float64{nan}, "no count"},
		{[]float64{1}, "1 fold"},
		{[]float64{3, 3, nan}, "3 folds in all 2"},
		{[]float64{2, 3, 3, 4, 3}, "3 folds in 3 of 5, else 2 or 4"},
		{[]float64{2, 1}, "1 fold in 1 of 2, else 2"},
		{[]float64{0, 0}, "0 folds in all 2"},
	} {
		if got := Spoken(q.v); got != q.want {
			t.Errorf("Spoken(%v) = %q, want %q", q.v, got, q.want)
		}
	}
}

func TestBrief(t *testing.T) {
	for _, q := range []struct {
		v    []float64
		want string
	}{{nil, "–"}, {[]float64{2, 2, nan}, "2"}, {[]float64{2, 3, 3}, "3 (2 of 3)"}} {
		if got := Brief(q.v); got != q.want {
			t.Errorf("Brief(%v) = %q, want %q", q.v, got, q.want)
		}
	}
}

// 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares about it 32, so the sample
// deviation is √(32/7).
func TestSummary(t *testing.T) {
	m, s := Summary([]float64{2, 4, nan, 4, 4, 5, 5, 7, 9})
	near(t, "mean", m, 5, 1e-12)
	near(t, "deviation", s, math.Sqrt(32.0/7), 1e-12)
	if m, s := Summary(nil); !math.IsNaN(m) || s != 0 {
		t.Errorf("Summary of nothing = %g, %g, want NaN, 0", m, s)
	}
	if m, s := Summary([]float64{3}); m != 3 || s != 0 {
		t.Errorf("Summary of one = %g, %g, want 3, 0", m, s)
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.7g, want %.7g ± %g", what, got, want, within)
	}
}
