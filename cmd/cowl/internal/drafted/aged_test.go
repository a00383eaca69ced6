package drafted

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// On the true bias all of the band is told, on the straight grain nothing, at 22.5° half:
// sin²(45°). The hem grows by the share of the length above it. The edge is a catenary of
// half span a and half length l: by the series of sinh t/t = l/a and (cosh t − 1)/t it drops
// 0.2786 a where l is 1.05 a and 0.4062 a where it is 1.1025 a. It says where it is from.
func TestAged(t *testing.T) {
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct{ grain, percent float64 }{{0, 0}, {math.Pi / 2, 0}, {math.Pi / 4, 5}, {-math.Pi / 4, 5},
		{math.Pi / 8, 2.5}} {
		p.Grain = q.grain
		a := AgedOf(p)
		if (a != nil) != (q.percent > 0) || a != nil && math.Abs(a.Growth[1]-q.percent) > 1e-9 {
			t.Errorf("grain %.3f: %+v, want growth up to %g %%", q.grain, a, q.percent)
		}
	}
	p.Grain, p.Hem = math.Pi/4, 0.2
	a := AgedOf(p)
	if want := 0.05 * (p.FoldY - p.WaistY() + 0.2) * 1000; math.Abs(a.Hem[1]-want) > 1e-9 || a.Hem[0] != 0 {
		t.Errorf("hem %v mm, want 0 to %g", a.Hem, want)
	}
	half := p.Block.CowlPoint(p.CowlPoint).X
	p.HalfEdge = 1.05 * half
	if a, want := AgedOf(p), 1000*half*(0.4062-0.2786); math.Abs(a.Edge[1]/want-1) > 0.005 {
		t.Errorf("edge drops up to %.1f mm more, want %.1f ± 0.5 %%", a.Edge[1], want)
	}
	var said string
	row := func(_, format string, args ...any) { said += fmt.Sprintf(format+"\n", args...) }
	AgedOf(p).Report(row)
	for _, words := range []string{"NOT COMPUTED", "common practice, no published source, from memory, not computed"} {
		if !strings.Contains(said, words) {
			t.Errorf("said %q, want %q in it", said, words)
		}
	}
	p.StayEdge = true
	if a := AgedOf(p); a.Edge != [2]float64{} || a.Hem[1] == 0 {
		t.Errorf("a taped edge: edge %v, hem %v, want none and the hem as before", a.Edge, a.Hem)
	}
}
