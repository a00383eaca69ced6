package contact

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hairpin returns a strip folded flat onto itself, its layers a distance apart,
// turned at grain.
func hairpin(t testing.TB, grain, gap float64) (*lattice.Lattice, []r3.Vec) {
	t.Helper()
	strip := []r2.Vec{{X: -0.015, Y: -0.05}, {X: 0.015, Y: -0.05}, {X: 0.015, Y: 0.05}, {X: -0.015, Y: 0.05}}
	l, err := lattice.Cut(strip, lattice.Options{Spacing: 0.005, Grain: grain})
	if err != nil {
		t.Fatal(err)
	}
	pos := make([]r3.Vec, len(l.Rest))
	turn := math.Pi * gap / 2 // length of cloth in the bend
	for i, p := range l.Rest {
		switch {
		case p.Y > turn/2:
			pos[i] = r3.Vec{X: p.X, Y: turn/2 - p.Y, Z: gap}
		case p.Y < -turn/2:
			pos[i] = r3.Vec{X: p.X, Y: p.Y + turn/2}
		default:
			s, c := math.Sincos(math.Pi * p.Y / turn)
			pos[i] = r3.Vec{X: p.X, Y: gap / 2 * c, Z: gap / 2 * (1 + s)}
		}
	}
	return l, pos
}

// addSelf lists what is due and adds both halves.
func addSelf(s *Self, x, force []r3.Vec, mass []float64, motion float64) {
	sum := make([]Sum, len(x))
	s.Ready(x, motion, nil)
	s.Add(0, x, sum, motion)
	s.Add(1, x, sum, motion)
	for i := range sum {
		force[i], mass[i] = r3.Add(force[i], sum[i].Force), mass[i]+sum[i].Mass
	}
}

// Two layers closer than the gap are pushed straight apart, as hard one way as
// the other; forces between parts of one cloth add up to nothing and turn nothing.
func TestLayersPushApart(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	n := 0
	for _, grain := range []float64{0, 0.5, math.Pi / 4} {
		l, pos := hairpin(t, grain, 0.0012)
		for i := range pos {
			pos[i] = r3.Add(pos[i], r3.Scale(1e-4, r3.Vec{X: r.Float64(), Y: r.Float64(), Z: r.Float64()}))
		}
		force, mass := make([]r3.Vec, len(pos)), make([]float64, len(pos))
		addSelf(NewSelf(l, 0.002, 25), pos, force, mass, 0)
		var sum, turn r3.Vec
		var most float64
		for i, f := range force {
			sum, turn = r3.Add(sum, f), r3.Add(turn, r3.Cross(pos[i], f))
			most = math.Max(most, r3.Norm(f))
			if f == (r3.Vec{}) || math.Abs(l.Rest[i].Y) < 0.02 || math.Abs(l.Rest[i].Y) > 0.04 {
				continue
			}
			n++
			if upper := l.Rest[i].Y > 0; (f.Z > 0) != upper {
				t.Errorf("grain %.2f: node at %v of the layer at z = %.4f m is pushed %v N, want away from the other", grain,
					l.Rest[i], pos[i].Z, f)
			}
			if mass[i] <= 0 {
				t.Errorf("grain %.2f: node at %v is pushed but gains no mass", grain, l.Rest[i])
			}
		}
		if r3.Norm(sum) > 1e-12*most*float64(len(pos)) || r3.Norm(turn) > 1e-12*most*float64(len(pos)) {
			t.Errorf("grain %.2f: forces between layers add up to %v N and turn by %v N·m, want 0", grain, sum, turn)
		}
	}
	if n < 50 {
		t.Errorf("%d nodes pushed, want a hundred", n)
	}
}

// Layers farther apart than the gap feel nothing, nor does flat cloth.
func TestLayersApartFeelNothing(t *testing.T) {
	l, pos := hairpin(t, 0.5, 0.008)
	flat := make([]r3.Vec, len(pos))
	for i, p := range l.Rest {
		flat[i] = r3.Vec{X: p.X, Y: p.Y}
	}
	for name, x := range map[string][]r3.Vec{"apart": pos, "flat": flat} {
		force, mass := make([]r3.Vec, len(x)), make([]float64, len(x))
		addSelf(NewSelf(l, 0.002, 25), x, force, mass, 0)
		for i := range force {
			if force[i] != (r3.Vec{}) || mass[i] != 0 {
				t.Errorf("%s: node at %v is pushed %v N, want nothing", name, l.Rest[i], force[i])
			}
		}
	}
}

// A pair listed while it was apart is found when the layers come together,
// however the walk went: Add kept over many moves gives what a fresh one gives.
func TestListingKeepsUp(t *testing.T) {
	l, pos := hairpin(t, 0.5, 0.012)
	kept := NewSelf(l, 0.002, 25)
	motion, n := 0.0, 0
	for range 120 {
		far := 0.0
		before := slices.Clone(pos)
		for i, p := range pos {
			if p.Z > 0.006 {
				pos[i].Z -= 1e-4
				far = 1e-4
			}
		}
		if far == 0 {
			for i, p := range pos {
				pos[i].Z = p.Z - 1e-4*p.Z/0.006
			}
			far = 1e-4
		}
		motion += far
		for i, p := range pos {
			kept.Moved(i, r3.Norm(r3.Sub(p, before[i])))
		}
		got, want := make([]r3.Vec, len(pos)), make([]r3.Vec, len(pos))
		addSelf(kept, pos, got, make([]float64, len(pos)), motion)
		addSelf(NewSelf(l, 0.002, 25), pos, want, make([]float64, len(pos)), motion)
		for i := range got {
			if r3.Norm(r3.Sub(got[i], want[i])) > 1e-12 {
				t.Fatalf("after %.1f mm: node %d is pushed %v N, want %v", motion*1000, i, got[i], want[i])
			}
			if want[i] != (r3.Vec{}) {
				n++
			}
		}
	}
	if n < 100 {
		t.Errorf("%d pushed nodes compared, want hundreds", n)
	}
}

// pushed keeps the benchmarked work from being optimised away.
var pushed []Sum

// Contact alone: two layers that lie on each other and stir a little.
func BenchmarkSelf(b *testing.B) {
	for name, mu := range map[string]float64{"smooth": 0, "rubbing": 0.4} {
		b.Run(name, func(b *testing.B) {
			l, pos := hairpin(b, 0.5, 0.0019)
			s := NewSelf(l, 0.002, 25)
			s.Friction = mu
			sum, motion, k := make([]Sum, len(pos)), 0.0, 0
			b.ReportAllocs()
			for b.Loop() {
				const stir = 2e-6 // m
				by := stir * float64(1-2*(k/16%2))
				for i := range pos {
					pos[i].Z += by * float64(i%2)
					s.Moved(i, stir)
				}
				k++
				motion += stir
				clear(sum)
				s.Ready(pos, motion, nil)
				s.Add(0, pos, sum, motion)
				s.Add(1, pos, sum, motion)
			}
			pushed = sum
			b.ReportMetric(float64(len(pos)), "nodes")
		})
	}
}

// At the tip of a slit a yarn goes on in one of two ways and leaves a cell for
// the other. The triangles are those of the cells all the same.
func TestSlitTriangles(t *testing.T) {
	strip := []r2.Vec{{X: -0.03, Y: -0.05}, {X: 0.03, Y: -0.05}, {X: 0.03, Y: 0.05}, {X: -0.03, Y: 0.05}}
	left, pairs := 0, 0
	for k := range 60 {
		to := r2.Vec{X: -0.01 + 0.0003*float64(k), Y: -0.03 + 0.0011*float64(k)}
		l, err := lattice.Cut(strip, lattice.Options{Spacing: 0.005, Grain: 0.4 + 0.01*float64(k),
			Slits: []lattice.Slit{{From: r2.Vec{Y: -0.06}, To: to}}})
		if err != nil {
			t.Fatal(err)
		}
		triangles := map[[3]int32]bool{}
		for i, c := range l.Cell {
			if q := c.Corner; q[0] != lattice.None {
				triangles[[3]int32{q[0], q[1], q[3]}], triangles[[3]int32{q[0], q[3], q[2]}] = true, true
				if l.U[i].Next != q[1] || l.V[i].Next != q[2] {
					left++
				}
			}
		}
		pos := make([]r3.Vec, len(l.Rest))
		for i, p := range l.Rest {
			pos[i] = r3.Vec{X: p.X, Y: math.Abs(p.Y), Z: 0.0005 * p.Y} // folded in two
		}
		s := NewSelf(l, 0.002, 1)
		s.Ready(pos, 0, nil)
		for _, p := range s.pairs {
			if p.edges {
				continue
			}
			pairs++
			if c := [3]int32{p.node[1], p.node[2], p.node[3]}; !triangles[c] {
				t.Fatalf("slit %d: a crossing is held off %v, which is no triangle of a cell", k, c)
			}
		}
	}
	if left == 0 || pairs == 0 {
		t.Errorf("%d yarns left their cell and %d pairs were listed, want some of both", left, pairs)
	}
}
