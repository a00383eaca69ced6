package sim

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// tape sews n ties end to end along the flat line from a to b, each long times
// as long as the cloth under it.
func tape(l *lattice.Lattice, a, b r2.Vec, n int, long, stiff float64) []Tie {
	var out []Tie
	at := func(k int) r2.Vec { return r2.Add(a, r2.Scale(float64(k)/float64(n), r2.Sub(b, a))) }
	for k := range n {
		p, _ := l.Locate(at(k))
		q, _ := l.Locate(at(k + 1))
		out = append(out, Tie{p, q, long * r2.Norm(r2.Sub(at(k+1), at(k))), stiff})
	}
	return out
}

// The pull of taut and slack tapes is the slope of what they store, and tapes
// alone neither push the cloth as a whole nor turn it.
func TestTieForces(t *testing.T) {
	l := cut(t, rectangle(0.04, 0.03, 0.1), 0.006, 30)
	r := rand.New(rand.NewPCG(5, 6))
	taut, slack := 0, 0
	for range 6 {
		sc := &System{Cloth: NewCloth(l, Stiffness{Weight: 1e-9}), Ties: tape(l, r2.Vec{X: -0.018, Y: 0.004},
			r2.Vec{X: 0.017, Y: -0.008}, 9, 1, 200)}
		st := NewState(sc, crumple(l, r, 0.01))
		for k := range sc.Ties {
			if sc.Ties[k].Pull(st.Pos) > 0 {
				taut++
			} else {
				slack++
			}
		}
		w := NewStepper(sc, st)
		unbalanced(w)
		var scale float64
		var sum, turn r3.Vec
		for i, f := range w.force {
			scale = math.Max(scale, r3.Norm(f))
			sum, turn = r3.Add(sum, f), r3.Add(turn, r3.Cross(st.Pos[i], f))
			if d := r3.Norm(r3.Sub(f, slopes(sc, st, i))); d > 2e-6*scale+1e-8 {
				t.Errorf("node %d: force and slope differ by %g N where the largest force is %g N", i, d, scale)
			}
		}
		if r3.Norm(sum) > 1e-7 || r3.Norm(turn) > 1e-9 { // the cloth weighs 1e-9 kg/m² × 12 cm²: 1e-11 N
			t.Errorf("tapes push with %v N and turn with %v N·m, want 0 (largest force %g N)", sum, turn, scale)
		}
	}
	if taut < 5 || slack < 5 {
		t.Errorf("%d ties taut and %d slack, want some of each", taut, slack)
	}
}

// A strip with a tape down its middle, drawn by dead loads F at both ends,
// stretches by the strain e at which cloth and tape carry F together:
// F = E·w·e + EA·(e − e0/2), with E of Kilby on and off the yarns.
func TestTiedStrip(t *testing.T) {
	const width, length, n, load, stiff = 0.02, 0.3, 8, 0.1, 20.0
	s := Stiffness{Weight: 1e-6, TensileWarp: 400, TensileWeft: 250, Shear: 30, BendWarp: 1e-5, BendWeft: 1e-5,
		Twist: 5e-6}
	for _, grain := range []float64{0, 45} {
		l := cut(t, rectangle(width, length, 0), 0.005, grain)
		sc := &System{Cloth: NewCloth(l, s), Ties: tape(l, r2.Vec{Y: -length / 2}, r2.Vec{Y: length / 2}, 60, 1, stiff)}
		for _, end := range [2]float64{-1, 1} {
			y := end * length / 2
			sc.Holds = append(sc.Holds, row(l, r2.Vec{X: -width / 2, Y: y}, r2.Vec{X: width / 2, Y: y}, n)...)
		}
		mid, _ := l.Locate(r2.Vec{})
		sc.Holds = append(sc.Holds, Hold{Point: mid, Only: All})
		st := NewState(sc, upright(l))
		for k := range 2 * n {
			up := float64(2*(k/n) - 1)
			st.Grip[k], st.Target[k] = dead, r3.Add(sc.Holds[k].Point.At(st.Pos), r3.Vec{Y: up * load / n / dead})
			sc.Holds[k].Only = r3.Vec{Y: 1}
		}
		st.Grip[2*n] = 10
		r := settle(t, sc, st, 1e-4*load/sc.Cloth.Weight())
		got := reach(l, st.Pos, r2.Vec{Y: -length / 6}, r2.Vec{Y: length / 6})/(length/3) - 1
		e := kilby(s, grain*math.Pi/180) * width
		want := (load + stiff*slackening/2) / (e + stiff)
		t.Logf("grain %g°: strain %.5f, want %.5f (%+.2f %%); without tape %.5f; %d steps", grain, got, want,
			100*(got/want-1), load/e, r.Steps)
		if math.Abs(got/want-1) > 0.02 {
			t.Errorf("grain %g°: a taped strip stretches by %.5f, want %.5f ± 2 %%", grain, got, want)
		}
	}
}

// A tape longer than the cloth under it hangs slack: the cloth comes to rest
// where it would without, and the bits do not depend on who helps.
func TestTieSlack(t *testing.T) {
	run := func(long float64, alone bool) []r3.Vec {
		sc, st := ledge(t, 0.1, 0.006)
		sc.Alone = alone
		if long > 0 {
			sc.Ties = tape(sc.Cloth.Lattice, r2.Vec{X: -0.04, Y: 0.01}, r2.Vec{X: 0.04, Y: -0.01}, 12, long, 50)
		}
		Relax(context.Background(), sc, st, Settings{Residual: 1e-4, Steps: 20000})
		return st.Pos
	}
	apart := func(a, b []r3.Vec) (far float64) {
		for i := range a {
			far = math.Max(far, r3.Norm(r3.Sub(a[i], b[i])))
		}
		return far
	}
	free := run(0, true)
	slack, taut := apart(free, run(1.5, true)), apart(free, run(0.9, true))
	if slack > 1e-3 || taut < 5e-3 {
		t.Errorf("a slack tape moves the cloth by %.2f mm and a short one by %.2f mm, want at most 1 mm and at least 5 mm",
			slack*1000, taut*1000)
	}
	if d := apart(run(0.9, true), run(0.9, false)); d != 0 {
		t.Errorf("helped, the taped cloth lies %g m off, want the same bits", d)
	}
}
