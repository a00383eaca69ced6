package sim

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// plank returns a strip of 20 × 80 mm that lies level, one end of it clamped.
func plank(t *testing.T, grain float64) (*System, *State) {
	t.Helper()
	l := cut(t, rectangle(0.02, 0.08, 0), 0.003, grain)
	fixed, pos := make([]bool, len(l.Rest)), make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		fixed[i], pos[i] = q.Y > 0.03, r3.Vec{X: q.X, Z: q.Y}
	}
	s := &System{Cloth: NewCloth(l, uneven), Fixed: fixed}
	return s, NewState(s, pos)
}

// Newton's method and the walk come to rest in one place.
func TestNewton(t *testing.T) {
	for _, grain := range []float64{0, 22.5, 45} {
		s, st := plank(t, grain)
		walked := st.Clone()
		if r := Relax(context.Background(), s, walked, Settings{Residual: 1e-7}); r.Status != Settled {
			t.Fatalf("Relax at %g° = %+v", grain, r)
		}
		r := Newton(context.Background(), s, st, Settings{Residual: 1e-7, Steps: 200})
		if r.Status != Settled || r.Residual > 1e-7 {
			t.Fatalf("Newton at %g° = %+v, want settled at 1e-7", grain, r)
		}
		far, fell := 0.0, 0.0
		for i, p := range st.Pos {
			far, fell = max(far, r3.Norm(r3.Sub(p, walked.Pos[i]))), min(fell, p.Y)
		}
		t.Logf("%g°: %d steps, %.2g m from the walk, fallen by %.1f mm", grain, r.Steps, far, -1000*fell)
		if far > 2e-6 || fell > -0.03 {
			t.Errorf("Newton at %g° rests %.2g m from where the walk does, fallen by %.1f mm", grain, far, -1000*fell)
		}
	}
}

// The stiffness tells how the forces change with a small move of all nodes, whatever it is: so
// nobody who feels a node is left out, and no two moved at once are felt by one.
func TestSlope(t *testing.T) {
	for _, grain := range []float64{0, 22.5, 45} {
		s, st := plank(t, grain)
		Relax(context.Background(), s, st, Settings{Steps: 800}) // bent and sheared
		w := NewStepper(s, st)
		k := newSlope(w)
		k.read()
		rng := rand.New(rand.NewPCG(1, 1))
		d := make([]float64, len(k.out))
		for i := range d {
			d[i] = rng.NormFloat64()
		}
		push := func(by float64) []r3.Vec {
			for r, i := range k.free {
				st.Pos[i] = r3.Add(st.Pos[i], r3.Scale(by, r3.Vec{X: d[3*r], Y: d[3*r+1], Z: d[3*r+2]}))
			}
			w.unbalance()
			return append([]r3.Vec(nil), w.force...)
		}
		const by = 1e-9
		up := push(by)
		down := push(-2 * by)
		got := blas64.Vector{N: len(d), Inc: 1, Data: make([]float64, len(d))}
		blas64.Sbmv(1, k.of, blas64.Vector{N: len(d), Inc: 1, Data: d}, 0, got)
		var off, all float64
		for r, i := range k.free {
			want := r3.Scale(1/(2*by), r3.Sub(down[i], up[i]))
			for m, v := range [3]float64{want.X, want.Y, want.Z} {
				off, all = off+math.Pow(got.Data[3*r+m]-v, 2), all+v*v
			}
		}
		if off = math.Sqrt(off / all); !(off < 1e-5) {
			t.Errorf("at %g° the stiffness misses a random move by %.1g of the forces", grain, off)
		}
	}
}

// What it cannot bring to rest it leaves as it is.
func TestNewtonLeaves(t *testing.T) {
	for name, change := range map[string]func(*System){
		"touching": func(s *System) { s.Gap = 0.001 },
		"held":     func(s *System) { s.Holds = []Hold{{Only: All}} },
		"rubbing":  func(s *System) { s.Cloth.rubs = true },
	} {
		s, st := plank(t, 0)
		change(s)
		was := st.Pos[0]
		if r := Newton(context.Background(), s, st, Settings{Steps: 5}); r.Status != StepLimit || r.Steps != 0 || st.Pos[0] != was {
			t.Errorf("Newton of a strip that is %s = %+v, want no step", name, r)
		}
	}
	s, st := plank(t, 0)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if r := Newton(ctx, s, st, Settings{Steps: 5}); r.Status != Cancelled || r.Steps != 0 {
		t.Errorf("Newton, called off, = %+v", r)
	}
}

// The parts between fixed nodes move nothing: without them the forces on free nodes are the
// same to rounding.
func TestLoose(t *testing.T) {
	for _, grain := range []float64{0, 22.5} {
		s, st := plank(t, grain)
		Relax(context.Background(), s, st, Settings{Steps: 300})
		w := NewStepper(s, st)
		w.unbalance()
		if n, all := len(w.cloth.cells), len(s.Cloth.cells); n > all*95/100 {
			t.Errorf("at %g° %d of %d cells are left", grain, n, all)
		}
		own := append([]r3.Vec(nil), w.force...)
		w.cloth = s.Cloth
		w.unbalance()
		for i, f := range w.force {
			if off := r3.Norm(r3.Sub(f, own[i])); !s.Fixed[i] && off > 1e-12 {
				t.Fatalf("at %g° the force on node %d is %.1g N off", grain, i, off)
			}
		}
	}
}
