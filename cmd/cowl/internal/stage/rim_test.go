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

// The cloth ends along its outline and its fold, and turns out of sight where
// it is folded back, not where one strip of the lattice turns to and fro.
func TestRim(t *testing.T) {
	eye := r3.Vec{X: 2, Y: 3, Z: 60}
	for _, c := range []struct {
		name    string
		profile [][2]float64
		turn    float64 // X of all turns
		turns   int
	}{
		{"flat", [][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}, {6, 0}}, 0, 0},
		{"folded back", [][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {2, -1}, {1, -1}, {0, -1}}, 3, 6},
		{"to and fro", [][2]float64{{0, 0}, {1, 0}, {2, 0}, {1.9, -1}, {3, -1}, {4, -1}, {5, -1}}, 0, 0},
	} {
		s := grid(c.profile, 4)
		h := hems(&s)
		n := 0
		on := func(p seamPoint, at func(q r3.Vec) bool) bool {
			for _, q := range s.Pos {
				if math.Abs(apart(p.at, q)-rimLift) < 1e-9 && at(q) {
					return true
				}
			}
			return false
		}
		rimEnds(&s, h, eye, func(a, b seamPoint) {
			n++
			ends := func(q r3.Vec) bool {
				return q.Y == 0 || q.Y == 4 || q.Y == 6 || q.X == c.profile[0][0] || q.X == c.profile[6][0]
			}
			if !on(a, ends) || !on(b, ends) {
				t.Errorf("%s: an end from %v to %v, which is inside the cloth", c.name, a.at, b.at)
			}
		})
		if n != 4*6+6 {
			t.Errorf("%s: %d ends, want 24 of the outline and 6 of the fold", c.name, n)
		}
		n = 0
		rimTurns(&s, h, eye, func(a, b seamPoint) {
			n++
			turn := func(q r3.Vec) bool { return q.X == c.turn && q.Z == 0 }
			if !on(a, turn) || !on(b, turn) {
				t.Errorf("%s: a turn from %v to %v, want them at X = %g", c.name, a.at, b.at, c.turn)
			}
		})
		if n != c.turns {
			t.Errorf("%s: %d turns, want %d", c.name, n, c.turns)
		}
	}
}
