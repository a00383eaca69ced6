package dxf_test

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/read/dxf"
	"cowl/mesh/read/outline"
)

// Whatever the file holds, Read returns an error or pieces that can be cut.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\n1\n66\n1\n70\n1\n0\nVERTEX\n8\n1\n10\n0\n20\n0\n0\nVERTEX\n8\n1\n10\n300\n20\n0\n42\n0.3\n0\nVERTEX\n8\n1\n10\n300\n20\n400\n0\nSEQEND\n0\nLINE\n8\n7\n10\n50\n20\n50\n11\n60\n21\n200\n0\nPOINT\n8\n13\n10\n50\n20\n50\n0\nENDSEC\n0\nEOF\n",
		"0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n0\nLWPOLYLINE\n8\n14\n70\n1\n10\n0\n20\n0\n42\n1\n10\n200\n20\n0\n10\n200\n20\n200\n0\nENDBLK\n0\nENDSEC\n0\nEOF\n",
		"0\nSECTION\n2\nENTITIES\n0\nLINE\n8\n1\n10\n0\n20\n0\n11\n300\n21\n0\n0\nLINE\n8\n1\n10\n300\n20\n0\n11\n0\n21\n200\n0\nLINE\n8\n1\n10\n0\n20\n200\n11\n0\n21\n0\n0\nTEXT\n8\n1\n1\nUnits: METRIC\n0\nENDSEC\n0\nEOF\n",
	} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, data string, said bool) {
		unit := outline.Unit(0)
		if said {
			unit = outline.Millimetre
		}
		pieces, err := dxf.Read(strings.NewReader(data), unit)
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
