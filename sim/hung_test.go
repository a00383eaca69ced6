package sim

import (
	"context"
	"math"
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// settle relaxes or ends the test.
func settle(t *testing.T, sc *System, st *State, residual float64) Result {
	t.Helper()
	r := Relax(context.Background(), sc, st, Settings{Residual: residual})
	if r.Status != Settled {
		t.Fatalf("Relax = %+v, want settled at %g", r, residual)
	}
	return r
}

// reach returns the distance in space between two flat points.
func reach(l *lattice.Lattice, pos []r3.Vec, a, b r2.Vec) float64 {
	p, _ := l.Locate(a)
	q, _ := l.Locate(b)
	return r3.Norm(r3.Sub(q.At(pos), p.At(pos)))
}

// row returns holds at the middles of n equal parts of the line from a to b.
func row(l *lattice.Lattice, a, b r2.Vec, n int) []Hold {
	var out []Hold
	for k := range n {
		p, _ := l.Locate(r2.Add(a, r2.Scale((float64(k)+0.5)/float64(n), r2.Sub(b, a))))
		out = append(out, Hold{Point: p, Only: All})
	}
	return out
}

// A strip hung from its top edge grows by wL²/2E under its own weight; on the
// true bias 1/E = ¼(1/C11 + 1/C22 + 1/G) (F. W. Kilby, "Planar stress–strain
// relationships in woven fabrics", J. Textile Inst. 54, 1963, with ν = 0). The
// top edge is held against falling only, so that it may grow narrow; one point
// is held sideways. Growth is read below the top fifth, on the middle line.
func TestHungStrip(t *testing.T) {
	const width, length = 0.04, 0.3
	s := Stiffness{Weight: 0.15, TensileWarp: 900, TensileWeft: 600, Shear: 100, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	for _, c := range []struct{ grain, e float64 }{
		{0, s.TensileWarp},
		{90, s.TensileWeft},
		{45, 4 / (1/s.TensileWarp + 1/s.TensileWeft + 1/s.Shear)},
	} {
		l := cut(t, rectangle(width, length, 0), 0.005, c.grain)
		sc := &System{Cloth: NewCloth(l, s), Holds: row(l, r2.Vec{X: -width / 2, Y: length / 2},
			r2.Vec{X: width / 2, Y: length / 2}, 16)}
		st := NewState(sc, upright(l))
		for k := range sc.Holds {
			sc.Holds[k].Only = r3.Vec{Y: 1}
			if k == 8 {
				sc.Holds[k].Only = All
			}
			st.Target[k], st.Grip[k] = sc.Holds[k].Point.At(st.Pos), 1000
		}
		r := settle(t, sc, st, 1e-5)
		tip, from := r2.Vec{Y: -length / 2}, r2.Vec{Y: 0.3 * length}
		part := from.Y - tip.Y
		got := reach(l, st.Pos, from, tip) - part
		want := s.Weight * Gravity * part * part / (2 * c.e)
		t.Logf("grain %g°: grows %.5f mm, want %.5f (%+.2f %%), %d steps", c.grain, got*1000, want*1000, 100*(got/want-1),
			r.Steps)
		if math.Abs(got/want-1) > 0.01 {
			t.Errorf("grain %g°: grows %.5f mm under its own weight, want %.5f ± 1 %%", c.grain, got*1000, want*1000)
		}
	}
}

// kilby returns the modulus (N/m) of cloth pulled at angle a from the warp, with
// ν = 0: 1/E = cos⁴/C11 + cos²·sin²/G + sin⁴/C22 (Kilby 1963).
func kilby(s Stiffness, a float64) float64 {
	c, d := math.Pow(math.Cos(a), 2), math.Pow(math.Sin(a), 2)
	return 1 / (c*c/s.TensileWarp + c*d/s.Shear + d*d/s.TensileWeft)
}

// dead is the grip of a spring so soft, to a target so far, that its pull is a
// dead load: the end may go where it will.
const dead = 1e-4

// stretched draws a strip by dead loads spread over its ends, N/m, and returns the
// strain of its middle third.
func stretched(t *testing.T, s Stiffness, grain, load float64) float64 {
	t.Helper()
	const width, length, n = 0.06, 0.3, 24
	l := cut(t, rectangle(width, length, 0), 0.005, grain)
	sc := &System{Cloth: NewCloth(l, s)}
	for _, end := range [2]float64{-1, 1} {
		y := end * length / 2
		sc.Holds = append(sc.Holds, row(l, r2.Vec{X: -width / 2, Y: y}, r2.Vec{X: width / 2, Y: y}, n)...)
	}
	mid, _ := l.Locate(r2.Vec{})
	sc.Holds = append(sc.Holds, Hold{Point: mid, Only: All})
	st := NewState(sc, upright(l))
	for k := range 2 * n {
		up := float64(2*(k/n) - 1)
		at := sc.Holds[k].Point.At(st.Pos)
		st.Grip[k], st.Target[k] = dead, r3.Add(at, r3.Vec{Y: up * load * width / n / dead})
		sc.Holds[k].Only = r3.Vec{Y: 1}
	}
	st.Grip[2*n] = 10
	settle(t, sc, st, 1e-4*load*width/sc.Cloth.Weight())
	a, b := r2.Vec{Y: -length / 6}, r2.Vec{Y: length / 6}
	return reach(l, st.Pos, a, b)/(length/3) - 1
}

func TestOffAxisPull(t *testing.T) {
	s := Stiffness{Weight: 1e-6, TensileWarp: 400, TensileWeft: 250, Shear: 30, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	n := 0
	for _, grain := range []float64{0, 15, 30, 45, 60, 75, 90} {
		const load = 0.05
		got, want := load/stretched(t, s, grain, load), kilby(s, grain*math.Pi/180)
		t.Logf("pulled at %g°: E = %.3f N/m, Kilby %.3f (%+.2f %%)", grain, got, want, 100*(got/want-1))
		if math.Abs(got/want-1) > 0.02 {
			t.Errorf("pulled at %g°: E = %.3f N/m, want %.3f ± 2 %%", grain, got, want)
		}
		n++
	}
	if n != 7 {
		t.Errorf("%d angles, want 7", n)
	}
}
