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
// form says, at any turn of the lattice.
func TestDiscClamp(t *testing.T) {
	d := DiscSetup{Specimen: 0.30, Disc: 0.18}
	s := isotropic(1e-5, 1e-5, 50)
	want := ringSag(s.Weight*sim.Gravity, s.BendWarp, d.Disc/2, d.Specimen/2)
	for _, c := range []struct{ spacing, grain, tol float64 }{{0.006, 0, 0.04}, {0.006, 45, 0.04}, {0.006, 22.5, 0.04}, {0.003, 0, 0.02}} {
		d.Grain = rad(c.grain)
		k, err := d.lay(s, c.spacing)
		if err != nil {
			t.Fatal(err)
		}
		var r Run
		k.relax(context.Background(), &r, sim.Settings{Residual: 1e-3})
		got := 0.0
		for _, p := range d.circle() {
			got -= k.at(r2.Scale(0.999, p)).Y / float64(len(d.circle()))
		}
		t.Logf("%g mm at %g°: rim sags %.4f µm, closed form %.4f (%+.1f %%), %d steps", c.spacing*1000, c.grain, got*1e6, want*1e6, 100*(got/want-1), r.Steps)
		if r.Status != sim.Settled || math.Abs(got/want-1) > c.tol {
			t.Errorf("ring at %g mm, %g°: rim sags %.4f µm (%s), want %.4f ± %g %%", c.spacing*1000, c.grain, got*1e6, r.Status, want*1e6, c.tol*100)
		}
	}
}
