package stage

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Two squares one over the other, the upper one facing. Seen from the front the
// rim is the outline and the line between them, not the diagonals. Folded
// along a diagonal so that one half looks away, the diagonal joins.
func TestRim(t *testing.T) {
	flat := mesh.Sheet{
		Tris:   [][3]int32{{0, 1, 2}, {1, 3, 2}, {2, 3, 4}, {3, 5, 4}},
		Facing: []bool{false, false, true, true},
	}
	for y := range 3 {
		for x := range 2 {
			flat.Flat = append(flat.Flat, r2.Vec{X: float64(x), Y: float64(y)})
			flat.Pos = append(flat.Pos, r3.Vec{X: float64(x), Y: float64(y)})
		}
	}
	bent := flat
	bent.Pos = append([]r3.Vec(nil), flat.Pos...)
	bent.Pos[0] = r3.Vec{X: 0.9, Y: 0.8, Z: -1}
	outline := [][2]int{{0, 1}, {1, 3}, {3, 5}, {4, 5}, {2, 4}, {0, 2}, {2, 3}}
	eye := r3.Vec{X: 0.5, Y: 1, Z: 30}
	for _, c := range []struct {
		name  string
		sheet mesh.Sheet
		want  [][2]int
	}{
		{"flat", flat, outline},
		{"bent back", bent, append([][2]int{{1, 2}}, outline...)},
	} {
		var ends, turns [][2]seamPoint
		rim(&c.sheet, hems(&c.sheet), eye, func(a, b seamPoint, turn bool) {
			if turn {
				turns = append(turns, [2]seamPoint{a, b})
			} else {
				ends = append(ends, [2]seamPoint{a, b})
			}
		})
		if len(ends) != len(outline) || len(turns) != len(c.want)-len(outline) {
			t.Errorf("%s: rim has %d ends and %d turns, want %d in all", c.name, len(ends), len(turns), len(c.want))
		}
		got := append(turns, ends...)
		for _, e := range c.want {
			found := false
			for _, line := range got {
				a, b := apart(line[0].at, c.sheet.Pos[e[0]]), apart(line[1].at, c.sheet.Pos[e[1]])
				found = found || math.Abs(a-rimLift) < 1e-9 && math.Abs(b-rimLift) < 1e-9
			}
			if !found {
				t.Errorf("%s: rim lacks the line from vertex %d to %d", c.name, e[0], e[1])
			}
		}
	}
}
