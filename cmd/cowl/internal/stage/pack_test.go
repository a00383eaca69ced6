package stage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestRibbons(t *testing.T) {
	eye := r3.Vec{Z: 2}
	for _, c := range []struct {
		name   string
		normal r3.Vec
		want   float64 // m
	}{
		{"facing the eye", r3.Vec{Z: 1}, 0.002},
		{"no form", r3.Vec{}, 0.002},
		{"at the edge of the form", r3.Vec{X: 1}, 0},
		{"turned away", r3.Vec{Z: -1}, 0},
	} {
		line := []seamPoint{{r3.Vec{Y: -0.1}, c.normal}, {r3.Vec{}, c.normal}, {r3.Vec{Y: 0.1}, c.normal}}
		var r ribbons
		r.add(eye, 0.002, line...)
		verts, index := r.verts, r.index
		if len(verts) != 3*6 || len(index) != 3*4 {
			t.Fatalf("%s: %d numbers, %d indices, want 18 and 12", c.name, len(verts), len(index))
		}
		for i := 0; i < len(verts); i += 6 {
			wide := math.Hypot(float64(verts[i]-verts[i+3]), float64(verts[i+1]-verts[i+4]))
			if math.Abs(wide-c.want) > 1e-8 || verts[i+2] != 0 {
				t.Errorf("%s: ribbon %v m wide at z %v, want %v and flat before the eye", c.name, wide, verts[i+2], c.want)
			}
		}
	}
}

func TestSinkSeams(t *testing.T) {
	s := testScene(4)
	var n int
	for i, line := range sinkSeams(s.Seams, s.Form) {
		for j, p := range line {
			n++
			if d := apart(p.at, s.Seams[i][j]); math.Abs(d-seamInset) > 1e-12 {
				t.Fatalf("seam %d point %d moved %v m, want %v", i, j, d, seamInset)
			}
			if out := r3.Dot(p.normal, r3.Vec{X: p.at.X, Z: p.at.Z}); out < 0 {
				t.Fatalf("seam %d point %d has normal %v, want outward", i, j, p.normal)
			}
		}
	}
	if n == 0 {
		t.Fatal("the test scene has no seams")
	}
}
