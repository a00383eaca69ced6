package lab

import (
	"context"
	"math"
	"testing"

	"cowl/sim"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"
)

// ringSag returns how far the rim of a level ring of plate with ν = 0, clamped
// at radius a and free at radius b, sags under the load q per area when it is
// stiff: w = q·r⁴/64B + c0 + c1·ln r + c2·r² + c3·r²·ln r with w = w' = 0 at a and
// neither moment nor shear at b (S. Timoshenko, S. Woinowsky-Krieger, "Theory of
// Plates and Shells", 1959, §17).
func ringSag(q, b, inner, outer float64) float64 {
	a, o, k := inner, outer, q/(64*b)
	m := mat.NewDense(4, 4, []float64{
		1, math.Log(a), a * a, a * a * math.Log(a),
		0, 1 / a, 2 * a, 2*a*math.Log(a) + a,
		0, -1 / (o * o), 2, 2*math.Log(o) + 3,
		0, 0, 0, 4 / o,
	})
	rhs := mat.NewVecDense(4, []float64{-k * math.Pow(a, 4), -4 * k * math.Pow(a, 3), -12 * k * o * o, -32 * k * o})
	var c mat.VecDense
	if err := c.SolveVec(m, rhs); err != nil {
		panic(err)
	}
	return k*math.Pow(o, 4) + c.AtVec(0) + c.AtVec(1)*math.Log(o) + c.AtVec(2)*o*o + c.AtVec(3)*o*o*math.Log(o)
}

// The plates of the meter clamp where they end: a stiff ring sags as the closed
// form says.
func TestDiscClamp(t *testing.T) {
	d := DiscSetup{Specimen: 0.30, Disc: 0.18}
	s := isotropic(1e-5, 1e-5, 50)
	want := ringSag(s.Weight*sim.Gravity, s.BendWarp, d.Disc/2, d.Specimen/2)
	for _, c := range []struct{ spacing, tol float64 }{{0.006, 0.02}, {0.005, 0.02}, {0.0045, 0.02}} {
		if testing.Short() && c.spacing < 0.005 {
			continue
		}
		k, err := d.setUp(s, c.spacing)
		if err != nil {
			t.Fatal(err)
		}
		var r Run
		k.relax(context.Background(), &r, sim.Settings{Residual: 1e-3})
		got := 0.0
		for _, p := range d.circle() {
			got -= k.at(r2.Scale(0.999, p)).Y / float64(len(d.circle()))
		}
		t.Logf("%g mm: rim sags %.4f µm, closed form %.4f (%+.1f %%), %d steps", c.spacing*1000, got*1e6, want*1e6,
			100*(got/want-1), r.Steps)
		if r.Status != sim.Settled || math.Abs(got/want-1) > c.tol {
			t.Errorf("ring at %g mm: rim sags %.4f µm (%s), want %.4f ± %g %%", c.spacing*1000, got*1e6, r.Status, want*1e6,
				c.tol*100)
		}
	}
}

// quick is a coarse meter for cloths that are stiff enough for it.
var quick = DiscSetup{Spacing: 0.006, Placings: 1}

func drapedAs(t *testing.T, s sim.Stiffness, d DiscSetup) DiscResult {
	t.Helper()
	r, err := Disc(context.Background(), s, d)
	if err != nil || r.Status != sim.Settled {
		t.Fatalf("Disc = %+v, %v", r.Run, err)
	}
	t.Logf("DC %.1f %% ± %.1f, nodes %v, %d steps, %.1f s", r.Coefficient*100, r.Spread*100, r.Counts, r.Steps, r.Seconds)
	return r
}

// A board stays out, a limp cloth falls; the limper it is the more nodes.
func TestDisc(t *testing.T) {
	if testing.Short() {
		t.Skip("three drapes")
	}
	var dc []float64
	var nodes []int
	for _, b := range []float64{2e-3, 4e-5, 4e-6} {
		r := drapedAs(t, isotropic(0.15, b, 100), quick)
		dc, nodes = append(dc, r.Coefficient), append(nodes, r.Count)
	}
	if dc[0] < 0.97 || nodes[0] != 0 {
		t.Errorf("a board drapes to %.1f %% with %d nodes, want 97 %% or more and none", dc[0]*100, nodes[0])
	}
	if !(dc[1] < dc[0]-0.1 && dc[2] < dc[1]-0.1 && dc[2] < 0.45) || !(nodes[1] > 0 && nodes[2] > nodes[1]) {
		t.Errorf("drape coefficients %.3f, nodes %d from stiff to limp, want them to fall below 0.45 and to rise", dc, nodes)
	}
}

// A board has one state of rest, however it comes to it.
func TestDiscFalls(t *testing.T) {
	if testing.Short() {
		t.Skip("three drapes")
	}
	d := quick
	first := drapedAs(t, isotropic(0.15, 2e-4, 100), d).Coefficient
	for _, d.Fall = range []Fall{Dropped, Slow} {
		if got := drapedAs(t, isotropic(0.15, 2e-4, 100), d).Coefficient; math.Abs(got-first) > 0.003 {
			t.Errorf("DC of a board %s = %.2f %%, want the %.2f %% of one that is lowered ± 0.3", d.Fall, got*100, first*100)
		}
	}
}

// An isotropic cloth does not know how its lattice lies.
func TestDiscAtAnyGrain(t *testing.T) {
	if testing.Short() {
		t.Skip("four drapes")
	}
	s := isotropic(0.15, 2e-5, 100)
	d := quick
	d.Placings = 3
	first := drapedAs(t, s, d)
	d.Grain = rad(45)
	if got := drapedAs(t, s, d); math.Abs(got.Coefficient-first.Coefficient) > 0.02 {
		t.Errorf("DC %.2f %% at 45°, want the %.2f %% at 0° ± 2", got.Coefficient*100, first.Coefficient*100)
	}
}

// A shaken stand lets a cloth without friction come back to the rest of a board; half
// the spacing reads the same of it, and has four times the nodes.
func TestDiscShakenAndHalved(t *testing.T) {
	if testing.Short() {
		t.Skip("two drapes")
	}
	d := quick
	first := drapedAs(t, isotropic(0.15, 2e-4, 100), d)
	d.Shake, d.Fine = 0.2, true
	got := drapedAs(t, isotropic(0.15, 2e-4, 100), d)
	if math.Abs(got.Coefficient-first.Coefficient) > 0.003 || got.Steps <= first.Steps {
		t.Errorf("shaken DC %.2f %% in %d steps, want the %.2f %% of %d steps ± 0.3", got.Coefficient*100, got.Steps,
			first.Coefficient*100, first.Steps)
	}
	if h := got.Halved; h == nil || len(h.Nodes) > 0 || h.Spacing != 0.003 ||
		math.Abs(h.Coefficient-got.Coefficient) > 0.01 {
		t.Errorf("on half the spacing %+v, want the %.1f %% ± 1 of 6 mm", h, got.Coefficient*100)
	}
	if first.Halved != nil {
		t.Error("halved without being asked")
	}
}

func TestDiscRefuses(t *testing.T) {
	for _, d := range []DiscSetup{{Specimen: 1}, {Disc: 0.29}, {Spacing: 0.05}, {Placings: 100}, {Friction: 3},
		{Gap: 0.1}, {Shake: 1}} {
		if _, err := Disc(context.Background(), isotropic(0.15, 1e-5, 50), d); err == nil {
			t.Errorf("Disc(%+v): no error", d)
		}
	}
}

func TestDiscSum(t *testing.T) {
	draped := func(dc float64, nodes int) Draped { return Draped{Coefficient: dc, Nodes: make([]float64, nodes)} }
	r := DiscResult{Each: []Draped{draped(0.40, 7), draped(0.44, 6), draped(0.42, 6), draped(0.50, 7), draped(0.34, 8)}}
	r.sum()
	if math.Abs(r.Coefficient-0.45) > 1e-12 || math.Abs(r.Mean-0.42) > 1e-12 ||
		math.Abs(r.Spread-math.Sqrt(0.0136/4)) > 1e-9 || r.Count != 7 || r.Counts[6] != 2 || r.Typical != 0 {
		t.Errorf("sum = %+v, want 0.45 at 7 nodes (of 6 and 7 nearer to the mean of 6.8), in the mean 0.42 ± 0.058, "+
			"typical the first", r)
	}
}
