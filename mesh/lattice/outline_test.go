package lattice

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// outlines are the fixed pieces of the tests, counter-clockwise, m.
var outlines = []struct {
	name   string
	points []r2.Vec
	convex bool
}{
	{"rectangle", []r2.Vec{{X: -0.15, Y: -0.1}, {X: 0.15, Y: -0.1}, {X: 0.15, Y: 0.1}, {X: -0.15, Y: 0.1}}, true},
	{"L", []r2.Vec{{}, {X: 0.3}, {X: 0.3, Y: 0.11}, {X: 0.113, Y: 0.11}, {X: 0.113, Y: 0.27}, {Y: 0.27}}, false},
	{"circle", ring(200, 0.15), true},
	{"cowl", cowl(), false},
}

// grains are the grain angles of the tests, degrees.
var grains = []float64{0, 22.5, 45, 67.5, 90, 13.7}

// ring returns a regular polygon of n corners about a place off the origin.
func ring(n int, r float64) []r2.Vec {
	out := make([]r2.Vec, n)
	for k := range out {
		s, c := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		out[k] = r2.Vec{X: 0.013 + r*c, Y: -0.021 + r*s}
	}
	return out
}

// cowl returns both halves of a front with a square edge, shoulders, scooped
// armholes, side seams and a waist that dips at the centre front.
func cowl() []r2.Vec {
	half := []r2.Vec{{X: 0, Y: -0.02}, {X: 0.24, Y: 0}, {X: 0.26, Y: 0.21}}
	for k := range 12 { // armhole: a quarter circle, hollow
		s, c := math.Sincos(float64(k+1) / 13 * math.Pi / 2)
		half = append(half, r2.Vec{X: 0.26 - 0.05*s, Y: 0.21 + 0.14*(1-c)})
	}
	half = append(half, r2.Vec{X: 0.21, Y: 0.35}, r2.Vec{X: 0.17, Y: 0.47})
	out := slices.Clone(half)
	for k := len(half) - 1; k > 0; k-- {
		out = append(out, r2.Vec{X: -half[k].X, Y: half[k].Y})
	}
	return out
}

// figures returns area, centre of mass and perimeter of a polygon by Green's
// theorem, from its first corner so that no digits are lost.
func figures(p []r2.Vec) (area float64, centre r2.Vec, perimeter float64) {
	o := p[0]
	for k := range p {
		a, b := r2.Sub(p[k], o), r2.Sub(p[(k+1)%len(p)], o)
		c := r2.Cross(a, b)
		area += c / 2
		centre = r2.Add(centre, r2.Scale(c/6, r2.Add(a, b)))
		perimeter += r2.Norm(r2.Sub(b, a))
	}
	return area, r2.Add(o, r2.Scale(1/area, centre)), perimeter
}

// star draws a polygon of 3–12 corners round a point; spread below 0.3 of the
// radius keeps most of them convex, more makes deep re-entrant corners.
func star(t *rapid.T) []r2.Vec {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	deep := rapid.Float64Range(0, 0.8).Draw(t, "deep")
	at := r2.Vec{X: rapid.Float64Range(-0.1, 0.1).Draw(t, "x"), Y: rapid.Float64Range(-0.1, 0.1).Draw(t, "y")}
	out := make([]r2.Vec, n)
	for k := range out {
		a := 2 * math.Pi * (float64(k) + rapid.Float64Range(0, 0.7).Draw(t, "turn")) / float64(n)
		r := 0.1 * (1 - deep*rapid.Float64Range(0, 1).Draw(t, "in"))
		s, c := math.Sincos(a)
		out[k] = r2.Vec{X: at.X + r*c, Y: at.Y + r*s}
	}
	return out
}

// turned draws a grain angle and spacing.
func turned(t *rapid.T) Options {
	return Options{
		Spacing: rapid.Float64Range(0.004, 0.012).Draw(t, "spacing"),
		Grain:   rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "grain"),
		Origin:  r2.Vec{X: rapid.Float64Range(-0.01, 0.01).Draw(t, "ox")},
	}
}

// each cuts every fixed outline at every grain and spacing.
func each(t *testing.T, f func(t *testing.T, k int, l *Lattice)) {
	n := 0
	for k, o := range outlines {
		for _, g := range grains {
			for _, h := range []float64{0.008, 0.005} {
				t.Run(fmt.Sprintf("%s/%g/%g", o.name, g, h), func(t *testing.T) {
					l, err := Cut(o.points, Options{Spacing: h, Grain: g * math.Pi / 180})
					if err != nil {
						t.Fatalf("Cut(%s, %g m, %g°) = %v, want no error", o.name, h, g, err)
					}
					f(t, k, l)
				})
				n++
			}
		}
	}
	if want := len(outlines) * len(grains) * 2; n != want {
		t.Fatalf("%d cases, want %d", n, want)
	}
}
