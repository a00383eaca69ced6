package stage

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// grid is a sheet of as many rows as columns whose columns of vertices lie at
// the places of the profile: X and Z of each. It is facing above the row fold.
func grid(profile [][2]float64, fold int) mesh.Sheet {
	var s mesh.Sheet
	n := len(profile)
	for y := range n {
		for _, p := range profile {
			s.Flat = append(s.Flat, r2.Vec{X: float64(len(s.Flat) % n), Y: float64(y)})
			s.Pos = append(s.Pos, r3.Vec{X: p[0], Y: float64(y), Z: p[1]})
		}
	}
	for y := range n - 1 {
		for x := range n - 1 {
			a := int32(y*n + x)
			b, c, d := a+1, a+int32(n), a+int32(n)+1
			s.Tris = append(s.Tris, [3]int32{a, b, c}, [3]int32{b, d, c})
			s.Facing = append(s.Facing, y >= fold, y >= fold)
		}
	}
	return s
}

// The cloth ends along its outline, and its fold line if that is asked for.
func TestRims(t *testing.T) {
	s := grid([][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}, {6, 0}}, 4)
	for _, c := range []struct {
		folds bool
		want  int
	}{{false, 4 * 6}, {true, 4*6 + 6}} {
		got := rims(&s, c.folds)
		if len(got) != c.want {
			t.Errorf("rims(grid, %v) = %d edges, want %d", c.folds, len(got), c.want)
		}
		for _, e := range got {
			a, b := s.Flat[e[0]], s.Flat[e[1]]
			outline := a.X == b.X && (a.X == 0 || a.X == 6) || a.Y == b.Y && (a.Y == 0 || a.Y == 6)
			if fold := a.Y == 4 && b.Y == 4; !outline && !(fold && c.folds) {
				t.Errorf("rims(grid, %v) has the edge from %v to %v, which is inside the cloth", c.folds, a, b)
			}
		}
	}
	eye := r3.Vec{Z: 60}
	if p := rimPoint(&s, 3, eye); math.Abs(apart(p.at, s.Pos[3])-rimLift) > 1e-12 || apart(p.at, eye) >= apart(s.Pos[3], eye) {
		t.Errorf("rimPoint moved %v to %v, want %v m towards the eye", s.Pos[3], p.at, rimLift)
	}
}
