package lattice

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// flatten puts the crossings in space at a known affine image of the flat.
func flatten(l *Lattice) []r3.Vec {
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = image(p)
	}
	return pos
}

// image is an affine map of the flat, which weights that sum to 1 must keep.
func image(p r2.Vec) r3.Vec {
	return r3.Vec{X: p.X + 0.3*p.Y + 1, Y: 2*p.Y - 0.1*p.X, Z: 0.7*p.X + 0.2}
}

// wantHeld wants q inside the cloth reproduced by weights in 0..1.
func wantHeld(t interface {
	Helper()
	Errorf(string, ...any)
}, l *Lattice, pos []r3.Vec, q r2.Vec) {
	t.Helper()
	p, ok := l.Locate(q)
	if !ok {
		t.Errorf("Locate(%v) = not held, want held", q)
		return
	}
	sum := 0.0
	for _, w := range p.Weight {
		sum += w
		if w < -1e-9 || w > 1+1e-9 {
			t.Errorf("Locate(%v) weights = %v, want in 0..1", q, p.Weight)
		}
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("Locate(%v) weights sum to %g, want 1", q, sum)
	}
	if d := r3.Norm(r3.Sub(p.At(pos), image(q))); d > 1e-12 {
		t.Errorf("Locate(%v).At lands %g m off", q, d)
	}
}

// Any point of the cloth: a random blend of the corners of a random skin triangle.
func TestLocateInside(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		l, err := Cut(star(t), turned(t))
		if err != nil {
			t.Skip(err)
		}
		s, pos := l.Skin(), flatten(l)
		for range 20 {
			tri := s.Tris[rapid.IntRange(0, len(s.Tris)-1).Draw(t, "triangle")]
			a, b := rapid.Float64Range(0, 1).Draw(t, "a"), rapid.Float64Range(0, 1).Draw(t, "b")
			if a+b > 1 {
				a, b = 1-a, 1-b
			}
			q := r2.Add(r2.Scale(1-a-b, s.Flat[tri[0]]), r2.Add(r2.Scale(a, s.Flat[tri[1]]), r2.Scale(b, s.Flat[tri[2]])))
			wantHeld(t, l, pos, q)
			n++
		}
	})
	if n < 2000 {
		t.Errorf("%d points, want thousands", n)
	}
}

// The corners of the outline are on the cloth, whatever the grain.
func TestLocateCorners(t *testing.T) {
	n := 0
	each(t, func(t *testing.T, k int, l *Lattice) {
		pos := flatten(l)
		for _, q := range outlines[k].points {
			p, ok := l.Locate(q)
			if !ok || r3.Norm(r3.Sub(p.At(pos), image(q))) > 1e-12 {
				t.Errorf("Locate(%v) = %v, %t, want the corner exactly", q, p, ok)
			}
			n++
		}
	})
	if n < 1000 {
		t.Errorf("%d corners, want thousands", n)
	}
}

func TestLocateOutside(t *testing.T) {
	l, err := Cut(outlines[0].points, Options{Spacing: 0.008, Grain: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		q    r2.Vec
		want bool
	}{
		{r2.Vec{X: 0.155}, true}, // half a spacing off the edge
		{r2.Vec{X: 0.165}, true},
		{r2.Vec{X: 0.25}, false},
		{r2.Vec{X: 1e3, Y: -1e3}, false},
	} {
		p, ok := l.Locate(c.q)
		if ok != c.want {
			t.Errorf("Locate(%v) held = %t, want %t", c.q, ok, c.want)
		}
		if ok {
			if d := r3.Norm(r3.Sub(p.At(flatten(l)), image(c.q))); d > 1e-12 {
				t.Errorf("Locate(%v).At lands %g m off, want the plane continued", c.q, d)
			}
		}
	}
}
