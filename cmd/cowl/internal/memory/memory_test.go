package memory

import (
	"math"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// The demo has 3916 points on 8 mm and 26,356 on 3 mm, and took 56 and 218 MB
// (DEVELOPERS.md, cowl bench): the estimate is no less, and not three times as much.
func TestEstimate(t *testing.T) {
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct{ spacing, points, memory float64 }{{0.012, 1808, 37e6}, {0.008, 3916, 56e6},
		{0.005, 9681, 122e6}, {0.003, 26356, 218e6}} {
		points := Points(p, q.spacing)
		if math.Abs(points/q.points-1) > 0.15 {
			t.Errorf("Points on %g m = %.0f, want %.0f ± 15 %%", q.spacing, points, q.points)
		}
		if got := estimate(points, 1, 2); got < q.memory || got > 3*q.memory {
			t.Errorf("estimate on %g m = %.0f MB, want %.0f to three times that", q.spacing, got/1e6, q.memory/1e6)
		}
	}
}
