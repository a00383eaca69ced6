package fold

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestCrests(t *testing.T) {
	for _, tt := range []struct {
		name string
		h    []float64
		open bool
		want []crest
	}{
		{"empty", nil, false, nil},
		{"one", []float64{3}, true, nil},
		{"level", []float64{1, 1, 1}, true, nil},
		{"rising", []float64{0, 1, 2}, true, nil},
		{"falling, plain end", []float64{2, 1, 0}, false, nil},
		{"falling, open end", []float64{2, 1, 0}, true, []crest{{0, 2}}},
		{"single peak takes the higher foot", []float64{1, 5, 0}, false, []crest{{1, 4}}},
		{"single peak, open end", []float64{1, 5, 0}, true, []crest{{1, 5}}},
		{"shoulder on a high peak", []float64{0, 9, 4, 6, 1}, false, []crest{{1, 8}, {3, 2}}},
		{"three, middle highest", []float64{0, 4, 2, 8, 3, 5, 0}, false, []crest{{1, 2}, {3, 8}, {5, 2}}},
		{"equal peaks are not higher ground", []float64{0, 5, 2, 5, 0}, false, []crest{{1, 5}, {3, 5}}},
		{"level top", []float64{0, 3, 3, 3, 1}, false, []crest{{2, 2}}},
		{"ledge is no peak", []float64{0, 3, 3, 5, 0}, false, []crest{{3, 5}}},
		{"level top at an open end", []float64{4, 4, 1, 2, 0}, true, []crest{{0, 4}, {3, 1}}},
		{"open end below a higher peak", []float64{4, 1, 7, 0}, true, []crest{{0, 3}, {2, 7}}},
		{"rise to the last is no peak", []float64{0, 3, 1, 9}, false, []crest{{1, 2}}},
		{"below zero", []float64{-9, -2, -5}, false, []crest{{1, 3}}},
	} {
		got := crests(tt.h, tt.open)
		if d := cmp.Diff(tt.want, got, cmp.AllowUnexported(crest{}), cmpopts.EquateEmpty()); d != "" {
			t.Errorf("%s: crests(%v, %v) −want +got:\n%s", tt.name, tt.h, tt.open, d)
		}
	}
}

// A fold has no up side down CF: read backwards, the crests are the same.
func TestCrestsReversed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.SliceOfNDistinct(rapid.Float64Range(-1, 1), 1, 40, rapid.ID).Draw(t, "h")
		back := make([]float64, len(h))
		for i := range h {
			back[len(h)-1-i] = h[i]
		}
		a, b := crests(h, false), crests(back, false)
		if len(a) != len(b) {
			t.Fatalf("crests: %d forwards, %d backwards", len(a), len(b))
		}
		for i, c := range a {
			m := b[len(b)-1-i]
			if m.index != len(h)-1-c.index || m.prominence != c.prominence {
				t.Errorf("crest %v backwards %v, want mirrored", c, m)
			}
		}
	})
}

// Flooding is another road to prominence: a summit has more than p of it if,
// with the water p below the summit, its island holds neither an end of the
// sequence nor anything higher.
func TestCrestsByFlooding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.SliceOfNDistinct(rapid.IntRange(0, 1000), 3, 30, rapid.ID).Draw(t, "h")
		p := rapid.IntRange(1, 500).Draw(t, "p")
		f := make([]float64, len(h))
		for i, v := range h {
			f[i] = float64(v)
		}
		got := 0
		for _, c := range crests(f, false) {
			if c.prominence > float64(p) {
				got++
			}
		}
		if want := summitsOver(h, p); got != want {
			t.Errorf("crests(%v): %d above prominence %d, flooding finds %d", h, got, p, want)
		}
	})
}

// summitsOver counts the summits of prominence > p by flooding.
func summitsOver(h []int, p int) int {
	n := 0
	for i := range h {
		lo, hi := i, i
		for lo >= 0 && h[lo] >= h[i]-p {
			lo--
		}
		for hi < len(h) && h[hi] >= h[i]-p {
			hi++
		}
		top := lo >= 0 && hi < len(h)
		for k := max(lo, 0); k < hi; k++ {
			top = top && h[k] <= h[i]
		}
		if top {
			n++
		}
	}
	return n
}
