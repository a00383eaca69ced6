package stage

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// The arms of a hanger lie under the shoulders, its hook above them, and its
// triangles face outward.
func TestHanger(t *testing.T) {
	left := []r3.Vec{{X: 0.07, Y: 0.4}, {X: 0.12, Y: 0.38}, {X: 0.18, Y: 0.35}}
	var right []r3.Vec
	for _, p := range left {
		right = append(right, r3.Vec{X: -p.X, Y: p.Y})
	}
	s := Hanger(left, right)
	if b := Bounds(s.Pos); b.Max.Y < 0.44 || b.Max.X < 0.18 || b.Min.X > -0.18 {
		t.Errorf("the hanger reaches from %v to %v", b.Min, b.Max)
	}
	n := 0
	for _, tri := range s.Tris {
		a, b, c := s.Pos[tri[0]], s.Pos[tri[1]], s.Pos[tri[2]]
		out := r3.Cross(r3.Sub(b, a), r3.Sub(c, a))
		if r3.Norm(out) < 1e-9 {
			continue
		}
		n++
		if r3.Dot(out, r3.Add(s.Normal[tri[0]], r3.Add(s.Normal[tri[1]], s.Normal[tri[2]]))) < 0 {
			t.Fatalf("triangle %v faces inward", tri)
		}
	}
	if n < 500 {
		t.Errorf("%d triangles, want 500 or more", n)
	}
	for _, p := range append(left, right...) {
		for _, q := range s.Pos {
			if r3.Norm(r3.Sub(p, q)) < 0.0005 {
				t.Fatalf("the hanger comes out at the seam at %v", p)
			}
		}
	}
}
