package polyline

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A bent line of 3 and 4 with a doubled corner: its length, places along it and beyond its
// ends, and the way back.
func TestAlong(t *testing.T) {
	line := []r2.Vec{{}, {X: 3}, {X: 3}, {X: 3, Y: 4}}
	if got := Length(line); got != 7 {
		t.Errorf("Length = %g, want 7", got)
	}
	for _, c := range []struct {
		down float64
		want r2.Vec
		side int
	}{{-1, r2.Vec{}, 0}, {1, r2.Vec{X: 1}, 0}, {3, r2.Vec{X: 3}, 0}, {5, r2.Vec{X: 3, Y: 2}, 2},
		{8, r2.Vec{X: 3, Y: 4}, 2}} {
		if got, side := Along(line, c.down); got != c.want || side != c.side {
			t.Errorf("Along(%g) = %v on side %d, want %v on %d", c.down, got, side, c.want, c.side)
		}
	}
	back := Reversed(line)
	if back[0] != line[3] || !slices.Equal(Reversed(back), line) {
		t.Errorf("Reversed = %v, want it from end to end, and twice the line", back)
	}
}

// Beside a side, beyond its ends, and off one of no length.
func TestOff(t *testing.T) {
	a, b := r2.Vec{}, r2.Vec{X: 4}
	for _, c := range []struct {
		v, b r2.Vec
		want float64
	}{{r2.Vec{X: 1, Y: 2}, b, 2}, {r2.Vec{X: 7, Y: 4}, b, 5}, {r2.Vec{X: -3, Y: -4}, b, 5}, {r2.Vec{X: 3, Y: 4}, a, 5}} {
		if got := Off(c.v, a, c.b); math.Abs(got-c.want) > 1e-15 {
			t.Errorf("Off(%v, %v, %v) = %g, want %g", c.v, a, c.b, got, c.want)
		}
	}
}
