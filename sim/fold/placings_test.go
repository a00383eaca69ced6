package fold

import (
	"math"
	"testing"
)

func TestModes(t *testing.T) {
	for _, tt := range []struct {
		counts []int
		mode   int
		share  float64
	}{
		{nil, 0, 0},
		{[]int{3}, 3, 1},
		{[]int{2, 1, 2, 2, 1}, 2, 0.6},
		{[]int{2, 1, 1, 2}, 1, 0.5}, // tie: the lower
		{[]int{4, 3, 2, 1}, 1, 0.25},
		{[]int{0, 0, 5}, 0, 2. / 3},
		{[]int{5, 5, 0}, 5, 2. / 3},
	} {
		in := append([]int(nil), tt.counts...)
		mode, share := Modes(in)
		if mode != tt.mode || share != tt.share {
			t.Errorf("Modes(%v) = %d, %g; want %d, %g", tt.counts, mode, share, tt.mode, tt.share)
		}
		for i := range in {
			if in[i] != tt.counts[i] {
				t.Fatalf("Modes changed its argument to %v, want %v", in, tt.counts)
			}
		}
	}
}

func TestSpread(t *testing.T) {
	for _, tt := range []struct {
		v    []float64
		want float64
	}{
		{nil, 0}, {[]float64{7}, 0}, {[]float64{1, 1, 1}, 0},
		{[]float64{1, 3}, math.Sqrt2},
		{[]float64{2, 4, 4, 4, 5, 5, 7, 9}, math.Sqrt(32. / 7)},
	} {
		if got := Spread(tt.v); !near(got, tt.want, 1e-15) {
			t.Errorf("Spread(%v) = %g, want %g", tt.v, got, tt.want)
		}
	}
}
