package polyline

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// Places in and beside a U, whichever way it runs round.
func TestContains(t *testing.T) {
	u := []r2.Vec{{}, {X: 3}, {X: 3, Y: 2}, {X: 2, Y: 2}, {X: 2, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 2}, {Y: 2}}
	var back []r2.Vec
	for k := range u {
		back = append(back, u[len(u)-1-k])
	}
	for _, c := range []struct {
		at   r2.Vec
		want bool
	}{
		{r2.Vec{X: 1.5, Y: 0.5}, true}, {r2.Vec{X: 0.5, Y: 1.5}, true}, {r2.Vec{X: 2.5, Y: 1.5}, true},
		{r2.Vec{X: 1.5, Y: 1.5}, false}, {r2.Vec{X: -1, Y: 1}, false}, {r2.Vec{X: 4, Y: 1}, false},
		{r2.Vec{X: 1, Y: 3}, false},
	} {
		for _, line := range [][]r2.Vec{u, back} {
			if got := Contains(line, c.at); got != c.want {
				t.Errorf("Contains(%v, %v) = %t, want %t", line, c.at, got, c.want)
			}
		}
	}
}

// A square cut across its corner has lost the corner; cut off whole, nothing is left.
func TestClip(t *testing.T) {
	square := []r2.Vec{{}, {X: 2}, {X: 2, Y: 2}, {Y: 2}}
	if got := Area(square); got != 4 {
		t.Errorf("Area = %g, want 4", got)
	}
	if got := Area(Reversed(square)); got != -4 {
		t.Errorf("Area the other way round = %g, want -4", got)
	}
	if got := Area(Clip(square, r2.Vec{X: 1, Y: 1}, 1)); got != 3.5 {
		t.Errorf("Area cut across the corner = %g, want 3.5", got)
	}
	if got := Clip(square, r2.Vec{X: 1}, 3); len(got) != 0 {
		t.Errorf("Clip beyond the square = %v, want nothing", got)
	}
}
