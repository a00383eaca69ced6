package contact

import (
	"math"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// grid returns an n × n sheet of unit squares in two triangles, put in space by f.
func grid(n int, f func(u, v float64) r3.Vec) *mesh.Sheet {
	s := &mesh.Sheet{}
	for j := range n + 1 {
		for i := range n + 1 {
			s.Flat = append(s.Flat, r2.Vec{X: float64(i), Y: float64(j)})
			s.Pos = append(s.Pos, f(float64(i), float64(j)))
		}
	}
	for j := range n {
		for i := range n {
			a := int32(j*(n+1) + i)
			b, c, d := a+1, a+int32(n)+1, a+int32(n)+2
			s.Tris = append(s.Tris, [3]int32{a, b, d}, [3]int32{a, d, c})
		}
	}
	return s
}

// join puts sheets together as one, their flat places apart.
func join(parts ...*mesh.Sheet) *mesh.Sheet {
	s := &mesh.Sheet{}
	for _, p := range parts {
		n := int32(len(s.Pos))
		s.Pos = append(s.Pos, p.Pos...)
		for _, q := range p.Flat {
			s.Flat = append(s.Flat, r2.Vec{X: q.X + 100*float64(n), Y: q.Y})
		}
		for _, t := range p.Tris {
			s.Tris = append(s.Tris, [3]int32{t[0] + n, t[1] + n, t[2] + n})
		}
	}
	return s
}

// three returns one triangle.
func three(a, b, c r3.Vec) *mesh.Sheet {
	return &mesh.Sheet{Pos: []r3.Vec{a, b, c}, Flat: make([]r2.Vec, 3), Tris: [][3]int32{{0, 1, 2}}}
}

// lips gives two triangles one place of the flat.
func lips(s *mesh.Sheet) *mesh.Sheet {
	s.Flat[3] = s.Flat[0]
	return s
}

// some stands for a count of at least ten.
const some = -1

func TestPierced(t *testing.T) {
	level := func(z float64) func(u, v float64) r3.Vec {
		return func(u, v float64) r3.Vec { return r3.Vec{X: u, Y: v, Z: z} }
	}
	floor := three(r3.Vec{X: -1, Y: -1}, r3.Vec{X: 2, Y: -1}, r3.Vec{Y: 2})
	for _, c := range []struct {
		name  string
		sheet *mesh.Sheet
		want  int
	}{
		{"one triangle", floor, 0},
		{"nothing", &mesh.Sheet{}, 0},
		{"a point through", join(floor, three(r3.Vec{Z: -0.5}, r3.Vec{X: -0.3, Z: 1}, r3.Vec{X: 0.3, Z: 1})), 2},
		{"hooked", join(floor, three(r3.Vec{Y: 0, Z: -1}, r3.Vec{Y: 0.2, Z: 1}, r3.Vec{X: 9, Y: 0.1})), 2},
		{"a point through, of the other lip of a slit",
			lips(join(floor, three(r3.Vec{Z: -0.5}, r3.Vec{X: -0.3, Z: 1}, r3.Vec{X: 0.3, Z: 1}))), 0},
		{"above", join(floor, three(r3.Vec{Z: 0.01}, r3.Vec{X: -0.3, Z: 1}, r3.Vec{X: 0.3, Z: 1})), 0},
		{"beside", join(floor, three(r3.Vec{X: 5, Z: -0.5}, r3.Vec{X: 4.7, Z: 1}, r3.Vec{X: 5.3, Z: 1})), 0},
		{"in one plane", join(floor, three(r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1})), 0},
		{"two layers", join(grid(6, level(0)), grid(6, level(0.01))), 0},
		{"folded over", grid(8, func(u, v float64) r3.Vec {
			s, c := math.Sincos(u / 8 * math.Pi)
			return r3.Vec{X: s, Y: v, Z: c}
		}), 0},
		// A wall on edge through a row of squares of a floor.
		{"wall", join(grid(6, level(0)), grid(2, func(u, v float64) r3.Vec {
			return r3.Vec{X: 3.3, Y: -1.03 + 4.1*u, Z: -4.1 + 4*v}
		})), wall()},
		// A figure of eight; the skew keeps edges from meeting edges.
		{"through itself", grid(12, func(u, v float64) r3.Vec {
			a := -0.3 + u/12*(math.Pi+0.6)
			return r3.Vec{X: math.Sin(2 * a), Y: v + 0.3*u, Z: math.Sin(a)}
		}), some},
	} {
		got := Pierced(c.sheet)
		if c.want != some && got != c.want {
			t.Errorf("%s: Pierced = %d, want %d", c.name, got, c.want)
		}
		if c.want == some && got < 10 {
			t.Errorf("%s: Pierced = %d, want tens", c.name, got)
		}
	}
}

// wall counts the crossings of the wall case with the floor by plane geometry:
// every edge of every triangle whose ends lie on either side of the other plane,
// and that crosses it inside the other sheet's outline.
func wall() int {
	floor := grid(6, func(u, v float64) r3.Vec { return r3.Vec{X: u, Y: v} })
	side := grid(2, func(u, v float64) r3.Vec { return r3.Vec{X: 3.3, Y: -1.03 + 4.1*u, Z: -4.1 + 4*v} })
	n := 0
	each := func(s *mesh.Sheet, f func(a, b r3.Vec) bool) {
		for _, t := range s.Tris {
			for k := range 3 {
				if f(s.Pos[t[k]], s.Pos[t[(k+1)%3]]) {
					n++
				}
			}
		}
	}
	each(floor, func(a, b r3.Vec) bool { // the wall spans y −1.03..7.17, z −4.1..3.9
		return (a.X-3.3)*(b.X-3.3) < 0
	})
	each(side, func(a, b r3.Vec) bool { // the floor spans 0..6 in x and y
		if a.Z*b.Z >= 0 {
			return false
		}
		y := a.Y + (b.Y-a.Y)*a.Z/(a.Z-b.Z)
		return y > 0 && y < 6
	})
	return n
}

// A sheet of which one place is no number, or too far for one, ends in an answer too:
// the cubes once grew for ever to hold it.
func TestPiercedNotFinite(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.MaxFloat64} {
		s := grid(2, func(u, v float64) r3.Vec { return r3.Vec{X: u, Y: v} })
		s.Pos[4].Z = x
		if n := Pierced(s); n != 0 {
			t.Errorf("%g: %d pierced, want none", x, n)
		}
	}
}
