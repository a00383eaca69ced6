package window

import (
	"math"
	"testing"
)

// Of a residual that falls as exp(−t/τ), with swings, the time to rest is told from its
// closed form, τ ln(r/0.001); a change of the lattice begins anew, and cloth that does not
// come nearer to rest has no time left to tell.
func TestEbb(t *testing.T) {
	for _, c := range []struct {
		tau, seen float64
		halvings  int
		want, off float64
	}{
		{5, 10, 0, 5*math.Log(0.1/1e-3) - 10, 1.5},
		{20, 60, 0, 20*math.Log(0.1/1e-3) - 60, 3},
		{40, 20, 0, 40*math.Log(0.1/1e-3) - 20, 30}, // half an e-fold was seen
		{6, 6, 1, 8 * 6 * math.Log(0.3/1e-3), 30},   // it is below what the finer lattice waits for
		{20, 40, 0, 20*math.Log(0.1/1e-3) - 40, 3},
		{60, 200, 0, 60*math.Log(0.1/1e-3) - 200, 6},
	} {
		var e ebb
		for at := 0.0; at <= c.seen; at += 0.05 {
			e.see(at, 1000, 0.1*math.Exp(-at/c.tau)*(1+0.3*math.Sin(7*at)))
		}
		if got, ok := e.left(c.halvings); !ok || math.Abs(got-c.want) > c.off {
			t.Errorf("τ = %g s, %g s seen, %d finer to come: %.1f s left, %t, want %.1f ± %g", c.tau, c.seen, c.halvings, got,
				ok, c.want, c.off)
		}
		e.see(c.seen+1, 4000, 0.2)
		if got, ok := e.left(0); ok {
			t.Errorf("on a lattice that it has just begun on, %.1f s are left, want none told", got)
		}
	}
	var e ebb
	for at := 0.0; at < 30; at += 0.1 {
		e.see(at, 1000, 0.01*(1+0.5*math.Sin(at)))
	}
	if got, ok := e.left(0); ok && got < 600 {
		t.Errorf("cloth that swings about one residual has %.0f s left, want none told", got)
	}
}

// Half a square metre on 8 mm has some 7800 points, on 4 mm four times as many.
func TestHalvingsLeft(t *testing.T) {
	for _, c := range []struct {
		points  int
		spacing float64
		want    int
	}{{7812, 0.008, 0}, {8100, 0.008, 0}, {7812, 0.004, 1}, {7812, 0.002, 2}, {0, 0.004, 0}, {7812, 0.020, 0}} {
		if got := halvingsLeft(c.points, 0.5, c.spacing); got != c.want {
			t.Errorf("halvingsLeft(%d, 0.5, %g) = %d, want %d", c.points, c.spacing, got, c.want)
		}
	}
}

func TestLeftWords(t *testing.T) {
	for s, want := range map[float64]string{3: "a few seconds left", 41: "about 50 s left", 100: "about 2 min left",
		3000: "about 50 min left", 9000: "about 3 h left"} {
		if got := leftWords(s); got != want {
			t.Errorf("leftWords(%g) = %q, want %q", s, got, want)
		}
	}
}
