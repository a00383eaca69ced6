package draft

import (
	"errors"
	"math"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/limit"
	"cowl/mesh/polyline"
)

// frontOf is a cowl front of size 10 with an extension, m.
func frontOf(t *testing.T, extension float64) Cowl {
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
			{"centre front", q.FoldY, p.FoldY}, {"armhole", polyline.Length(q.Armhole), polyline.Length(p.Armhole)},
			{"waist", polyline.Length(q.Waist), polyline.Length(p.Waist)},
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

// Pleats keep their shares of the shoulder seam when it is made shorter, and are refused
// by name where they do not fit it any more: four of 5 mm on an edge let down once
// had legs beyond the seam.
func TestTakenUpPleats(t *testing.T) {
	p := pleatedFront(t, 2, 0.02, Neck)
	p.Trim = 0.08
	r := p.TakeUpRange(0)
	fit, refused := 0, 0
	for by := r.Lo; by < r.Hi; by += 0.005 {
		q, err := p.TakenUp(by)
		var e *limit.Error
		switch {
		case err == nil:
			fit++
		case errors.As(err, &e) && e.Field == "pleats":
			refused++
			continue
		default:
			t.Errorf("TakenUp(%.3f) = %v, want an error of the pleats", by, err)
			continue
		}
		for k, l := range q.Pleats {
			if got, want := l.At/q.ShoulderLength(), p.Pleats[k].At/p.ShoulderLength(); math.Abs(got-want) > 1e-12 {
				t.Errorf("TakenUp(%.3f): pleat %d at %.4f of the seam, want %.4f", by, k, got, want)
			}
			if a, b := q.Legs(k); a < 0 || b > polyline.Length(q.Shoulder) {
				t.Errorf("TakenUp(%.3f): legs of pleat %d at %.4f and %.4f m of %.4f m", by, k, a, b, polyline.Length(q.Shoulder))
			}
		}
	}
	if fit == 0 || refused == 0 {
		t.Errorf("%d fit and %d refused, want some of both", fit, refused)
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
