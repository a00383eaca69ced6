package sim

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// pouch returns the height of the half sine wave for which a length of cloth bent
// over a span fits, by bisection on the length of the wave.
func pouch(length, span float64) float64 {
	arc := func(a float64) float64 {
		const n = 200
		sum := 0.0
		for k := range n {
			x := (float64(k) + 0.5) / n
			sum += math.Hypot(1, a*math.Pi/span*math.Cos(math.Pi*x)) * span / n
		}
		return sum
	}
	low, high := 0.0, length
	for range 60 {
		if mid := (low + high) / 2; arc(mid) < length {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// drop hangs a square by patches at two corners brought nearer and returns how
// far the middle of the edge between them falls. It starts from one wave that
// runs down the whole square, the same at every grain.
func drop(t *testing.T, s Stiffness, spacing, grain float64) float64 {
	t.Helper()
	const size, span, patch = 0.3, 0.24, 0.03
	l := cut(t, rectangle(size, size, 0), spacing, grain)
	sc := &System{Cloth: NewCloth(l, s)}
	deep := pouch(size, span)
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		x := p.X * span / size
		pos[i] = r3.Vec{X: x, Y: p.Y, Z: deep * math.Cos(math.Pi*x/span)}
	}
	for _, side := range [2]float64{-1, 1} {
		a := r2.Vec{X: side * size / 2, Y: size / 2}
		sc.Holds = append(sc.Holds, row(l, a, r2.Sub(a, r2.Vec{Y: patch}), 6)...)
	}
	st := NewState(sc, pos)
	for k, h := range sc.Holds {
		st.Target[k], st.Grip[k] = h.Point.At(pos), 20
	}
	r := settle(t, sc, st, 1e-3)
	mid, _ := l.Locate(r2.Vec{Y: size / 2})
	got := size/2 - mid.At(st.Pos).Y
	t.Logf("grain %g° at %g mm: drop %.2f mm, forward %.2f mm, %d nodes, %d steps", grain, spacing*1000, got*1000,
		mid.At(st.Pos).Z*1000, len(pos), r.Steps)
	return got
}

// An isotropic cloth does not know how its lattice lies.
func TestDropAtAnyGrain(t *testing.T) {
	if testing.Short() {
		t.Skip("three hung squares")
	}
	s := limp(0.1, 60e-6)
	first := drop(t, s, 0.01, 0)
	for _, grain := range []float64{22.5, 45} {
		if got := drop(t, s, 0.01, grain); math.Abs(got/first-1) > 0.02 {
			t.Errorf("drop at %g° = %.2f mm, want the %.2f mm at 0° ± 2 %%", grain, got*1000, first*1000)
		}
	}
}
