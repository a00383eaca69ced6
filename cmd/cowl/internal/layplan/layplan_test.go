package layplan

import (
	"errors"
	"math"
	"slices"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/marker"
	"cowl/mesh/truing"
)

// demoPlan lays the front of the demo, cut with 1 cm all round.
func demoPlan(t *testing.T) *Plan {
	t.Helper()
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	front, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	suit := truing.Suit{Front: front, Allow: truing.Allowances{Seam: 0.01, Side: 0.01}}
	pieces, err := suit.CowlPapers()
	if err != nil {
		t.Fatal(err)
	}
	p, err := Of(s, pieces, front.Grain, marker.Cloth{Seam: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is shown is the width that takes least cloth of those it fits on. A narrower cloth
// says why it does not fit, and in the figures there is no length; a wide one carries it again.
func TestPlan(t *testing.T) {
	p := demoPlan(t)
	fitting := slices.DeleteFunc(slices.Clone(p.Widths), func(c marker.Choice) bool { return c.Err != nil })
	if p.Err != nil || len(fitting) == 0 {
		t.Fatalf("the demo fits on %d widths, shown: %v", len(fitting), p.Err)
	}
	for _, c := range fitting {
		if least := p.Nominal * p.Shown.Length; c.Nominal*c.Marker.Length < least-1e-9 {
			t.Errorf("%.2f m wide it takes %.4f m², shown are %.4f m²", c.Nominal, c.Nominal*c.Marker.Length, least)
		}
	}
	if err := p.On(0, marker.Cloth{Width: 0.3, Seam: 0.01}); err != nil || !errors.Is(p.Err, marker.ErrTooWide) {
		t.Errorf("on 0.3 m: %v, %v, want that it is too wide for it", err, p.Err)
	}
	if f := p.Figures(); f.Fits || f.Why == "" || f.Length != 0 || f.Usable != 300 {
		t.Errorf("figures on 0.3 m: %+v, want no length and why", f)
	}
	if err := p.On(2, marker.Cloth{Width: 1.97, Seam: 0.01}); err != nil || p.Err != nil {
		t.Errorf("on 1.97 m: %v, %v, want that it fits", err, p.Err)
	}
	if f := p.Figures(); !f.Fits || f.Length <= 0 || f.Width != 2000 {
		t.Errorf("figures on 1.97 m: %+v, want a length", f)
	}
}

// Every 15° is looked at and the style's own grain first, each once: a grain and its mirror
// image lie alike.
func TestSweep(t *testing.T) {
	for _, q := range []struct {
		own float64 // degrees
		n   int
	}{{0, 7}, {45, 7}, {-45, 7}, {22.5, 8}, {90, 7}} {
		got := sweep(q.own * math.Pi / 180)
		if len(got) != q.n || got[0] != q.own*math.Pi/180 {
			t.Errorf("sweep of %g°: %d grains, the first %g, want %d", q.own, len(got), got[0], q.n)
		}
	}
}
