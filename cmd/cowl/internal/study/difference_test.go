package study

import (
	"math"
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
