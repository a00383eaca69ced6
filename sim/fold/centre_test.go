package fold

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The centre front of cloth that is rolled level round a cylinder is its circle: front
// and facing each from the fold line on, no point twice, and the whole way round.
func TestCentreOfARoll(t *testing.T) {
	const radius, step, foldY = 0.05, 0.004, 0.02 // m
	const rows, columns, below = 30, 6, 20        // rows of cells, of which so many are front
	var s mesh.Sheet
	for i := range rows + 1 {
		for j := range columns + 1 {
			q := r2.Vec{X: (float64(j) - 2.7) * step, Y: foldY + float64(i-below)*step}
			sin, cos := math.Sincos(q.Y / radius)
			s.Flat, s.Pos = append(s.Flat, q), append(s.Pos, r3.Vec{X: q.X, Y: radius * sin, Z: radius * cos})
		}
	}
	for i := range rows {
		for j := range columns {
			a := int32(i*(columns+1) + j)
			b, c, d := a+1, a+columns+1, a+columns+2
			s.Tris = append(s.Tris, [3]int32{a, b, d}, [3]int32{a, d, c})
			s.Facing = append(s.Facing, i >= below, i >= below)
		}
	}
	front, facing := Centre(&s, foldY)
	for name, c := range map[string]struct {
		line []r2.Vec
		rows int
		way  float64 // m, flat, from the fold line
	}{"front": {front, below, -below * step}, "facing": {facing, rows - below, (rows - below) * step}} {
		if want := 2*c.rows + 1; len(c.line) != want { // every row and every diagonal between
			t.Errorf("%s: %d points, want %d", name, len(c.line), want)
			continue
		}
		for k, p := range c.line {
			y := foldY + c.way*float64(k)/float64(2*c.rows)
			// A chord of 4 mm lies up to h²/8R inside, and a diagonal is crossed off its middle.
			sin, cos := math.Sincos(y / radius)
			if off := r2.Norm(r2.Sub(p, r2.Vec{X: radius * cos, Y: radius * sin})); off > step/2 {
				t.Errorf("%s: point %d lies %.2f mm from its place on the roll, want half a step at most", name, k, off*1000)
			}
			if sag := radius - r2.Norm(p); sag < -1e-12 || sag > step*step/8/radius+1e-12 {
				t.Errorf("%s: point %d lies %.4f mm inside the roll, want at most the sag of a chord", name, k, sag*1000)
			}
		}
	}
}
