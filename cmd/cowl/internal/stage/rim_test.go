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
	if p := rimPoint(&s, 3, eye); math.Abs(apart(p.at, s.Pos[3])-rimLift) > 1e-12 ||
		apart(p.at, eye) >= apart(s.Pos[3], eye) {
		t.Errorf("rimPoint moved %v to %v, want %v m towards the eye", s.Pos[3], p.at, rimLift)
	}
}

// An outline that is met by a fold line falls in two, with the fold line between
// them; a ring that nothing meets ends where it begins. No edge is lost.
func TestChained(t *testing.T) {
	s := grid([][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}, {6, 0}}, 4)
	for _, c := range []struct {
		folds        bool
		lines, edges int
		ring         bool
	}{{false, 1, 24, true}, {true, 3, 30, false}} {
		edges := rims(&s, c.folds)
		lines := chained(edges)
		n := 0
		for _, l := range lines {
			n += len(l) - 1
			for k := 1; k < len(l); k++ {
				if apart(s.Pos[l[k-1]], s.Pos[l[k]]) != 1 {
					t.Errorf("chained steps from %v to %v, want a step of 1", s.Pos[l[k-1]], s.Pos[l[k]])
				}
			}
		}
		if len(lines) != c.lines || n != c.edges || (lines[0][0] == lines[0][len(lines[0])-1]) != c.ring {
			t.Errorf("chained(%d edges) = %d lines of %d edges, want %d of %d, closed %v", len(edges), len(lines), n, c.lines,
				c.edges, c.ring)
		}
	}
}

// The corner of a rim is filled: what is drawn covers all that lies within half
// its width of it, seen from the eye.
func TestRoundCorner(t *testing.T) {
	var r ribbons
	eye := r3.Vec{Z: 100}
	r.addRound(eye, 1, seamPoint{at: r3.Vec{X: -5}}, seamPoint{at: r3.Vec{}}, seamPoint{at: r3.Vec{Y: -5}})
	at := func(k uint32) r3.Vec { return r3.Vec{X: float64(r.verts[3*k]), Y: float64(r.verts[3*k+1])} }
	covered := func(p r3.Vec) bool {
		for k := 0; k < len(r.index); k += 3 {
			a, b, c := at(r.index[k]), at(r.index[k+1]), at(r.index[k+2])
			u, v, w := r3.Cross(r3.Sub(b, a), r3.Sub(p, a)).Z, r3.Cross(r3.Sub(c, b), r3.Sub(p, b)).Z,
				r3.Cross(r3.Sub(a, c), r3.Sub(p, c)).Z
			if u >= 0 && v >= 0 && w >= 0 || u <= 0 && v <= 0 && w <= 0 {
				return true
			}
		}
		return false
	}
	for k := range 32 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / 32)
		if p := (r3.Vec{X: 0.46 * cos, Y: 0.46 * sin}); !covered(p) {
			t.Errorf("%v is not covered, want all within 0.46 of the corner", p)
		}
	}
	if covered(r3.Vec{X: 0.5, Y: 0.5}) {
		t.Error("(0.5, 0.5) is covered: the corner is square")
	}
}
