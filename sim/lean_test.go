package sim

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A limp strip hung by its upper edge hangs the way its weight pulls, whichever way that
// is: its end lies where the strip is long, turned by the angle.
func TestDown(t *testing.T) {
	l := cut(t, rectangle(0.02, 0.10, 0), 0.005, 0)
	for _, deg := range []float64{0, 30, -50} {
		a := deg * math.Pi / 180
		pos := make([]r3.Vec, len(l.Rest))
		fixed := make([]bool, len(l.Rest))
		top, end := math.Inf(-1), 0
		for i, q := range l.Rest {
			top = max(top, q.Y)
			if q.Y < l.Rest[end].Y {
				end = i
			}
		}
		for i, q := range l.Rest {
			pos[i], fixed[i] = r3.Vec{X: q.X, Y: q.Y}, q.Y > top-0.001
		}
		s := &System{Cloth: NewCloth(l, Stiffness{Weight: 0.2, TensileWarp: 2000, TensileWeft: 2000, Shear: 50,
			BendWarp: 1e-9, BendWeft: 1e-9}), Fixed: fixed, Down: r3.Vec{Y: -math.Cos(a), Z: math.Sin(a)}}
		st := NewState(s, pos)
		if r := Relax(context.Background(), s, st, Settings{Residual: 1e-4}); r.Status != Settled {
			t.Fatalf("%g°: %+v", deg, r)
		}
		got := r3.Sub(st.Pos[end], r3.Vec{X: st.Pos[end].X, Y: top})
		want := r3.Scale(top-l.Rest[end].Y, s.Down)
		if d := r3.Norm(r3.Sub(got, want)); d > 0.001 {
			t.Errorf("%g°: the end lies at %.4f, want %.4f", deg, got, want)
		}
	}
}
