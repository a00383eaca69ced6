package surface

import (
	"math"
	"reflect"
	"testing"

	"cowl/mesh"
	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rect is an outline of w × h m below and above the flat origin.
func rect(w, low, high float64) []r2.Vec {
	return []r2.Vec{{X: -w / 2, Y: low}, {X: w / 2, Y: low}, {X: w / 2, Y: high}, {X: -w / 2, Y: high}}
}

// clothAt is the outline cut on a lattice of 8 mm, its crossings laid by at.
func clothAt(t *testing.T, outline []r2.Vec, grain float64, slits []lattice.Slit, at func(r2.Vec) r3.Vec) mesh.Sheet {
	t.Helper()
	l, err := lattice.Cut(outline, lattice.Options{Spacing: 0.008, Grain: grain, Slits: slits})
	if err != nil {
		t.Fatal(err)
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = at(q)
	}
	return l.Skin().Sheet(pos, 0)
}

// roll wraps the flat without stretch round a cylinder of radius r along X.
func roll(r float64) func(r2.Vec) r3.Vec {
	return func(q r2.Vec) r3.Vec {
		sin, cos := math.Sincos(q.Y / r)
		return r3.Vec{X: q.X, Y: r * sin, Z: r * cos}
	}
}

// hairpin folds the flat at Y = 0 over a half cylinder of radius r.
func hairpin(r float64) func(r2.Vec) r3.Vec {
	half := math.Pi * r / 2
	return func(q r2.Vec) r3.Vec {
		switch {
		case q.Y < -half:
			return r3.Vec{X: q.X, Y: q.Y + half, Z: r}
		case q.Y > half:
			return r3.Vec{X: q.X, Y: half - q.Y, Z: -r}
		}
		sin, cos := math.Sincos((q.Y + half) / r)
		return r3.Vec{X: q.X, Y: r * sin, Z: r * cos}
	}
}

var grains = []float64{0, 0.3, math.Pi / 6, math.Pi / 4, math.Pi / 2}

// A flat sheet stays flat to 10 µm, at every grain, with the outline where
// it was cut.
func TestFlatStaysFlat(t *testing.T) {
	for _, g := range grains {
		s := clothAt(t, rect(0.2, -0.15, 0.05), g, nil, func(q r2.Vec) r3.Vec { return r3.Vec{X: q.X, Y: q.Y} })
		out := Smooth(s, Options{})
		for i, p := range out.Pos {
			if d := r3.Norm(r3.Sub(p, r3.Vec{X: out.Flat[i].X, Y: out.Flat[i].Y})); d > 1e-5 {
				t.Fatalf("grain %.2f: vertex %d lies %g m off the plane", g, i, d)
			}
			if d := r3.Norm(r3.Sub(out.Normal[i], r3.Vec{Z: 1})); d > 1e-6 {
				t.Fatalf("grain %.2f: vertex %d has the normal %v, want +Z", g, i, out.Normal[i])
			}
		}
		if len(out.Pos) < 4*len(s.Pos) {
			t.Errorf("grain %.2f: %d vertices of %d, want at least 4 times as many", g, len(out.Pos), len(s.Pos))
		}
	}
}

// On a roll of 20 mm the chords of an 8 mm lattice miss the cylinder by h²/8r
// along the yarns and twice that along a diagonal. The smooth surface must
// come ten times closer, and its normals within 2°.
func TestRoll(t *testing.T) {
	const r, h = 0.020, 0.008
	for _, g := range grains {
		s := clothAt(t, rect(0.2, -0.025, 0.025), g, nil, roll(r))
		out := Smooth(s, Options{FoldY: 1})
		off, turn := 0.0, 0.0
		for i, p := range out.Pos {
			if q := out.Flat[i]; math.Abs(q.X) > 0.09 || math.Abs(q.Y) > 0.016 {
				continue // the outline is smoothed
			}
			off = max(off, math.Abs(math.Hypot(p.Y, p.Z)-r))
			turn = max(turn, math.Acos(min(1, r3.Dot(out.Normal[i], r3.Unit(r3.Vec{Y: p.Y, Z: p.Z})))))
		}
		if chord := h * h / (8 * r); off > chord/5 || turn > 2*math.Pi/180 {
			t.Errorf("grain %.2f: %.3f mm off a roll that chords of yarns miss by %.3f mm, normals by %.2f°", g, off*1e3,
				chord*1e3, turn*180/math.Pi)
		}
	}
}

// Crossings that lie farther from outline and fold line than they are let go
// along with lie on the surface.
func TestThroughCrossings(t *testing.T) {
	s := clothAt(t, rect(0.2, -0.15, 0.05), math.Pi/4, nil, hairpin(0.004))
	out := Smooth(s, Options{})
	n := 0
	for i, q := range s.Flat {
		if math.Abs(q.X) > 0.1-0.008 || q.Y < -0.15+0.008 || q.Y > 0.05-0.008 || math.Abs(q.Y) < 0.005 {
			continue
		}
		n++
		if out.Pos[i] != s.Pos[i] {
			t.Errorf("the crossing at %v mm is drawn %g mm off", r2.Scale(1e3, q), 1e3*r3.Norm(r3.Sub(out.Pos[i], s.Pos[i])))
		}
	}
	if n < 300 {
		t.Errorf("looked at %d crossings, want 300 or more", n)
	}
}

// The fold line of a hairpin of r = 1.2 mm is drawn straight, to what going on
// straight from crossings before the roll overshoots it by, (π/2 − 1)·r = 0.7 mm,
// and half as much for fitting. On the lattice at 45° it goes up and down by half
// a diagonal, 5.7 mm.
func TestFoldLineIsStraight(t *testing.T) {
	for _, g := range grains {
		s := clothAt(t, rect(0.2, -0.15, 0.05), g, nil, hairpin(0.0012))
		out := Smooth(s, Options{})
		low, high, n := math.Inf(1), math.Inf(-1), 0
		for i, q := range out.Flat {
			if math.Abs(q.Y) < 1e-9 && math.Abs(q.X) < 0.09 {
				low, high, n = min(low, out.Pos[i].Y), max(high, out.Pos[i].Y), n+1
			}
		}
		if n < 40 || high-low > 0.00105 {
			t.Errorf("grain %.2f: %d places of the fold line lie %.2f mm apart in height, want 40 or more within 1.05", g, n,
				1e3*(high-low))
		}
		for k, tri := range out.Tris {
			for _, v := range tri {
				if y := out.Flat[v].Y; out.Facing[k] && y < -near*0.008 || !out.Facing[k] && y > near*0.008 {
					t.Fatalf("grain %.2f: a triangle with facing %v reaches to y = %g m", g, out.Facing[k], y)
				}
			}
		}
	}
}

// The outline of cloth on a roll turns from one drawn edge to the next by no
// more than its chords must, at every grain, though cells are cut at random.
func TestOutlineIsSmooth(t *testing.T) {
	const r = 0.06
	for _, g := range grains {
		s := clothAt(t, rect(0.2, -0.08, 0.08), g, nil, func(q r2.Vec) r3.Vec {
			p := roll(r)(q)
			noise := math.Sin(7919*q.X+104729*q.Y) * 0.0003 // crossings beyond the outline lie anyhow
			return r3.Add(p, r3.Vec{X: noise, Y: noise, Z: noise})
		})
		out := Smooth(s, Options{FoldY: 1})
		b := split(out.Sheet, 1, make([]bool, len(out.Pos)))
		worst, n := 0.0, 0
		for _, line := range b.network().lines(b) {
			for k := 2; k < len(line)-2; k++ {
				d := r3.Sub(b.pos[line[k]], b.pos[line[k-1]])
				e := r3.Sub(b.pos[line[k+1]], b.pos[line[k]])
				if r3.Norm(d) < 0.0005 || r3.Norm(e) < 0.0005 {
					continue
				}
				n++
				worst = max(worst, math.Acos(min(1, r3.Dot(r3.Unit(d), r3.Unit(e)))))
			}
		}
		if deg := worst * 180 / math.Pi; n < 200 || deg > 8 {
			t.Errorf("grain %.2f: the outline turns by %.1f° at worst over %d places", g, deg, n)
		}
	}
}

// Two layers 0.6 mm apart that bend across each other's chords do not pass
// through each other when drawn.
func TestLayersStayApart(t *testing.T) {
	s := clothAt(t, rect(0.2, -0.1, 0.1), math.Pi/4, nil, func(q r2.Vec) r3.Vec {
		p := hairpin(0.0003)(q)
		p.Z += 0.002 * math.Sin(2*math.Pi*q.X/0.023)
		return p
	})
	b := split(s, 0, make([]bool, len(s.Pos)))
	b.fair()
	soft := make([]float64, len(b.pos))
	for i := range soft {
		soft[i] = 1
	}
	bare := b.tessellate(b.gradients(b.all()), most)
	bare.lay(soft, b.every())
	if hit := b.crossed(newSweep(&bare.out, most*most), b.every()); len(hit) == 0 {
		t.Fatal("the layers do not meet even if nothing is done about it")
	}
	out, hit := b.apart(b.gradients(b.all()), most)
	for range stiffenings {
		if len(hit) == 0 {
			break
		}
		b.stiffen(hit)
		b = split(s, 0, b.stiff)
		b.fair()
		out, hit = b.apart(b.gradients(b.all()), most)
	}
	if hit := b.crossed(newSweep(&out, most*most), b.every()); len(hit) > 0 {
		t.Errorf("%d triangles of drawn layers pass through each other", len(hit))
	}
}

// The lips of a slit are outlines of their own: pulled apart they show a gap.
func TestSlitGapes(t *testing.T) {
	slit := []lattice.Slit{{From: r2.Vec{Y: -0.2}, To: r2.Vec{Y: -0.05}}}
	s := clothAt(t, rect(0.2, -0.15, 0.05), math.Pi/4, slit, func(q r2.Vec) r3.Vec { return r3.Vec{X: q.X, Y: q.Y} })
	out := Smooth(s, Options{FoldY: 1})
	n := 0
	seen := map[r2.Vec]bool{}
	for _, q := range out.Flat {
		if q.Y < -0.08 && math.Abs(q.X) < 0.001 {
			if seen[r2.Vec{X: math.Round(q.X * 1e8), Y: math.Round(q.Y * 1e8)}] {
				n++
			}
			seen[r2.Vec{X: math.Round(q.X * 1e8), Y: math.Round(q.Y * 1e8)}] = true
		}
	}
	if n < 20 {
		t.Errorf("%d places of the slit are there on both its sides, want 20 or more", n)
	}
}

func TestSmoothRepeats(t *testing.T) {
	s := clothAt(t, rect(0.2, -0.15, 0.05), math.Pi/6, nil, hairpin(0.0012))
	if a, b := Smooth(s, Options{}), Smooth(s, Options{}); !reflect.DeepEqual(a, b) {
		t.Error("two surfaces through one sheet differ")
	}
	if out := Smooth(mesh.Sheet{}, Options{}); len(out.Tris) != 0 {
		t.Errorf("Smooth of nothing has %d triangles", len(out.Tris))
	}
}

// Values that are linear in the flat are carried over as they are.
func TestCarry(t *testing.T) {
	linear := func(q r2.Vec) float64 { return 3*q.X - 2*q.Y + 1 }
	s := clothAt(t, rect(0.2, -0.15, 0.05), math.Pi/6, nil, hairpin(0.0012))
	values := make([]float64, len(s.Flat))
	for i, q := range s.Flat {
		values[i] = linear(q)
	}
	out := Smooth(s, Options{})
	got := out.Carry(values)
	if len(got) != len(out.Pos) {
		t.Fatalf("Carry gave %d values for %d vertices", len(got), len(out.Pos))
	}
	for i, q := range out.Flat { // what counts as on the fold line is put on it
		if d := math.Abs(got[i] - linear(q)); d > 2*near*0.008 {
			t.Fatalf("vertex %d at %v has %g, want %g", i, q, got[i], linear(q))
		}
	}
}

// Crossings of a flat sheet that lie up and down by 0.05 mm in turn are places of
// a wave whose normals tilt by 0.05 mm · π / 8 mm = 1.1°, which lays beads of
// light on satin. The surface has them tilt by about half of that at most.
func TestNormalsAreCalm(t *testing.T) {
	s := clothAt(t, rect(0.2, -0.15, 0.05), math.Pi/4, nil, func(q r2.Vec) r3.Vec {
		u, v := (q.X+q.Y)/math.Sqrt2/0.008, (q.X-q.Y)/math.Sqrt2/0.008
		return r3.Vec{X: q.X, Y: q.Y, Z: 0.00005 * math.Cos(math.Pi*u) * math.Cos(math.Pi*v)}
	})
	out := Smooth(s, Options{FoldY: 1})
	worst, n := 0.0, 0
	for i, q := range out.Flat {
		if math.Abs(q.X) < 0.08 && q.Y > -0.13 && q.Y < 0.03 {
			worst, n = max(worst, math.Acos(min(1, out.Normal[i].Z))*180/math.Pi), n+1
		}
	}
	if n < 1000 || worst > 0.6 {
		t.Errorf("normals tilt by %.2f° at worst over %d places, want 0.6 at most over 1000 or more", worst, n)
	}
}
