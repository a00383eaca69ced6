package sim

import (
	"context"
	"math"
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rectangle returns a w × h outline about the origin turned by a.
func rectangle(w, h, a float64) []r2.Vec {
	c, s := math.Cos(a), math.Sin(a)
	var out []r2.Vec
	for _, p := range [4]r2.Vec{{X: -w / 2, Y: -h / 2}, {X: w / 2, Y: -h / 2}, {X: w / 2, Y: h / 2},
		{X: -w / 2, Y: h / 2}} {
		out = append(out, r2.Vec{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y})
	}
	return out
}

// overhang hangs a strip of twice the length over a line and returns the angle
// of the chord of one half in degrees. By symmetry the strip is level on the
// line, which makes each half a cantilever.
func overhang(t *testing.T, length, spacing, grain float64, s Stiffness) float64 {
	t.Helper()
	l, err := lattice.Cut(rectangle(0.02, 2*length, 0), lattice.Options{Spacing: spacing, Grain: grain})
	if err != nil {
		t.Fatal(err)
	}
	sc := &System{Cloth: NewCloth(l, s), Fixed: make([]bool, len(l.Rest))}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Z: p.Y}
		sc.Fixed[i] = math.Abs(p.Y) < 1e-9
	}
	st := NewState(sc, pos)
	r := Relax(context.Background(), sc, st, Settings{Residual: 1e-4})
	if r.Status != Settled {
		t.Fatalf("overhang(%g°): %s after %d steps, residual %g", grain*180/math.Pi, r.Status, r.Steps, r.Residual)
	}
	tip, _ := l.Locate(r2.Vec{Y: length})
	x := tip.At(st.Pos)
	t.Log(r.Steps, len(pos))
	return math.Atan2(-x.Y, x.Z) * 180 / math.Pi
}

func TestOverhang(t *testing.T) {
	s := Stiffness{Weight: 0.150, TensileWarp: 200, TensileWeft: 200, Shear: 100, BendWarp: 10e-6, BendWeft: 10e-6,
		Twist: 5e-6}
	for _, g := range []float64{0, 90, 45, 22.5} {
		got := overhang(t, 0.05, 0.0025, g*math.Pi/180, s)
		if math.Abs(got-60.19) > 0.3 {
			t.Errorf("overhang(%g°) = %.3f°, want 60.19 ± 0.3", g, got)
		} else {
			t.Logf("overhang(%g°) = %.3f°", g, got)
		}
	}
}
