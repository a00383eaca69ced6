package fold

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestFoldsOfSine(t *testing.T) {
	for _, tt := range []struct {
		name    string
		c       sine
		waves   int
		cell    float64
		bias    bool
		depth   float64 // tolerance, m
		radiusR float64 // tolerance, share of the radius
	}{
		{"three shallow", sine{0.01, 0.12}, 3, 5e-3, false, 2e-4, 0.05},
		{"three deep", sine{0.02, 0.12}, 3, 5e-3, false, 3e-4, 0.15},
		{"three deep, fine", sine{0.02, 0.12}, 3, 2.5e-3, false, 1e-4, 0.05},
		{"two deep, on the bias", sine{0.02, 0.15}, 2, 5e-3, true, 3e-4, 0.06},
		{"two deep, on the bias, coarse", sine{0.02, 0.15}, 2, 10e-3, true, 1e-3, 0.15},
		{"five just over the least depth", sine{0.0028, 0.06}, 5, 3e-3, false, 1e-4, 0.08},
	} {
		t.Run(tt.name, func(t *testing.T) {
			wave := tt.c.arc(tt.c.wave)
			length := math.Round(wave*float64(tt.waves)/tt.cell) * tt.cell
			p := strip{half: 0.05, length: length, cell: tt.cell, bias: tt.bias}
			f := p.frame()
			f.BustY = -1.5 * tt.c.wave
			got, err := Read(p.onLattice(tt.c.over(length+0.1)), f)
			if err != nil {
				t.Fatal(err)
			}
			if len(got.Folds) != tt.waves || got.Count+got.CountBelow != tt.waves {
				t.Fatalf("Read: %d folds (%d + %d), want %d", len(got.Folds), got.Count, got.CountBelow, tt.waves)
			}
			radius := tt.c.wave * tt.c.wave / (4 * math.Pi * math.Pi * tt.c.a)
			for i, fd := range got.Folds {
				if want := 2 * tt.c.a; !near(fd.Depth, want, tt.depth) {
					t.Errorf("fold %d: depth %.5f, want %.5f", i, fd.Depth, want)
				}
				if want := (float64(i) + 0.5) * wave; !near(fd.CF, want, tt.cell/2+step) {
					t.Errorf("fold %d: %.4f m down CF, want %.4f", i, fd.CF, want)
				}
				if want := -(float64(i) + 0.5) * tt.c.wave; !near(fd.Height, want, tt.cell/2+step) || fd.Height != fd.At.Y {
					t.Errorf("fold %d: height %.4f, At %v, want %.4f", i, fd.Height, fd.At, want)
				}
				if !near(fd.Radius, radius, tt.radiusR*radius) {
					t.Errorf("fold %d: radius %.5f, want %.5f ± %g", i, fd.Radius, radius, tt.radiusR)
				}
			}
			if !near(got.Forward, tt.c.a, tt.depth) {
				t.Errorf("Forward %.5f, want %.5f", got.Forward, tt.c.a)
			}
			if !near(got.CFGrowth, 0, 0.01) || got.CFGrowth > 1e-6 {
				t.Errorf("CFGrowth %.5f, want chords just under 0", got.CFGrowth)
			}
		})
	}
}

func TestZones(t *testing.T) {
	c := sine{0.02, 0.12}
	p := strip{half: 0.05, length: 0.5, cell: 5e-3}
	s := p.onLattice(c.over(1)) // crests at heights −0.06, −0.18, −0.30 ...
	for _, tt := range []struct {
		bust         float64
		above, below int
	}{{1, 0, 3}, {-0.12, 1, 2}, {-0.24, 2, 1}, {-1, 3, 0}} {
		f := p.frame()
		f.BustY = tt.bust
		r, err := Read(s, f)
		if err != nil || r.Count != tt.above || r.CountBelow != tt.below {
			t.Errorf("Read, bust at %g: %d above, %d below, %v; want %d, %d", tt.bust, r.Count, r.CountBelow, err, tt.above,
				tt.below)
		}
		for i, fd := range r.Folds {
			if want := map[bool]Zone{true: AboveBust, false: BelowBust}[i < tt.above]; fd.Zone != want {
				t.Errorf("bust at %g: fold %d %q, want %q", tt.bust, i, fd.Zone, want)
			}
		}
		if (r.FoldRadius > 0) != (tt.above > 0) {
			t.Errorf("bust at %g: FoldRadius %g with %d folds above", tt.bust, r.FoldRadius, tt.above)
		}
	}
}

func TestNoFolds(t *testing.T) {
	p := strip{half: 0.05, length: 0.36, facing: 0.05, cell: 5e-3}
	ripple := sine{0.002, 0.06} // 4 mm deep
	lean := func(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -0.8 * s, Z: -0.6 * s} }
	for name, place := range map[string]func(x, s float64) r3.Vec{
		"flat": flat, "leaning forward": lean, "4 mm ripples": ripple.over(1),
		"leaning back": func(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -0.8 * s, Z: 0.6 * s} },
	} {
		q := p
		if name == "4 mm ripples" {
			q.facing = 0
		}
		r, err := Read(q.onLattice(place), q.frame())
		if err != nil || len(r.Folds) != 0 || r.Kinks != 0 || r.FoldRadius != 0 {
			t.Errorf("Read(%s): folds %v, kinks %d, radius %g, %v; want none", name, r.Folds, r.Kinks, r.FoldRadius, err)
		}
	}
}

// Folds that overhang pass the same height three times and are still one each.
func TestFoldsOfMeander(t *testing.T) {
	for _, tt := range []struct {
		name  string
		swing float64 // degrees
		waves int
		tol   float64 // depth, m
		share float64 // radius
	}{
		{"upright", 60, 3, 3e-4, 0.05},
		{"just level", 90, 3, 3e-4, 0.05},
		{"overhang", 100, 3, 3e-4, 0.05},
		{"deep overhang", 115, 4, 3e-4, 0.06},
	} {
		m := meander{tt.swing * math.Pi / 180, 0.16}
		length := float64(tt.waves) * m.wave
		p := strip{half: 0.05, length: length, cell: 4e-3}
		// Started at a turn back (heading 0 on the way forward) the ends are valleys.
		r, err := Read(p.onLattice(m.over(length)), p.frame())
		if err != nil || len(r.Folds) != tt.waves {
			t.Errorf("Read(%s): %d folds, %v; want %d", tt.name, len(r.Folds), err, tt.waves)
			continue
		}
		for i, fd := range r.Folds {
			if !near(fd.Depth, m.depth(), tt.tol) {
				t.Errorf("%s: fold %d: depth %.5f, want %.5f", tt.name, i, fd.Depth, m.depth())
			}
			if want := m.wave / (2 * math.Pi * m.swing); !near(fd.Radius, want, tt.share*want) {
				t.Errorf("%s: fold %d: radius %.5f, want %.5f", tt.name, i, fd.Radius, want)
			}
		}
		// The fall of a meander is its length times J0(swing).
		last := r.Section[len(r.Section)-1]
		if want := -length * math.J0(m.swing); !near(last.At.Y, want, 1e-3) || !near(last.S, length, 1e-9) {
			t.Errorf("%s: section ends at s %.4f, y %.4f; want %.4f, %.4f", tt.name, last.S, last.At.Y, length, want)
		}
	}
}

// A cosine that starts on its crest: the edge is the first roll if the facing
// turns inside, and a mere end if it is raw or its facing stands up.
func TestRolledEdge(t *testing.T) {
	const a, wave, length = 0.02, 0.16, 0.4
	c := sine{-a, wave}
	on := c.over(1)
	inside := func(x, s float64) r3.Vec {
		p := on(x, math.Abs(s))
		p.Z -= min(max(-s, 0), 2e-3)
		return p
	}
	upright := func(x, s float64) r3.Vec {
		if s < 0 {
			return r3.Vec{X: x, Y: -s * 0.9, Z: a - s*0.1}
		}
		return on(x, s)
	}
	for _, tt := range []struct {
		name   string
		facing float64
		place  func(x, s float64) r3.Vec
		want   int // folds, of which the first at the edge if rolled
		rolled bool
	}{
		{"raw edge", 0, on, 2, false},
		{"facing inside", 0.05, inside, 3, true},
		{"facing standing up", 0.05, upright, 2, false},
	} {
		p := strip{half: 0.05, length: length, facing: tt.facing, cell: 5e-3}
		r, err := Read(p.onLattice(tt.place), p.frame())
		if err != nil || len(r.Folds) != tt.want || r.Folds[0].Rolled != tt.rolled {
			t.Errorf("Read(%s): %+v, %v; want %d folds, rolled %v", tt.name, r.Folds, err, tt.want, tt.rolled)
			continue
		}
		if fd := r.Folds[0]; tt.rolled && (fd.CF != 0 || !near(fd.Depth, 2*a, 5e-4)) {
			t.Errorf("%s: edge fold at %g, depth %.5f; want 0, %.5f", tt.name, fd.CF, fd.Depth, 2*a)
		}
	}
}

func TestLine(t *testing.T) {
	// Depth grows to the wearer's left: 2·a·(1 + x/half); the cloth is stretched
	// to make it so, which the reading does not mind.
	const a, wave, half = 0.02, 0.1, 0.1
	p := strip{half: half, length: 0.3, cell: 5e-3}
	s := p.onLattice(func(x, s float64) r3.Vec {
		return r3.Vec{X: x, Y: -s, Z: -a * (1 + x/half) * math.Cos(2*math.Pi*s/wave)}
	})
	for _, x := range []float64{-0.05, 0, 0.0312, 0.05, half} {
		c, err := Line(s, p.frame(), x)
		if err != nil || len(c.Folds) != 3 || c.X != x {
			t.Errorf("Line(%g): %d folds, X %g, %v; want 3", x, len(c.Folds), c.X, err)
			continue
		}
		if want := 2 * a * (1 + x/half); !near(c.Folds[1].Depth, want, 1e-3) || !near(c.Forward, want/2, 5e-4) {
			t.Errorf("Line(%g): depth %.5f, forward %.5f; want %.5f, %.5f", x, c.Folds[1].Depth, c.Forward, want, want/2)
		}
	}
	for _, x := range []float64{half + 1e-3, -1, math.NaN()} {
		if _, err := Line(s, p.frame(), x); err == nil {
			t.Errorf("Line(%g): no error, want one beyond ±%g", x, half)
		}
	}
}

// The bridged front is what depths are taken from: a form with the same bumps
// as the cloth leaves no folds.
func TestFrontIsTheDatum(t *testing.T) {
	c := sine{0.02, 0.12}
	p := strip{half: 0.05, length: 0.4, cell: 2.5e-3}
	f := p.frame()
	f.Front = func(y float64) float64 { return -c.a*math.Cos(2*math.Pi*y/c.wave) - 0.012 }
	r, err := Read(p.onLattice(c.over(1)), f)
	if err != nil || len(r.Folds) != 0 || !near(r.Forward, 0.012, 3e-4) {
		t.Errorf("Read: %d folds, forward %.5f, %v; want 0, 0.012", len(r.Folds), r.Forward, err)
	}
}
