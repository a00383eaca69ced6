package dxf_test

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/polyline"
	"cowl/mesh/read/dxf"
	"cowl/mesh/read/outline"
)

// file wraps entities of one block in a drawing.
func file(entities string) string {
	return "  0\r\nSECTION\r\n  2\r\nBLOCKS\r\n  0\r\nBLOCK\r\n  2\r\nFRONT\r\n" +
		strings.ReplaceAll(entities, "\n", "\r\n") + "  0\r\nENDBLK\r\n  0\r\nENDSEC\r\n  0\r\nEOF\r\n"
}

// Areas of known figures, however they are drawn: mm.
func TestReadAreas(t *testing.T) {
	for _, q := range []struct {
		what, entities string
		want, tol      float64 // mm²
	}{
		{"rectangle of four lines in any order and direction",
			"0\nLINE\n8\n1\n10\n0\n20\n0\n11\n300\n21\n0\n0\nLINE\n8\n1\n10\n0\n20\n200\n11\n300\n21\n200\n" +
				"0\nLINE\n8\n1\n10\n300\n20\n0\n11\n300\n21\n200\n0\nLINE\n8\n1\n10\n0\n20\n200\n11\n0\n21\n0\n", 300 * 200, 1e-6},
		{"circle of two arcs", "0\nLWPOLYLINE\n8\n1\n70\n1\n10\n0\n20\n0\n42\n1\n10\n200\n20\n0\n42\n1\n",
			math.Pi * 100 * 100, 50},
		{"square with a bay cut by an arc", "0\nPOLYLINE\n8\n1\n66\n1\n70\n1\n0\nVERTEX\n8\n1\n10\n0\n20\n0\n0\nVERTEX\n8\n1\n10\n300\n20\n0\n42\n-1\n0\nVERTEX\n8\n1\n10\n300\n20\n200\n0\nVERTEX\n8\n1\n10\n0\n20\n200\n0\nSEQEND\n",
			300*200 - math.Pi*100*100/2, 50},
		{"last point on the first, not flagged closed",
			"0\nLWPOLYLINE\n8\n1\n70\n0\n10\n0\n20\n0\n10\n300\n20\n0\n10\n300\n20\n200\n10\n0\n20\n0\n", 300 * 200 / 2, 1e-6},
		{"seam line before cut line", "0\nLWPOLYLINE\n8\n1\n70\n1\n" +
			"10\n-10\n20\n-10\n10\n310\n20\n-10\n10\n310\n20\n210\n10\n-10\n20\n210\n" +
			"0\nLWPOLYLINE\n8\n14\n70\n1\n10\n0\n20\n0\n10\n300\n20\n0\n10\n300\n20\n200\n10\n0\n20\n200\n", 300 * 200, 1e-6},
	} {
		got, err := dxf.Read(strings.NewReader(file(q.entities)), outline.Millimetre)
		if err != nil || len(got) != 1 || got[0].Name != "FRONT" {
			t.Errorf("Read(%s) = %d pieces, %v, want FRONT", q.what, len(got), err)
			continue
		}
		if a := polyline.Area(got[0].Outline) * 1e6; math.Abs(a-q.want) > q.tol {
			t.Errorf("Read(%s): %.2f mm², want %.2f ± %g mm²", q.what, a, q.want, q.tol)
		}
	}
}

// Marks come with the piece: allowance, grain, notch on the seam, hole.
func TestReadMarks(t *testing.T) {
	got, err := dxf.Read(strings.NewReader(file("0\nLWPOLYLINE\n8\n1\n70\n1\n"+
		"10\n-10\n20\n-10\n10\n310\n20\n-10\n10\n310\n20\n210\n10\n-10\n20\n210\n"+
		"0\nLWPOLYLINE\n8\n14\n70\n1\n10\n0\n20\n0\n10\n300\n20\n0\n10\n300\n20\n200\n10\n0\n20\n200\n"+
		"0\nLINE\n8\n7\n10\n50\n20\n50\n11\n150\n21\n150\n"+
		"0\nPOINT\n8\n4\n10\n100\n20\n-10\n0\nPOINT\n8\n13\n10\n60\n20\n70\n")), outline.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	p := got[0]
	if a := p.Grain() * 180 / math.Pi; math.Abs(a-45) > 1e-6 {
		t.Errorf("grain at %.2f°, want 45°", a)
	}
	for _, e := range p.Edges {
		if math.Abs(e.Allowance-0.01) > 1e-5 {
			t.Errorf("%s has %.4f m, want 0.01 m", e.Name, e.Allowance)
		}
	}
	if len(p.Notches) != 1 || math.Hypot(p.Notches[0].At.X-0.1, p.Notches[0].At.Y) > 1e-9 || p.Notches[0].Dir.Y != -1 {
		t.Errorf("notches %v, want one at (0.1, 0) pointing down", p.Notches)
	}
	if len(p.Holes) != 1 || math.Hypot(p.Holes[0].At.X-0.06, p.Holes[0].At.Y-0.07) > 1e-9 {
		t.Errorf("holes %v, want one at (0.06, 0.07)", p.Holes)
	}
}
