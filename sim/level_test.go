package sim

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// rolled returns a cut piece bent round a cylinder, walked one step so that all
// masses are set.
func rolled(t *testing.T, grain float64, s Stiffness) *Stepper {
	t.Helper()
	l := cut(t, rectangle(0.09, 0.13, 0), 0.005, grain)
	sc := &System{Cloth: NewCloth(l, s)}
	pos := make([]r3.Vec, len(l.Rest))
	const r = 0.03
	for i, p := range l.Rest {
		a, b := math.Sincos(p.X / r)
		pos[i] = r3.Vec{X: r * a, Y: 1.01 * p.Y, Z: r * b}
	}
	w := NewStepper(sc, NewState(sc, pos))
	w.Step()
	return w
}

// speedup returns by how much a unit step of the elastic forces that a small
// move d calls up speeds the nodes up.
func (w *Stepper) speedup(d []r3.Vec) []r3.Vec {
	const far = 1e-9
	x := make([]r3.Vec, len(d))
	for i := range x {
		x[i] = r3.Add(w.state.Pos[i], r3.Scale(far, d[i]))
	}
	at := func(x []r3.Vec) {
		for half := range 2 {
			clear(w.sum[half])
			w.system.Cloth.elastic(half, x, w.state.Slip, w.curls[half], w.sum[half])
		}
	}
	at(w.state.Pos)
	before := [2][]r3.Vec{}
	for half := range 2 {
		for _, s := range w.sum[half] {
			before[half] = append(before[half], s.Force)
		}
	}
	at(x)
	for i := range d {
		f := r3.Add(r3.Sub(w.sum[0][i].Force, before[0][i]), r3.Sub(w.sum[1][i].Force, before[1][i]))
		w.sum[0][i].Force, w.sum[0][i].Mass = r3.Scale(-1/far, f), 0
	}
	out := make([]r3.Vec, len(d))
	for _, n := range w.levels {
		n.restrict(0, []span{{0, len(d)}}, w.sum[0])
		clear(n.got[1])
		n.solve()
	}
	for i := range out {
		out[i] = w.quicken(i)
	}
	return out
}

// A step of the leapfrog is stable where no move calls up more than four times
// itself (R. Courant, K. Friedrichs, H. Lewy 1928, for a unit step): the largest
// eigenvalue, by power iteration.
func TestStepIsStable(t *testing.T) {
	n := 0
	for _, grain := range []float64{0, 20, 45} {
		for name, s := range map[string]Stiffness{
			"bias": {Weight: 0.13, TensileWarp: 3500, TensileWeft: 1400, Shear: 23, BendWarp: 2e-6, BendWeft: 6e-7,
				Twist: 5e-7},
			"stiff": {Weight: 0.2, TensileWarp: 800, TensileWeft: 800, Shear: 400, BendWarp: 1e-4, BendWeft: 1e-4, Twist: 5e-5},
		} {
			w := rolled(t, grain, s)
			d := make([]r3.Vec, len(w.force))
			for i := range d {
				d[i] = r3.Vec{X: math.Sin(float64(7 * i)), Y: math.Cos(float64(11 * i * i)), Z: math.Sin(float64(3*i + 1))}
			}
			most := 0.0
			for range 300 {
				d = w.speedup(d)
				most = 0
				for _, v := range d {
					most += r3.Norm2(v)
				}
				most = math.Sqrt(most)
				for i := range d {
					d[i] = r3.Scale(1/most, d[i])
				}
			}
			t.Logf("grain %g°, %s: a unit step calls up %.2f times the move", grain, name, most)
			if !(most > 1 && most < 4) {
				t.Errorf("grain %g°, %s: a unit step calls up %.2f times the move, want less than 4, and more than 1 or time "+
					"is wasted", grain, name, most)
			}
			n++
		}
	}
	if n != 6 {
		t.Errorf("%d cases, want 6", n)
	}
}

// The hats share out all of a force, and a piece moved as a whole stretches nothing.
func TestHatsShareOut(t *testing.T) {
	w := rolled(t, 20, Stiffness{Weight: 0.2, TensileWarp: 800, TensileWeft: 800, Shear: 400, BendWarp: 1e-4,
		BendWeft: 1e-4, Twist: 5e-5})
	for i := range w.sum[0] {
		w.sum[0][i].Force, w.sum[0][i].Mass = r3.Vec{X: 1, Y: float64(i), Z: -2}, 3
	}
	nodes := float64(len(w.force))
	for _, n := range w.levels {
		n.restrict(0, []span{{0, len(w.force)}}, w.sum[0])
		var f r3.Vec
		var m float64
		for _, g := range n.got[0] {
			f, m = r3.Add(f, g.force), m+g.mass
		}
		want := r3.Vec{X: nodes, Y: nodes * (nodes - 1) / 2, Z: -2 * nodes}
		if r3.Norm(r3.Sub(f, want)) > 1e-9*r3.Norm(want) || math.Abs(m-3*nodes) > 1e-9*m {
			t.Errorf("hats got %v N and %g kg, want %v and %g", f, m, want, 3*nodes)
		}
		for _, l := range w.system.Cloth.links[:20] {
			r := n.over([]int32{l.a, l.b}, -1, 1)
			sum := 0.0
			for _, g := range r.by {
				sum += g
			}
			if math.Abs(sum) > 1e-12 || len(r.hat) == 0 || len(r.hat) > 4 {
				t.Errorf("hats rise by %v over a link, want at most four that sum to 0", r.by)
			}
		}
	}
	if len(w.levels) == 0 {
		t.Error("no level")
	}
}

// solve undoes the product.
func TestSymmetricSolve(t *testing.T) {
	var s symmetric
	s.add(2, 0.1, r3.Vec{X: 1, Y: 2, Z: -1})
	s.add(1, 0, r3.Vec{X: -1, Y: 0.5, Z: 3})
	x := r3.Vec{X: 0.3, Y: -2, Z: 1.5}
	const k = 0.7
	f := r3.Vec{
		X: (s.xx+k)*x.X + s.xy*x.Y + s.xz*x.Z,
		Y: s.xy*x.X + (s.yy+k)*x.Y + s.yz*x.Z,
		Z: s.xz*x.X + s.yz*x.Y + (s.zz+k)*x.Z,
	}
	if got := s.solve(k, f); r3.Norm(r3.Sub(got, x)) > 1e-12 {
		t.Errorf("solve = %v, want %v", got, x)
	}
	if got := (&symmetric{}).solve(0, f); got != (r3.Vec{}) {
		t.Errorf("solve of nothing = %v, want 0", got)
	}
}
