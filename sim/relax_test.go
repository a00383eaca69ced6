package sim

import (
	"context"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ledge returns a square hung by two corners over a ball with friction: every
// part of a step but self-contact.
func ledge(t testing.TB, size, spacing float64) (*System, *State) {
	t.Helper()
	l := cut(t, rectangle(size, size, 0), spacing, 30)
	sc := &System{Cloth: NewCloth(l, limp(0.1, 20e-6)), Friction: 0.2, Obstacle: ball{r3.Vec{Y: -0.03, Z: -0.05}, 0.06}}
	for _, i := range []int{0, len(l.Rest) - 1} {
		p, _ := l.Locate(l.Rest[i])
		sc.Holds = append(sc.Holds, Hold{Point: p, Only: All})
	}
	r := rand.New(rand.NewPCG(3, 4))
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Y: 0.05, Z: p.Y + 1e-4*r.Float64()}
	}
	st := NewState(sc, pos)
	for k, h := range sc.Holds {
		st.Target[k], st.Grip[k] = h.Point.At(pos), 20
	}
	return sc, st
}

// The same start gives the same bits, on one core or on two, with a form,
// friction and layers that lie on each other and rub.
func TestSameBits(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(2))
	hung := func(gap, _ float64) (*System, *State) { sc, st := ledge(t, 0.1, 0.006); sc.Gap = gap; return sc, st }
	laid := func(gap, rub float64) (*System, *State) { return folded(t, 30, gap, rub) }
	for _, c := range []struct {
		name  string
		start func(gap, rub float64) (*System, *State)
	}{{"hung over a ball", hung}, {"folded over", laid}} {
		run := func(alone bool, gap, rub float64) (from, to []r3.Vec, r Result) {
			sc, st := c.start(gap, rub)
			sc.Alone, from = alone, slices.Clone(st.Pos)
			r = Relax(context.Background(), sc, st, Settings{Steps: 2000})
			return from, st.Pos, r
		}
		from, a, ra := run(true, 2.5e-3, 0.4)
		_, b, rb := run(false, 2.5e-3, 0.4)
		if ra != rb {
			t.Errorf("%s: Relax = %+v alone and %+v helped, want the same", c.name, ra, rb)
		}
		if _, d, _ := run(true, 0, 0); d[len(d)/2] == a[len(a)/2] {
			t.Errorf("%s: layers that may pass through each other give the same cloth, want layers that touch", c.name)
		}
		if _, d, _ := run(true, 2.5e-3, 0); c.name == "folded over" && d[len(d)/2] == a[len(a)/2] {
			t.Errorf("%s: layers that do not rub give the same cloth, want layers that rub", c.name)
		}
		moved := 0
		for i := range a {
			for k, v := range [3][2]float64{{a[i].X, b[i].X}, {a[i].Y, b[i].Y}, {a[i].Z, b[i].Z}} {
				if math.Float64bits(v[0]) != math.Float64bits(v[1]) {
					t.Fatalf("%s: node %d axis %d = %v alone, %v helped, want the same bits", c.name, i, k, v[0], v[1])
				}
			}
			if math.Abs(a[i].Y-from[i].Y) > 0.003 {
				moved++
			}
		}
		if moved < len(a)/4 {
			t.Errorf("%s: %d of %d nodes moved, want a cloth that falls", c.name, moved, len(a))
		}
	}
}

func TestStatus(t *testing.T) {
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	for _, c := range []struct {
		name  string
		ctx   context.Context
		o     Settings
		spoil func(*System, *State)
		want  Status
	}{
		{"settled", context.Background(), Settings{Residual: 0.05}, nil, Settled},
		{"limit", context.Background(), Settings{Steps: 70}, nil, StepLimit},
		{"cancelled", gone, Settings{}, nil, Cancelled},
		{"not a number", context.Background(), Settings{}, func(_ *System, st *State) { st.Pos[7].Z = math.NaN() }, Diverged},
		{"infinite", context.Background(), Settings{}, func(_ *System, st *State) { st.Pos[7].Z = math.Inf(1) }, Diverged},
		{"hold far off", context.Background(), Settings{}, func(_ *System, st *State) { st.Target[0].X = math.Inf(-1) },
			Diverged},
	} {
		sc, st := ledge(t, 0.1, 0.006)
		if c.spoil != nil {
			c.spoil(sc, st)
		}
		r := Relax(c.ctx, sc, st, c.o)
		if r.Status != c.want || r.Steps == 0 {
			t.Errorf("%s: Relax = %+v, want %s", c.name, r, c.want)
		}
		if c.want == StepLimit && (r.Steps != 70 || !(r.Residual > 1e-3)) {
			t.Errorf("%s: Relax = %+v, want 70 steps and a residual above rest", c.name, r)
		}
		if c.want == Settled && !(r.Residual <= 0.05) {
			t.Errorf("%s: Relax = %+v, want a residual of 0.05 or less", c.name, r)
		}
	}
}

// At rest the holds carry the weight that the ball does not; with no ball, all
// of it.
func TestHoldsCarryTheWeight(t *testing.T) {
	sc, st := ledge(t, 0.1, 0.008)
	sc.Obstacle = nil
	settle(t, sc, st, 1e-3)
	var sum r3.Vec
	for k, h := range sc.Holds {
		sum = r3.Add(sum, st.Pull(h, k))
	}
	w := sc.Cloth.Weight()
	if want := 0.1 * Gravity * 0.1 * 0.1; math.Abs(w/want-1) > 1e-9 {
		t.Errorf("Weight() = %g N, want %g", w, want)
	}
	if d := r3.Norm(r3.Sub(sum, r3.Vec{Y: w})); d > 2e-3*w {
		t.Errorf("holds pull %v N, want the weight %g N upwards within 2e-3 of it", sum, w)
	}
}

// Fixed nodes stay, whatever pulls.
func TestFixed(t *testing.T) {
	sc, st := ledge(t, 0.1, 0.008)
	sc.Fixed = make([]bool, len(st.Pos))
	start := append([]r3.Vec(nil), st.Pos...)
	for i := range start {
		sc.Fixed[i] = i%7 == 0
	}
	Relax(context.Background(), sc, st, Settings{Steps: 300})
	still, moved := 0, 0
	for i := range start {
		if sc.Fixed[i] && st.Pos[i] != start[i] {
			t.Errorf("fixed node %d moved from %v to %v", i, start[i], st.Pos[i])
		}
		if sc.Fixed[i] {
			still++
		} else if st.Pos[i] != start[i] {
			moved++
		}
	}
	if still < 10 || moved < 50 {
		t.Errorf("%d fixed and %d moved nodes, want tens of each", still, moved)
	}
}

// No step reserves memory, once layers have come to lie on each other.
func TestStepAllocates(t *testing.T) {
	for name, start := range map[string]func() (*System, *State){
		"hung over a ball": func() (*System, *State) { return ledge(t, 0.1, 0.006) },
		"folded over":      func() (*System, *State) { return folded(t, 30, 2e-3, 0.4) },
	} {
		sc, st := start()
		sc.Alone = true
		w := NewStepper(sc, st)
		for range 1500 {
			w.Step()
		}
		if n := testing.AllocsPerRun(200, w.Step); n != 0 {
			t.Errorf("%s: Step() reserves memory %g times, want 0", name, n)
		}
	}
}

// benched keeps the compiler from dropping what a benchmark computes.
var benched float64

func BenchmarkStep(b *testing.B) {
	for _, c := range []struct {
		name string
		size float64
	}{{"2k", 0.35}, {"8k", 0.71}} {
		b.Run("nodes="+c.name, func(b *testing.B) {
			sc, st := ledge(b, c.size, 0.008)
			w := NewStepper(sc, st)
			for range 200 {
				w.Step()
			}
			b.ReportAllocs()
			b.ResetTimer()
			for b.Loop() {
				w.Step()
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(st.Pos)), "ns/node")
			benched = w.Residual()
			if len(st.Pos) < 1500 {
				b.Fatalf("%d nodes, want about %s", len(st.Pos), c.name)
			}
		})
	}
}
