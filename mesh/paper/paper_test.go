package paper

import (
	"fmt"
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/draft/drafttest"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

func front(t *testing.T, change func(*draft.Cut)) draft.Cowl { return drafttest.Front(t, 10, change) }

// A seam is as long on paper as in the draft, and the edges go once round.
func TestFromDraftEdges(t *testing.T) {
	for k, facing := range []float64{0, 0.05, 0.1, 0.1} {
		hem := 0.15 * float64(k/3)
		d := front(t, func(c *draft.Cut) { c.Facing, c.Hem = facing, hem })
		p, err := FromDraft(d)
		if err != nil {
			t.Fatal(err)
		}
		r := d.Report()
		want := map[string]float64{"left side seam": r.Side, "right side seam": r.Side, "left armhole": r.Armhole,
			"right armhole": r.Armhole,
			"left shoulder": r.Shoulder, "right shoulder": r.Shoulder, "left waist": r.Waist, "right waist": r.Waist}
		if hem > 0 {
			delete(want, "left waist")
			delete(want, "right waist")
			want["left hem"], want["right hem"] = r.HemLine, r.HemLine
		}
		at, found := 0, 0
		for _, e := range p.Edges {
			if e.From != at {
				t.Errorf("facing %g: %s begins at %d, want %d", facing, e.Name, e.From, at)
			}
			at = e.To
			if w, ok := want[e.Name]; ok {
				found++
				if got := stretch(p, e); math.Abs(got-w) > 1e-6 {
					t.Errorf("facing %g: %s is %.5f m long, want %.5f m", facing, e.Name, got, w)
				}
			}
		}
		if at != 0 || found != len(want) {
			t.Errorf("facing %g: edges end at %d with %d seams, want 0 and %d", facing, at, found, len(want))
		}
	}
}

func stretch(p Piece, e Edge) float64 {
	l, n := 0.0, len(p.Outline)
	for i := e.From; i != e.To; i = (i + 1) % n {
		l += r2.Norm(r2.Sub(p.Outline[i], p.Outline[(i+1)%n]))
	}
	return l
}

// A 40 × 30 cm rectangle with 1 cm all round but 2.5 cm at the sides.
func TestCutPerEdge(t *testing.T) {
	outline := []r2.Vec{{}, {X: 0.4}, {X: 0.4, Y: 0.3}, {Y: 0.3}}
	edges := []Edge{{"waist", 0, 1, 0.01, false}, {"left side", 1, 2, 0.025, false}, {"neck", 2, 3, 0.01, false},
		{"right side", 3, 0, 0.025, false}}
	lo, hi := Box(Cut(outline, edges))
	want := [4]float64{-0.025, -0.01, 0.425, 0.31}
	for i, got := range []float64{lo.X, lo.Y, hi.X, hi.Y} {
		if math.Abs(got-want[i]) > 1e-9 {
			t.Errorf("Cut: side %d at %.4f m, want %.4f m", i, got, want[i])
		}
	}
}

// Where the allowance changes in the middle of a straight side, the cut line
// steps squarely: areas of two strips.
func TestCutSteps(t *testing.T) {
	outline := []r2.Vec{{}, {X: 0.2}, {X: 0.4}, {X: 0.4, Y: 0.3}, {Y: 0.3}}
	edges := []Edge{{"a", 0, 1, 0.01, false}, {"b", 1, 2, 0.03, false}, {"c", 2, 0, 0, false}}
	if got, want := polyline.Area(Cut(outline, edges)), 0.4*0.3+0.2*0.01+0.2*0.03; math.Abs(got-want) > 1e-9 {
		t.Errorf("Cut: area %.5f m², want %.5f m²", got, want)
	}
}

// The grain line keeps its angle, lies inside, and clear of every line.
func TestSettle(t *testing.T) {
	count := 0
	for _, deg := range []float64{-45, 0, 20, 45, 90} {
		p, err := FromDraft(front(t, func(c *draft.Cut) { c.Grain = deg * math.Pi / 180 }))
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Grain() * 180 / math.Pi; math.Abs(got-deg) > 1e-6 {
			t.Errorf("Settle(%g°): grain line at %.2f°", deg, got)
		}
		for _, v := range append(p.GrainLine[:], p.Label) {
			count++
			if !polyline.Contains(p.Outline, v) {
				t.Errorf("Settle(%g°): (%.3f, %.3f) m lies outside the piece", deg, v.X, v.Y)
			}
		}
		if c := p.clearance(r2.Vec{}, p.GrainLine[:], p.obstacles(), 0); c < 0.01 {
			t.Errorf("Settle(%g°): grain line %.4f m from the next line, want 0.01 m or more", deg, c)
		}
	}
	if count != 15 {
		t.Errorf("looked at %d points, want 15", count)
	}
}

// A stay is told with its length, a slash and a weight with theirs, and a pleat
// with its lines, each leg from the seam into the piece, on both halves. A slash
// is drawn from the cut line, the allowance outside the seam that it is square to.
func TestTreatedFront(t *testing.T) {
	s := draft.DefaultStand()
	s.StayShoulder, s.StayEdge, s.Weight, s.ReleaseWaist = true, true, 0.010, 0.06
	p, err := front(t, func(c *draft.Cut) { c.Pleats = 2 }).Treated(s)
	if err != nil {
		t.Fatal(err)
	}
	q, err := FromDraft(p)
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]bool{}
	for _, w := range q.Texts {
		said[w.Said] = true
	}
	// The shoulder of size 10 is 12.25 cm, of which 4 cm lie before the cowl point.
	for _, want := range []string{"stay tape 8.2 cm, each shoulder", fmt.Sprintf("stay tape %.1f cm, cowl edge",
		200*p.HalfEdge),
		"slash 1: 6.0 cm from the seam", "weight 10 g, facing at centre front", "pleats in each shoulder: 2, 2.0 cm"} {
		if !said[want] {
			t.Errorf("the front says %v, want %q among it", q.Texts, want)
		}
	}
	if len(q.Steps) != 5 {
		t.Errorf("%d steps, want one each for slash, edge, weight, pleats and shoulder: %q", len(q.Steps), q.Steps)
	}
	legs, slashes := 0, 0
	for _, l := range q.Lines {
		switch l.Kind {
		case Pleat:
			legs++
			if off := r2.Norm(r2.Sub(l.Points[0], q.Outline[nearest(q.Outline, l.Points[0])])); off > 1e-9 {
				t.Errorf("%s begins %g m off a corner of the seam", l.Name, off)
			}
		case Slash:
			slashes++
			cut := q.SlashFromCut(l)
			if long := r2.Norm(r2.Sub(cut[1], cut[0])); math.Abs(long-p.Trim-0.06) > 1e-9 {
				t.Errorf("%s is %.3f mm from the cut line to its end, want %.0f mm of allowance and 60 mm", l.Name, long*1000,
					p.Trim*1000)
			}
		}
	}
	if legs != 8 || slashes != 2 {
		t.Errorf("%d legs of pleats and %d slashes are marked, want 8 and 2", legs, slashes)
	}
}

// A front that was taken up on the stand says so, and that its lines are without it.
func TestTakenUpIsSaid(t *testing.T) {
	for _, q := range []struct {
		by   float64 // m
		want string
	}{{0.02, "edge taken up 2.0 cm at each cowl point"}, {-0.015, "edge let down 1.5 cm at each cowl point"}} {
		d, err := front(t, func(*draft.Cut) {}).TakenUp(q.by)
		if err != nil {
			t.Fatal(err)
		}
		p, err := FromDraft(d)
		if err != nil {
			t.Fatal(err)
		}
		said := false
		for _, w := range p.Texts {
			said = said || w.Said == q.want
		}
		if !said {
			t.Errorf("taken up %g m: the front says %v, want %q among it", q.by, p.Texts, q.want)
		}
	}
}
