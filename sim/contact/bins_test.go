package contact

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// near finds the points closer than one side, each once, and no others, for
// clouds, flat sheets and lines, from inside and outside the box.
func TestNear(t *testing.T) {
	found := 0
	var b bins // kept between cases, as Self keeps its own
	rapid.Check(t, func(t *rapid.T) {
		flat := rapid.SampledFrom([]r3.Vec{{X: 1, Y: 1, Z: 1}, {X: 1, Y: 1}, {Z: 1}, {}}).Draw(t, "flat")
		at := make([]r3.Vec, rapid.IntRange(1, 60).Draw(t, "points"))
		for i := range at {
			p := spot(t, "at")
			at[i] = r3.Vec{X: p.X * flat.X, Y: p.Y * flat.Y, Z: p.Z * flat.Z}
		}
		b.fill(at, rapid.Float64Range(0.0005, 0.03).Draw(t, "side"))
		for range 10 {
			p := r3.Scale(rapid.SampledFrom([]float64{1, 1, 3}).Draw(t, "far"), spot(t, "p"))
			var got, want []int32
			b.near(p, func(id int32) { got = append(got, id) })
			for i, q := range at {
				if d := r3.Sub(p, q); d.X*d.X+d.Y*d.Y+d.Z*d.Z < b.size*b.size {
					want = append(want, int32(i))
				}
			}
			found += len(want)
			slices.Sort(got)
			if !slices.Equal(got, want) {
				t.Fatalf("near(%v) of %v, side %g = %v, want %v", p, at, b.size, got, want)
			}
		}
	})
	if found < 1000 {
		t.Errorf("%d points found, want thousands", found)
	}
}

// Cloth that has flown apart, in space or in one plane, gets larger cubes
// instead of all the memory there is.
func TestFillBounded(t *testing.T) {
	for _, far := range []r3.Vec{{X: 1e3, Y: 1e3, Z: 1e3}, {X: 1e3, Y: 1e3}, {X: 1e12}} {
		var b bins
		b.fill([]r3.Vec{{}, far}, 0.001)
		if cubes := b.n[0] * b.n[1] * b.n[2]; cubes < 1 || cubes > 2*mostCubes {
			t.Errorf("fill to %v makes %d cubes, want at most %d", far, cubes, 2*mostCubes)
		}
		n := 0
		b.near(far, func(int32) { n++ })
		if n != 1 {
			t.Errorf("near(%v) finds %d points, want 1", far, n)
		}
	}
}
