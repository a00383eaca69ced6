package drawn

import (
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/form"

	"gonum.org/v1/gonum/spatial/r3"
)

// The arms of a hanger end a little beyond the cowl points, and the curve
// through them does not loop: every triangle faces outward.
func TestHangerReachesTheCowlPoints(t *testing.T) {
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	f, err := form.FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, cowl := range []float64{0.02, 0.04, 0.08} {
		s := Hanger(f, cowl)
		at, far := f.ShoulderPoint(1, cowl), 0.0
		for _, p := range s.Pos {
			far = max(far, p.X)
		}
		if far < at.X+0.005 || far > at.X+0.03 {
			t.Errorf("the arm reaches to %.1f cm from the middle, the cowl point lies at %.1f cm: want 0.5 to 3 cm more",
				100*far, 100*at.X)
		}
		for _, tri := range s.Tris {
			a, b, c := s.Pos[tri[0]], s.Pos[tri[1]], s.Pos[tri[2]]
			out := r3.Cross(r3.Sub(b, a), r3.Sub(c, a))
			if r3.Norm(out) < 1e-9 {
				continue
			}
			n++
			if r3.Dot(out, r3.Add(s.Normal[tri[0]], r3.Add(s.Normal[tri[1]], s.Normal[tri[2]]))) < 0 {
				t.Fatalf("cowl point %g m: triangle %v faces inward", cowl, tri)
			}
		}
	}
	if n < 1500 {
		t.Errorf("looked at %d triangles, want 1500 or more", n)
	}
}
