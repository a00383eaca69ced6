package surface

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The end of a facing that is folded over, and was pinned 3 mm farther out than
// the edge of the front, is drawn inside that edge, to a quarter of the width of its rim.
func TestFacingEndsUnderTheFront(t *testing.T) {
	const half, out = 0.1, 0.003
	for _, g := range grains {
		s := clothAt(t, rect(2*half, -0.15, 0.05), g, nil, func(q r2.Vec) r3.Vec {
			p := hairpin(0.0012)(q)
			if q.Y > 0 {
				p.X *= 1 + out/half
			}
			return p
		})
		peeps := func(s *mesh.Sheet) (far float64, n int) {
			for k, tri := range s.Tris {
				for _, v := range tri {
					if s.Facing[k] && s.Flat[v].Y > 0.008 {
						far, n = max(far, math.Abs(s.Pos[v].X)-half), n+1
					}
				}
			}
			return far, n
		}
		if far, _ := peeps(&s); far < 0.9*out {
			t.Fatalf("grain %.2f: the facing peeps out by %.2f mm before it is drawn, want %.1f", g, 1e3*far, 1e3*out)
		}
		smooth := Smooth(s, Options{})
		if far, n := peeps(&smooth.Sheet); n < 1000 || far > 0.0003 {
			t.Errorf("grain %.2f: the facing is drawn %.2f mm beyond the front, want 0.3 at most, over %d corners", g, 1e3*far,
				n)
		}
	}
}

// Beside the cowl point the facing is clipped free, and what is left of the
// front there, a cell and a half, lies anyhow. The neckline is drawn as one smooth
// line from cowl point to cowl point; it turns by 3 mm over a cell and a half.
func TestFoldLineRunsToTheCowlPoint(t *testing.T) {
	const half, clip = 0.1, 0.012
	outline := []r2.Vec{{X: -half, Y: -0.15}, {X: half, Y: -0.15}, {X: half}, {X: half - clip}, {X: half - clip, Y: clip},
		{X: half, Y: clip}, {X: half, Y: 0.05}, {X: -half, Y: 0.05}, {X: -half, Y: clip}, {X: clip - half, Y: clip},
		{X: clip - half}, {X: -half}}
	for _, g := range grains {
		s := clothAt(t, outline, g, nil, hairpin(0.0012))
		for i, q := range s.Flat {
			if d := half - math.Abs(q.X); d > 0.001 && d < clip-0.001 && math.Abs(q.Y) < 1e-9 {
				s.Pos[i].Y += 0.003 // the jog of the lattice
			}
		}
		smooth := Smooth(s, Options{})
		b := split(smooth.Sheet, 0, make([]bool, len(smooth.Pos)))
		n, worst := 0, 0.0
		for _, line := range b.network().lines(b) {
			from, to := b.flat[line[0]], b.flat[line[len(line)-1]]
			if from.X*to.X > 0 || math.Min(math.Abs(from.X), math.Abs(to.X)) < half-0.001 ||
				math.Abs(from.Y)+math.Abs(to.Y) > 1e-6 {
				continue // not from cowl point to cowl point
			}
			was := r3.Vec{}
			for k := 1; k < len(line); k++ {
				d := r3.Sub(b.pos[line[k]], b.pos[line[k-1]])
				if r3.Norm(d) < 0.0005 {
					continue
				}
				if was != (r3.Vec{}) {
					n++
					worst = max(worst, math.Acos(min(1, r3.Dot(d, was)/r3.Norm(d)/r3.Norm(was))))
				}
				was = d
			}
		}
		if deg := worst * 180 / math.Pi; n < 60 || deg > 10 {
			t.Errorf("grain %.2f: the neckline turns by %.1f° at worst from one of %d drawn edges to the next, want 60 or "+
				"more within 10°", g, deg, n)
		}
	}
}
