package fold

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Crests and valleys of a sine on 10 mm, at three grains and with the lattice
// shifted by 16 ways against CF and edge. Read at crossings of the section,
// places are off by up to 6 mm and depths by 3. A crest between two crossings
// can only be guessed where its radius, wave²/4π²a, is well below the spacing.
func TestBelowTheCell(t *testing.T) {
	const cell, tol = 10e-3, 1e-3
	for _, tt := range []struct {
		c     sine
		depth float64 // tolerance, m; places have tol
	}{
		{sine{0.01, 0.08}, 0.15e-3}, // radius 16 mm
		{sine{0.02, 0.08}, 0.8e-3},  // 8 mm
		{sine{0.01, 0.1}, 0.1e-3},
		{sine{0.02, 0.1}, 0.3e-3},
		{sine{0.03, 0.1}, 0.8e-3}, // 8 mm
		{sine{0.01, 0.12}, 0.1e-3},
		{sine{0.02, 0.12}, 0.1e-3},
		{sine{0.04, 0.12}, 0.5e-3}, // 9 mm
		{sine{0.01, 0.16}, 0.1e-3},
		{sine{0.04, 0.16}, 0.15e-3},
		{sine{0.04, 0.2}, 0.1e-3},
		{sine{0.03, 0.08}, 1.3e-3}, // 5 mm: half the spacing
		{sine{0.04, 0.08}, 2e-3},   // 4 mm
	} {
		wave, on := tt.c.arc(tt.c.wave), tt.c.over(1)
		for _, grain := range []float64{0, 22.5, 45} {
			for k := range 16 {
				p := strip{half: 0.05, length: 2 * wave, facing: 0.03, cell: cell, cut: &grid{
					grain * math.Pi / 180, r2.Vec{X: cell * float64(k%4) / 4, Y: cell * float64(k/4) / 4}}}
				r, err := Read(p.onLattice(func(x, s float64) r3.Vec { return on(x, math.Abs(s)) }), p.frame())
				if err != nil || len(r.Folds) != 2 {
					t.Errorf("Read(%v, %g°, shift %v): %d folds, %v; want 2", tt.c, grain, p.cut.shift, len(r.Folds), err)
					continue
				}
				for i, fd := range r.Folds {
					at := float64(i) + 0.5
					if !near(fd.CF, at*wave, tol) || !near(fd.Height, -at*tt.c.wave, tol) || !near(fd.Depth, 2*tt.c.a, tt.depth) {
						t.Errorf("Read(%v, %g°, shift %v): fold %d at %.5f, height %.5f, depth %.5f; want %.5f, %.5f ± %g, %.5f ± %g",
							tt.c, grain, p.cut.shift, i, fd.CF, fd.Height, fd.Depth, at*wave, -at*tt.c.wave, tol, 2*tt.c.a, tt.depth)
					}
				}
				if a, b := r.Folds[0].After, r.Folds[1].Before; a != b || !near(a.S, wave, tol) ||
					!near(a.At.X, -tt.c.a, tt.depth) {
					t.Errorf("Read(%v, %g°, shift %v): valley %v after, %v before; want at %.5f, %.5f back, ± %g, %g",
						tt.c, grain, p.cut.shift, a, b, wave, tt.c.a, tol, tt.depth)
				}
			}
		}
	}
}

// Whatever the cloth, patches find no crest that the section has not, keep
// their order, and stay within a cell's diagonal of it.
func TestSummitsKeepToTheSection(t *testing.T) {
	summits := 0
	rapid.Check(t, func(t *rapid.T) {
		p := strip{half: 0.05, length: 0.3, facing: 0.03, cell: 10e-3,
			cut: &grid{rapid.Float64Range(0, math.Pi/2).Draw(t, "grain"),
				r2.Vec{Y: rapid.Float64Range(0, 10e-3).Draw(t, "shift")}}}
		rough := rapid.Float64Range(0, 8e-3).Draw(t, "rough")
		noise := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		on := sine{rapid.Float64Range(0, 0.04).Draw(t, "a"), rapid.Float64Range(0.03, 0.15).Draw(t, "wave")}.over(1)
		s := p.onLattice(func(x, s float64) r3.Vec {
			q := on(x, math.Abs(s))
			q.Z += rough*(2*noise.Float64()-1) - min(max(-s, 0), 2e-3)
			return q
		})
		tr, err := traceLine(s, upright, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		pr, err := profileOf(s, tr, p.frame(), line{0, p.cell})
		if err != nil {
			t.Fatal(err)
		}
		have := map[int]bool{}
		for _, c := range crests(pr.ahead, pr.turned) {
			have[c.index] = true
		}
		last := -1.0
		for _, c := range pr.summits() {
			off := math.Abs(c.S - pr.section[c.sample].S)
			if !have[c.sample] || off > math.Sqrt2*p.cell || math.Abs(c.ahead-pr.ahead[c.sample]) > p.cell || c.S <= last {
				t.Errorf("summit %+v after %g, want one of %v, in order", c, last, have)
			}
			if c.before.S > c.S || c.after.S <= c.S || c.ahead-max(c.before.ahead, c.after.ahead) < 0 {
				t.Errorf("summit %+v: want its valleys beside it, and lower", c)
			}
			last = c.S
			summits++
		}
	})
	least := 100
	if testing.Short() {
		least = 30 // a fifth of the sheets is drawn
	}
	if summits < least {
		t.Errorf("%d summits in all, want %d or more", summits, least)
	}
}
