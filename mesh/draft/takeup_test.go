package draft

import (
	"math"
	"testing"

	"cowl/mesh/body"
)

// frontOf is a cowl front of size 10 with an extension, m.
func frontOf(t *testing.T, extension float64) Piece {
	t.Helper()
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	block, err := FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	c := DefaultCut()
	c.Extension = extension
	p, err := Draft(block, c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is taken up at the cowl points the edge and the extension lose; the rest of the
// front stays, and letting down again brings back the piece.
func TestTakenUp(t *testing.T) {
	p := frontOf(t, 0.11)
	for _, by := range []float64{0.03, 0.005, -0.02} {
		q, err := p.TakenUp(by)
		if err != nil {
			t.Fatalf("TakenUp(%g): %v", by, err)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"half edge", q.HalfEdge, p.HalfEdge - by}, {"extension", q.Extension, p.Extension - by}, {"taken", q.Taken, by},
			{"cowl point", q.Shoulder[0].X, p.Shoulder[0].X - by},
			{"tip", dist(q.Shoulder[len(q.Shoulder)-1], p.Shoulder[len(p.Shoulder)-1]), 0},
			{"centre front", q.FoldY, p.FoldY}, {"armhole", length(q.Armhole), length(p.Armhole)}, {"waist", length(q.Waist), length(p.Waist)},
		} {
			if math.Abs(c.got-c.want) > 1e-12 {
				t.Errorf("TakenUp(%g): %s %.6f, want %.6f", by, c.name, c.got, c.want)
			}
		}
		back, err := q.TakenUp(-by)
		if err != nil || math.Abs(back.HalfEdge-p.HalfEdge) > 1e-12 {
			t.Errorf("TakenUp(%g) and back: half edge %.6f, %v; want %.6f", by, back.HalfEdge, err, p.HalfEdge)
		}
	}
	for _, by := range []float64{0.12, -0.03, math.NaN()} {
		if _, err := p.TakenUp(by); err == nil {
			t.Errorf("TakenUp(%g): no error, want one", by)
		}
	}
}

// The least extension for an edge below the neck is where its V reaches the front neck point.
func TestDeepestBelowNeck(t *testing.T) {
	least := frontOf(t, 0.02).ExtensionToNeck()
	if d := frontOf(t, least).DeepestBelowNeck(); math.Abs(d) > 1e-6 {
		t.Errorf("extension %.4f: DeepestBelowNeck() = %.6f, want 0", least, d)
	}
	if d := frontOf(t, 0).DeepestBelowNeck(); d >= 0 {
		t.Errorf("no extension: DeepestBelowNeck() = %.4f, want below 0", d)
	}
}
