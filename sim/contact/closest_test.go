package contact

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// spot draws a point in a box of 10 mm; small whole steps bring about flat,
// parallel and coincident cases.
func spot(t *rapid.T, name string) r3.Vec {
	if rapid.Bool().Draw(t, name+" on a grid") {
		at := func() float64 { return 0.005 * float64(rapid.IntRange(-2, 2).Draw(t, name)) }
		return r3.Vec{X: at(), Y: at(), Z: at()}
	}
	at := func() float64 { return rapid.Float64Range(-0.01, 0.01).Draw(t, name) }
	return r3.Vec{X: at(), Y: at(), Z: at()}
}

// blend returns the weighted sum of points.
func blend(w []float64, p ...r3.Vec) r3.Vec {
	var x r3.Vec
	for k := range p {
		x = r3.Add(x, r3.Scale(w[k], p[k]))
	}
	return x
}

// No sampled point of the triangle is nearer than the one found, and that one
// lies on the triangle.
func TestOnTriangle(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		p, a, b, c := spot(t, "p"), spot(t, "a"), spot(t, "b"), spot(t, "c")
		if r3.Norm(r3.Cross(r3.Sub(b, a), r3.Sub(c, a))) < 1e-7 {
			t.Skip("no area")
		}
		v1, v2 := onTriangle(&p, &a, &b, &c)
		w := [3]float64{1 - v1 - v2, v1, v2}
		for _, v := range w {
			if !(v >= -1e-12 && v <= 1+1e-12) {
				t.Fatalf("onTriangle(%v, %v, %v, %v) = %v, want weights in 0..1", p, a, b, c, w)
			}
		}
		if s := w[0] + w[1] + w[2]; math.Abs(s-1) > 1e-12 {
			t.Fatalf("onTriangle weights sum to %g, want 1", s)
		}
		got := r3.Norm(r3.Sub(p, blend(w[:], a, b, c)))
		const m = 40
		for i := range m + 1 {
			for j := range m + 1 - i {
				u, v := float64(i)/m, float64(j)/m
				if d := r3.Norm(r3.Sub(p, blend([]float64{1 - u - v, u, v}, a, b, c))); d < got-1e-12 {
					t.Fatalf("onTriangle(%v, %v, %v, %v) is %g m off, but (%g, %g) is %g", p, a, b, c, got, u, v, d)
				}
				n++
			}
		}
	})
	if n < 100_000 {
		t.Errorf("%d samples, want 100,000s", n)
	}
}

// No sampled pair of places is nearer than the pair found.
func TestOnEdges(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		a, b, c, d := spot(t, "a"), spot(t, "b"), spot(t, "c"), spot(t, "d")
		if r3.Norm(r3.Sub(a, b)) < 1e-4 || r3.Norm(r3.Sub(c, d)) < 1e-4 {
			t.Skip("no length")
		}
		gap := func(u, v float64) float64 {
			return r3.Norm(r3.Sub(blend([]float64{1 - u, u}, a, b), blend([]float64{1 - v, v}, c, d)))
		}
		u, v, slant := onEdges(&a, &b, &c, &d)
		if want := r3.Norm2(r3.Cross(r3.Unit(r3.Sub(b, a)), r3.Unit(r3.Sub(d, c)))); math.Abs(slant-want) > 1e-12 {
			t.Fatalf("onEdges(%v, %v, %v, %v) has slant %g, want %g", a, b, c, d, slant, want)
		}
		if !(u >= 0 && u <= 1 && v >= 0 && v <= 1) {
			t.Fatalf("onEdges(%v, %v, %v, %v) = %g, %g, want in 0..1", a, b, c, d, u, v)
		}
		got := gap(u, v)
		const m = 30
		for i := range m + 1 {
			for j := range m + 1 {
				if e := gap(float64(i)/m, float64(j)/m); e < got-1e-9 {
					t.Fatalf("onEdges(%v, %v, %v, %v) = %g, %g is %g m apart, but (%d, %d)/%d is %g", a, b, c, d, u, v, got, i, j, m,
						e)
				}
				n++
			}
		}
	})
	if n < 100_000 {
		t.Errorf("%d samples, want 100,000s", n)
	}
}
