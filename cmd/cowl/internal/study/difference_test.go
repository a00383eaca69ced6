package study

import (
	"math"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/study/stats"
)

// A difference that is not clear tells how large it is and what hides it, so that a
// smaller clear one beside it does not look like a mistake; what rounds to nothing is
// never a step.
func TestDifferenceText(t *testing.T) {
	for _, q := range []struct {
		d    stats.Difference
		want string
	}{
		{stats.Difference{Mean: 12, Limit: 5, Clear: true}, "+1.2 cm"},
		{stats.Difference{Mean: -12, Limit: 5, Clear: true}, "−1.2 cm"},
		{stats.Difference{Mean: 21, Limit: 30}, "no clear difference: +2.1 cm, scatter 3.0 cm"},
		{stats.Difference{Mean: 0.3, Limit: 0.1, Clear: true}, "differs by less than is shown"},
		{stats.Difference{Mean: 20, Limit: math.Inf(1)}, tooFew},
	} {
		if got := (difference{Figure: dropFigure, Difference: q.d}).text(); got != q.want {
			t.Errorf("%+v: %q, want %q", q.d, got, q.want)
		}
	}
}

// With too few placings to tell, that is said, and not that nothing differs.
func TestDifferingSaysWhatItCanTell(t *testing.T) {
	of := func(d stats.Difference) []difference {
		return []difference{{Figure: dropFigure, First: "a", Second: "b", Difference: d}}
	}
	for _, q := range []struct {
		name       string
		ds         []difference
		want, none string
	}{
		{"two placings", of(stats.Difference{Mean: 20, Limit: math.Inf(1)}), "Too few placings", "clear"},
		{"within the scatter", of(stats.Difference{Mean: 20, Limit: 30}), "No clear difference from a in", "Too few"},
		{"clear", of(stats.Difference{Mean: 20, Limit: 5, Clear: true}), "Edge drop, against a: b +2.0 cm.", "Too few"},
	} {
		got := strings.Join(differing("a", q.ds), "\n")
		if !strings.Contains(got, q.want) || strings.Contains(got, q.none) {
			t.Errorf("%s: %q, want %q and not %q", q.name, got, q.want, q.none)
		}
	}
}
