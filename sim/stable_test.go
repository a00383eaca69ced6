package sim

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// A unit step of the leapfrog is stable where no mode of K·v = λ·M·v has λ above 4 (Courant,
// Friedrichs & Lewy, Math. Ann. 100 (1928) 32, for ω = √λ; from memory). Here two crossings
// with little cloth at the rim turn down to the yarn behind them, each towards the
// other's foot, until they have changed places: the mean edge between shrinks to nothing, and
// the shear grows stiff beyond all bounds.
func TestStableStep(t *testing.T) {
	const h = 0.008
	stiff := Stiffness{Weight: 0.4, BendWarp: 4e-5, BendWeft: 4e-5, Twist: 2e-5, TensileWarp: 6000, TensileWeft: 6000,
		Shear: 300}
	c := NewCloth(cut(t, rectangle(2.4*h, 3.2*h, 0), h, 0), stiff)
	s := &System{Cloth: c, Alone: true}
	k := slices.IndexFunc(c.cells, func(q cell) bool { return math.Abs(q.midU-0.5) < 0.1 && q.midV < 0.2 })
	thin := c.cells[k]
	for _, deg := range []float64{90, 60, 30, 15, 5} {
		x := make([]r3.Vec, len(c.Lattice.Rest))
		for i, q := range c.Lattice.Rest {
			x[i] = r3.Vec{X: q.X, Y: q.Y}
		}
		sin, cos := math.Sincos(deg * math.Pi / 180)
		long := r3.Sub(x[thin.u], x[thin.o])
		turn := r3.Add(r3.Scale(cos, long), r3.Scale(sin, r3.Sub(x[thin.v], x[thin.o])))
		x[thin.v], x[thin.d] = r3.Add(x[thin.o], turn), r3.Sub(x[thin.u], r3.Scale(0.8, turn))
		if worst := highest(s, x); worst > 4 {
			t.Errorf("turned down to %g°: the highest mode of a unit step is %.3g, want 4 at most", deg, worst)
		}
	}
}

// highest returns the largest λ of K·v = λ·M·v with the nodes at x, where M are the masses of
// even steps and K is the change of the forces.
func highest(s *System, x []r3.Vec) float64 {
	w := NewStepper(s, NewState(s, x))
	w.Even = true
	const by = 1e-9 // m
	n := 3 * len(x)
	force := func(k int, by float64) ([]float64, []float64) {
		at := axis(&w.state.Pos[k/3], k%3)
		*at += by
		w.loadHalf(0)
		w.loadHalf(1)
		w.balance(0)
		w.balance(1)
		*at -= by
		f, m := make([]float64, n), make([]float64, n)
		for i := range n {
			f[i], m[i] = *axis(&w.sum[0][i/3].Force, i%3), w.mass[i/3].along+w.sum[0][i/3].Mass
		}
		return f, m
	}
	_, m := force(0, 0)
	k := mat.NewSymDense(n, nil)
	for j := range n {
		up, _ := force(j, by)
		down, _ := force(j, -by)
		for i := range j + 1 {
			k.SetSym(i, j, (down[i]-up[i])/(2*by)/math.Sqrt(m[i]*m[j]))
		}
	}
	var e mat.EigenSym
	e.Factorize(k, false)
	values := e.Values(nil)
	return values[n-1]
}

// axis returns the k-th coordinate.
func axis(v *r3.Vec, k int) *float64 { return [3]*float64{&v.X, &v.Y, &v.Z}[k] }
