// Package outlinetest checks what the readers of pieces hand out. Start at
// Whole and Fuzz.
package outlinetest

import (
	"math"
	"testing"

	"cowl/mesh/paper"
	"cowl/mesh/polyline"
	"cowl/mesh/read/outline"
)

// Whole fails if a piece could not be cut: its outline encloses nothing, a mark
// is nowhere, or the edges do not go round once.
func Whole(t testing.TB, p paper.Piece) {
	t.Helper()
	if a := polyline.Area(p.Outline); !(a > 0 && a < 9) {
		t.Errorf("outline of %g m², want above 0", a)
	}
	for _, v := range append(p.GrainLine[:], p.Label) {
		if math.IsNaN(v.X+v.Y) || math.IsInf(v.X+v.Y, 0) {
			t.Errorf("grain line or label at %v", v)
		}
	}
	at := 0
	for _, e := range p.Edges {
		if e.From != at {
			t.Fatalf("edge %q begins at %d, want %d", e.Name, e.From, at)
		}
		at = e.To
	}
	if at != 0 {
		t.Errorf("the edges end at %d, want 0", at)
	}
}

// Fuzz fails if a reader takes a file, made of the seeds at random, whose pieces could not be
// cut. The unit is said or not.
func Fuzz(f *testing.F, seeds []string, read func(data string, unit outline.Unit) ([]paper.Piece, error)) {
	for _, s := range seeds {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, data string, said bool) {
		unit := outline.Unit(0)
		if said {
			unit = outline.Millimetre
		}
		pieces, err := read(data, unit)
		if err != nil {
			return
		}
		for _, p := range pieces {
			Whole(t, p)
		}
	})
}
