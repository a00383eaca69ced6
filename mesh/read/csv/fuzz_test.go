package csv_test

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/read/csv"
	"cowl/mesh/read/outline"
)

// Whatever the file holds, Read returns an error or pieces that can be cut.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"x_mm,y_mm\n0,0\n300,0\n300,300\n",
		"piece;line;name;x_cm;y_cm\nA;seam;;0,0;0\nA;seam;;30,5;0\nA;seam;;30;40\nA;grain;;1;1\nA;grain;;5;9\nA;inside;dart;2;2\nA;inside;dart;4;4\n",
		"name\tx_in\ty_in\nneck\t2\t3\n",
	} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, data string, said bool) {
		unit := outline.Unit(0)
		if said {
			unit = outline.Millimetre
		}
		pieces, err := csv.Read(strings.NewReader(data), unit)
		csv.Points(strings.NewReader(data), unit) // must not panic either
		if err != nil {
			return
		}
		for _, p := range pieces {
			whole(t, p)
		}
	})
}

// whole fails if a piece could not be cut.
func whole(t *testing.T, p paper.Piece) {
	t.Helper()
	if a := draft.Area(p.Outline); !(a > 0 && a < 9) {
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
