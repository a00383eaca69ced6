package draft

import (
	"cowl/mesh/polyline"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// cutAway returns what a trim takes off both halves, m².
func cutAway(t *testing.T, p Cowl, line TrimLine) (Cowl, float64) {
	t.Helper()
	q, err := p.Treated(Stand{}, line)
	if err != nil {
		t.Fatalf("Treated(%v): %v", line, err)
	}
	return q, polyline.Area(p.Outline) - polyline.Area(q.Outline)
}

// A straight trim from a quarter to three quarters of the side seam by way of
// a point 1 cm inside takes a triangle off either half, whichever way round it
// is drawn, and leaves underarm, waist and edge.
func TestTrimSide(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	a, b := lerp(p.Side[0], p.Side[1], 0.25), lerp(p.Side[0], p.Side[1], 0.75)
	out := outward(p.Side[0], p.Side[1])
	tip := r2.Add(lerp(a, b, 0.5), r2.Scale(-0.01, out))
	beyond := func(v r2.Vec) r2.Vec { return r2.Add(v, r2.Scale(0.5, r2.Sub(v, tip))) }
	line := TrimLine{beyond(a), tip, beyond(b)}
	for _, l := range []TrimLine{line, polyline.Reversed(line)} {
		q, gone := cutAway(t, p, l)
		if want := 2 * dist(a, b) * 0.01 / 2; math.Abs(gone-want) > 1e-9 {
			t.Errorf("the trim takes %.3f cm², want two triangles of together %.3f cm²", gone*1e4, want*1e4)
		}
		if q.Side[0] != p.Side[0] || q.Side[len(q.Side)-1] != p.Side[1] || q.HalfEdge != p.HalfEdge ||
			polyline.Length(q.Waist) != polyline.Length(p.Waist) {
			t.Errorf("side seam runs %v, half edge %g, want the ends %v and %g", q.Side, q.HalfEdge, p.Side, p.HalfEdge)
		}
	}
}

// A trim over a corner takes it off and belongs to the seam it runs along: the
// underarm goes down the side seam, or the side seam begins further in; the
// waist ends higher, or the side seam goes on to it. From seam to seam across a
// whole one the line takes its place.
func TestTrimCorners(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	place := func(line []r2.Vec, share float64) r2.Vec {
		v, _ := polyline.Along(line, share*polyline.Length(line))
		return v
	}
	for _, c := range []struct {
		name  string
		a, b  r2.Vec
		check func(q Cowl, a, b r2.Vec) bool
	}{
		{"underarm", place(p.Armhole, 0.85), place(p.Side, 0.05), func(q Cowl, a, b r2.Vec) bool {
			return dist(q.Armhole[len(q.Armhole)-1], b) < 1e-9 && dist(q.Side[0], b) < 1e-9 &&
				polyline.Length(q.Side) < polyline.Length(p.Side)
		}},
		{"side under the arm", place(p.Armhole, 0.97), place(p.Side, 0.6), func(q Cowl, a, b r2.Vec) bool {
			return dist(q.Armhole[len(q.Armhole)-1], a) < 1e-9 && dist(q.Side[0], a) < 1e-9 &&
				math.Abs(polyline.Length(q.Side)-dist(a, b)-0.4*polyline.Length(p.Side)) < 1e-9
		}},
		{"side to the waist", place(p.Side, 0.5), place(p.Waist, 0.1), func(q Cowl, a, b r2.Vec) bool {
			return math.Abs(polyline.Length(q.Side)-dist(a, b)-0.5*polyline.Length(p.Side)) < 1e-9 &&
				dist(q.Waist[0], b) < 1e-9 &&
				math.Abs(polyline.Length(q.Waist)-0.9*polyline.Length(p.Waist)) < 1e-9
		}},
		{"waist corner", place(p.Side, 0.95), place(p.Waist, 0.2), func(q Cowl, a, b r2.Vec) bool {
			return dist(q.Side[len(q.Side)-1], a) < 1e-9 && dist(q.Waist[0], a) < 1e-9 && dist(q.Waist[1], b) < 1e-9
		}},
		{"tip", place(p.Shoulder, 0.8), place(p.Armhole, 0.3), func(q Cowl, a, b r2.Vec) bool {
			return math.Abs(polyline.Length(q.Shoulder)-0.8*polyline.Length(p.Shoulder)) < 1e-9 && dist(q.Armhole[0], a) < 1e-9
		}},
		{"whole side", place(p.Armhole, 0.97), place(p.Waist, 0.05), func(q Cowl, a, b r2.Vec) bool {
			return len(q.Side) == 2 && dist(q.Side[0], a) < 1e-9 && dist(q.Side[1], b) < 1e-9
		}},
	} {
		d := r2.Unit(r2.Sub(c.b, c.a))
		line := TrimLine{r2.Sub(c.a, r2.Scale(0.003, d)), r2.Add(c.b, r2.Scale(0.003, d))}
		q, gone := cutAway(t, p, line)
		if gone <= 0 || !c.check(q, c.a, c.b) {
			t.Errorf("%s: takes %.2f cm², shoulder %v, armhole from %v to %v, side %v, waist %v", c.name, gone*1e4,
				q.Shoulder, q.Armhole[0], q.Armhole[len(q.Armhole)-1], q.Side, q.Waist)
		}
	}
}

func TestTrimRefused(t *testing.T) {
	c := DefaultCut()
	c.DartShare, c.Extension = 1, Auto
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	at := func(v r2.Vec, dx, dy float64) r2.Vec { return r2.Add(v, r2.Vec{X: dx, Y: dy}) }
	near, _ := polyline.Along(p.Shoulder, 0.01)
	near = r2.Add(near, r2.Scale(0.003, outward(p.Shoulder[0], p.Shoulder[1])))
	cowl, tip, waist := p.Shoulder[0], p.Armhole[0], p.Side[1]
	for _, q := range []struct {
		line TrimLine
		want string
	}{
		{TrimLine{waist}, "trim 1 has 1 points, want 2"},
		{TrimLine{at(waist, 0.05, 0.05), at(waist, 0.10, 0.05)}, "crosses the seams of the half in 0 places, want 2"},
		{TrimLine{at(waist, 0.05, 0.05), at(waist, -0.06, 0.10)},
			"in 1 places, want 2: begin and end it outside the piece; its last point ("},
		{TrimLine{at(cowl, -0.05, 0.02), at(cowl, -0.05, -0.05)}, "meets the cowl edge"},
		{TrimLine{near, at(cowl, -0.01, -0.05), at(tip, -0.02, -0.03), at(tip, 0.03, -0.03)},
			"cm from the cowl point, want at least 3.0 cm"},
		{TrimLine{at(waist, 0, 0), {X: -0.1, Y: -0.3}}, "draw it on the wearer's left half"},
		{TrimLine{at(waist, math.NaN(), 0), waist}, "NaN"},
		{TrimLine{at(p.Armhole[len(p.Armhole)-1], 0.02, -0.01), at(p.Apex, -0.03, 0.03), at(p.Apex, -0.03, -0.03),
			at(waist, 0.01, 0.03)}, "cuts off the bust point"},
	} {
		if _, err := p.Treated(Stand{}, q.line); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("Treated(%v): error %v, want one that says %q", q.line, err, q.want)
		}
	}
}
