package outline

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestAgree(t *testing.T) {
	for _, q := range []struct {
		stated, said, want Unit
		err                string
	}{
		{Millimetre, 0, Millimetre, ""}, {0, Inch, Inch, ""}, {Centimetre, Centimetre, Centimetre, ""},
		{0, 0, 0, "does not say its unit"}, {Millimetre, Inch, 0, "the file says mm"},
	} {
		got, err := Agree(q.stated, q.said)
		if got != q.want || (err == nil) != (q.err == "") || err != nil && !strings.Contains(err.Error(), q.err) {
			t.Errorf("Agree(%v, %v) = %v, %v, want %v, %q", q.stated, q.said, got, err, q.want, q.err)
		}
	}
	for _, name := range []string{"mm", "cm", "m", "in"} {
		if u, err := ParseUnit(name); err != nil || u.String() != name {
			t.Errorf("ParseUnit(%s) = %v, %v", name, u, err)
		}
	}
}

// A rectangle of 300 × 200 mm in pieces, in any order, either way round, ends
// off by less than a pencil line; what is no part of it is left over.
func TestRing(t *testing.T) {
	v := func(x, y float64) r2.Vec { return r2.Vec{X: x / 1000, Y: y / 1000} }
	sides := []Chain{
		{Points: []r2.Vec{v(0, 0), v(300, 0)}}, {Points: []r2.Vec{v(0, 200), v(300, 200.3)}},
		{Points: []r2.Vec{v(300, 200), v(300, 0.4)}}, {Points: []r2.Vec{v(0, 0.2), v(0, 200)}},
		{Points: []r2.Vec{v(50, 50), v(60, 60)}},
	}
	ring, rest, err := Ring(sides)
	if err != nil || len(rest) != 1 || math.Abs(area(ring)-0.06) > 2e-4 {
		t.Errorf("Ring = %.4f m², %d left, %v, want 0.06 m² and one left", area(ring), len(rest), err)
	}
	if _, _, err := Ring(sides[:3]); err == nil || !strings.Contains(err.Error(), "open") {
		t.Errorf("Ring(three sides) = %v, want it open", err)
	}
}

// A piece of two edges: the straight one has its corners, the curve its ends.
func TestCorners(t *testing.T) {
	var p []r2.Vec
	for i := range 41 { // a half disc, its straight side last
		a := math.Pi * float64(i) / 40
		p = append(p, r2.Vec{X: 0.1 * math.Cos(a), Y: 0.1 * math.Sin(a)})
	}
	if got := Corners(p); len(got) != 2 || got[0] != 0 || got[1] != 40 {
		t.Errorf("Corners(half disc) = %v, want 0 and 40", got)
	}
	piece, err := Found{Name: "half disc", Outline: p}.Piece()
	if err != nil || len(piece.Edges) != 2 || !piece.Edges[0].Curve || piece.Edges[1].Curve {
		t.Errorf("Piece = edges %v, %v, want a curve and a straight", piece.Edges, err)
	}
}
