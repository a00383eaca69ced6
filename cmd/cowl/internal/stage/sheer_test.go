package stage

import (
	"image"
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
)

// both is two sheets as one.
func both(a, b mesh.Sheet) mesh.Sheet {
	n := int32(len(a.Pos))
	a.Flat, a.Pos, a.Facing = append(a.Flat, b.Flat...), append(a.Pos, b.Pos...), append(a.Facing, b.Facing...)
	for _, t := range b.Tris {
		a.Tris = append(a.Tris, [3]int32{t[0] + n, t[1] + n, t[2] + n})
	}
	return a
}

// The rim of a layer that lies behind sheer cloth is seen through it, so it is fainter
// than that of the same layer before it.
func TestRimThroughSheerCloth(t *testing.T) {
	st := newStage(t)
	s := dressed(t, "silk-chiffon-memory")
	s.Form, s.Seams, s.FoldY = nil, nil, 1
	front := card(r2.Vec{X: -0.1, Y: -0.1}, r2.Vec{X: 0.1, Y: 0.1}, 0)
	s.Cloth = both(front, card(r2.Vec{X: -0.05, Y: -0.05}, r2.Vec{X: 0.05, Y: 0.05}, -0.01))
	before, behind := ahead(), ahead()
	before.Eye.Z = -before.Eye.Z
	dip := func(v View) float64 {
		img, err := st.Draw(s, v, 800, 800) // half a millimetre a pixel
		if err != nil {
			t.Fatal(err)
		}
		return rimDip(img, 300, 400)
	}
	seen, hidden := dip(before), dip(behind)
	if seen < 15 || hidden < 2 || hidden > 0.7*seen {
		t.Errorf("the rim darkens a picture by %.1f before sheer cloth and by %.1f behind it, want 15 or more and 2 to 0.7 "+
			"times that", seen, hidden)
	}
}

// rimDip is by how much the darkest pixel of row y within 15 of x is darker than those to
// either side of it, 20 pixels off.
func rimDip(img *image.RGBA, x, y int) float64 {
	deepest := 0.0
	for at := x - 15; at <= x+15; at++ {
		beside := math.Min(light(img, at-20, y), light(img, at+20, y))
		deepest = max(deepest, beside-light(img, at, y))
	}
	return deepest
}
