package form

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestTape(t *testing.T) {
	circle := make([]r2.Vec, 720)
	for i := range circle {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 720)
		circle[i] = r2.Vec{X: 0.1 * c, Y: 0.1 * s}
	}
	for _, c := range []struct {
		name      string
		pts       []r2.Vec
		want, tol float64
	}{
		{"unit square with points inside and on an edge", []r2.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}, {X: 0.5, Y: 0.2},
			{X: 0.5}}, 4, 1e-12},
		{"notched square: the tape bridges", []r2.Vec{{}, {X: 1}, {X: 0.5, Y: 0.5}, {X: 1, Y: 1}, {Y: 1}}, 4, 1e-12},
		{"circle of 10 cm", circle, 2 * math.Pi * 0.1, 1e-5},
		{"nothing", nil, 0, 0},
	} {
		if got := tape(c.pts); math.Abs(got-c.want) > c.tol {
			t.Errorf("tape(%s) = %v, want %v", c.name, got, c.want)
		}
	}
}
