package dxf_test

import (
	"bytes"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/draft/drafttest"
	"cowl/mesh/export/dxf"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

func front(t *testing.T, change func(*draft.Cut)) paper.Piece {
	t.Helper()
	p, err := paper.FromDraft(drafttest.Front(t, 10, change))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func written(t *testing.T, pieces []paper.Piece, o dxf.Options) drawing {
	t.Helper()
	var b bytes.Buffer
	if err := dxf.Write(&b, pieces, o); err != nil {
		t.Fatal(err)
	}
	return strict(t, b.Bytes())
}

// Lines, marks and their layers, read strictly: counts and areas known from
// the draft.
func TestWriteLayers(t *testing.T) {
	p := front(t, func(c *draft.Cut) { c.DartShare, c.Extension = 0.3, draft.Auto })
	d := written(t, []paper.Piece{p}, dxf.Options{Style: "Bluse für Ännchen – 1", Size: "10"})
	if len(d.order) != 1 || d.order[0] != "COWL_FRONT" {
		t.Fatalf("blocks %v, want COWL_FRONT", d.order)
	}
	on := func(layer string) []entity { return d.on("COWL_FRONT", layer) }
	for _, q := range []struct {
		layer string
		kind  string
		want  int
	}{{"1", "POLYLINE", 1}, {"14", "POLYLINE", 1}, {"84", "POLYLINE", 1}, {"87", "POLYLINE", 1}, {"8", "POLYLINE", 4},
		{"85", "POLYLINE", 4},
		{"7", "LINE", 1}, {"4", "POINT", len(p.Notches)}, {"13", "POINT", 2}, {"1", "TEXT", 3}, {"15", "TEXT", 7}} {
		n := 0
		for _, e := range on(q.layer) {
			if e.kind == q.kind {
				n++
			}
		}
		if n != q.want {
			t.Errorf("layer %s holds %d %s, want %d", q.layer, n, q.kind, q.want)
		}
	}
	for layer, want := range map[string]float64{"1": polyline.Area(p.CutLine), "14": polyline.Area(p.Outline)} {
		e := on(layer)[0]
		if got := polyline.Area(e.points) / 1e6; !e.closed || math.Abs(got-want) > 1e-6 {
			t.Errorf("layer %s: area %.6f m², closed %v, want %.6f m², closed", layer, got, e.closed, want)
		}
	}
	points := len(p.CutLine) + len(p.Outline)
	for _, l := range p.Lines {
		points += len(l.Points)
	}
	if got := len(on("2")) + len(on("3")); got != points || len(on("3")) < 40 {
		t.Errorf("%d corners and %d curve points, want %d together, most of them of the armholes", len(on("2")),
			len(on("3")), points)
	}
	grain := r2.Sub(on("7")[0].points[1], on("7")[0].points[0])
	if a := math.Atan2(grain.X, grain.Y) * 180 / math.Pi; math.Abs(a-45) > 0.01 {
		t.Errorf("grain line at %.2f°, want 45°", a)
	}
	var said []string
	for _, e := range d.texts {
		said = append(said, e.text)
	}
	if s := strings.Join(said, "|"); !strings.Contains(s, "Units: METRIC") ||
		!strings.Contains(s, "Style Name: Bluse f?r ?nnchen - 1") {
		t.Errorf("style text %q, want the unit and a name in ASCII", s)
	}
}

// Notches lie on the cut line.
func TestNotchesOnCut(t *testing.T) {
	p := front(t, func(*draft.Cut) {})
	d := written(t, []paper.Piece{p}, dxf.Options{})
	cut := d.on("COWL_FRONT", "1")[0].points
	notches := d.on("COWL_FRONT", "4")
	for _, n := range notches {
		least := math.Inf(1)
		for i, a := range cut {
			least = min(least, away(n.points[0], a, cut[(i+1)%len(cut)]))
		}
		if least > 0.01 {
			t.Errorf("notch at %v lies %.2f mm off the cut line", n.points[0], least)
		}
	}
	if len(notches) < 6 {
		t.Errorf("%d notches, want 6 or more", len(notches))
	}
}

// away returns the distance of v from the segment ab.
func away(v, a, b r2.Vec) float64 {
	d := r2.Sub(b, a)
	s := min(max(r2.Dot(r2.Sub(v, a), d)/r2.Norm2(d), 0), 1)
	return r2.Norm(r2.Sub(v, r2.Add(a, r2.Scale(s, d))))
}

// Two pieces of one name get two blocks, and do not lie on each other.
func TestWriteNames(t *testing.T) {
	p := front(t, func(*draft.Cut) {})
	p.Name = "Rückenteil, hinten, sehr lang"
	d := written(t, []paper.Piece{p, p, p}, dxf.Options{})
	if len(d.order) != 3 {
		t.Fatalf("blocks %v, want three", d.order)
	}
	edge := math.Inf(-1)
	for _, name := range d.order {
		lo, hi := paper.Box(d.on(name, "1")[0].points)
		if lo.X < edge {
			t.Errorf("block %s begins at %.1f mm, want right of %.1f mm", name, lo.X, edge)
		}
		edge = hi.X
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteErrors(t *testing.T) {
	if dxf.Write(io.Discard, nil, dxf.Options{}) == nil || dxf.Write(io.Discard, []paper.Piece{{Name: "empty"}},
		dxf.Options{}) == nil {
		t.Error("Write(nothing) = nil, want an error")
	}
	if err := dxf.Write(broken{}, []paper.Piece{front(t, func(*draft.Cut) {})}, dxf.Options{}); !errors.Is(err,
		io.ErrShortWrite) {
		t.Errorf("Write to a failing writer = %v, want %v", err, io.ErrShortWrite)
	}
}
