package fold

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestMatch(t *testing.T) {
	for _, tt := range []struct {
		name     string
		from, to []float64
		want     []int
	}{
		{"nothing", nil, nil, nil},
		{"nothing left", []float64{1, 5}, nil, []int{-1, -1}},
		{"from nothing", nil, []float64{1, 5}, nil},
		{"all still", []float64{1, 5, 9}, []float64{1, 5, 9}, []int{0, 1, 2}},
		{"all ride", []float64{10, 50}, []float64{14, 54}, []int{0, 1}},
		{"at the bound", []float64{10}, []float64{20}, []int{0}},
		{"past the bound", []float64{10}, []float64{20.1}, []int{-1}},
		{"one goes", []float64{10, 18}, []float64{17}, []int{-1, 0}},
		{"two into one, as near", []float64{10, 18}, []float64{14}, []int{0, -1}},
		{"one comes between", []float64{10, 30}, []float64{11, 20, 29}, []int{0, 2}},
		{"one goes, one comes beyond", []float64{0, 9}, []float64{9, 18}, []int{-1, 0}},
		{"the nearest of three", []float64{10}, []float64{4, 11, 15}, []int{1}},
		{"no crossing over", []float64{10, 12}, []float64{5, 11}, []int{0, 1}}, // 10 is nearer to 11
	} {
		got := match(tt.from, tt.to, 10)
		if d := cmp.Diff(tt.want, got, cmpopts.EquateEmpty()); d != "" {
			t.Errorf("%s: match(%v, %v, 10) −want +got:\n%s", tt.name, tt.from, tt.to, d)
		}
	}
}

// Of all pairings that keep the order, tried one by one, none is cheaper.
func TestMatchByTrial(t *testing.T) {
	const bound = 20
	places := rapid.Custom(func(t *rapid.T) []float64 {
		gaps := rapid.SliceOfN(rapid.IntRange(1, 30), 0, 5).Draw(t, "gaps")
		at, sum := make([]float64, len(gaps)), 0
		for i, g := range gaps {
			sum += g
			at[i] = float64(sum)
		}
		return at
	})
	rapid.Check(t, func(t *rapid.T) {
		from, to := places.Draw(t, "from"), places.Draw(t, "to")
		got, last := 0.0, -1
		for i, j := range match(from, to, bound) {
			if j < 0 {
				got += bound
				continue
			}
			if j <= last || math.Abs(to[j]-from[i]) > bound {
				t.Fatalf("match(%v, %v): %d to %d out of order or too far", from, to, i, j)
			}
			got, last = got+math.Abs(to[j]-from[i]), j
		}
		if want := cheapest(from, to, bound); got != want {
			t.Errorf("match(%v, %v) costs %g, want %g", from, to, got, want)
		}
	})
}

// cheapest tries every pairing for the first of from.
func cheapest(from, to []float64, bound float64) float64 {
	if len(from) == 0 {
		return 0
	}
	least := bound + cheapest(from[1:], to, bound)
	for j := range to {
		if d := math.Abs(to[j] - from[0]); d <= bound {
			least = min(least, d+cheapest(from[1:], to[j+1:], bound))
		}
	}
	return least
}
