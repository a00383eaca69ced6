package truing

import (
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// Every edge of every piece lies inside its cut line by its own allowance, the
// edges go once round, and what is sewn together is of one length, with a hem too and of a
// back cowl.
func TestPapers(t *testing.T) {
	for _, hem := range []float64{0, 0.05, 0.18} {
		checkPapers(t, hem, draft.AtFront, "Cowl front", "Back")
		checkPapers(t, hem, draft.AtBack, "Cowl back", "Front")
	}
}

func checkPapers(t *testing.T, hem float64, worn draft.Side, cowl, plain string) {
	p, k := front(t, func(c *draft.Cut) { c.Hem, c.Worn = hem, worn })
	b, err := draft.MatchBack(k, p)
	if err != nil {
		t.Fatal(err)
	}
	s := Suit{Front: p, Back: b, BackGrain: p.Grain, Allow: DefaultAllowances(p.Grain)}
	pieces, err := s.Papers()
	if err != nil {
		t.Fatal(err)
	}
	if len(pieces) != 3 {
		t.Fatalf("Papers: %d pieces, want 3", len(pieces))
	}
	count := 0
	lengths := map[string]float64{}
	for _, q := range pieces {
		at := 0
		for _, e := range q.Edges {
			if e.From != at {
				t.Errorf("%s: %s begins at %d, want %d", q.Name, e.Name, e.From, at)
			}
			at = e.To
			want := 0.01
			if e.Name == "left side seam" || e.Name == "right side seam" {
				want = 0.025
			}
			mid := r2.Scale(0.5, r2.Add(q.Outline[e.From], q.Outline[(e.From+1)%len(q.Outline)]))
			if got := inwardClosed(q.CutLine, mid); math.Abs(got-want) > 0.0002 {
				t.Errorf("%s: %s is cut %.2f mm out, want %.1f mm", q.Name, e.Name, got*1000, want*1000)
			}
			count++
			lengths[q.Name+" "+e.Name] = stretch(q, e)
		}
		if at != 0 {
			t.Errorf("%s: edges end at %d, want 0", q.Name, at)
		}
	}
	if count != 12+10+6 {
		t.Errorf("looked at %d edges, want 28", count)
	}
	for _, w := range [][2]string{
		{cowl + " left shoulder", plain + " left shoulder"}, {cowl + " right side seam", plain + " right side seam"},
		{cowl + " left facing end", plain + " neck facing left shoulder"}, {plain + " left neck", plain +
			" neck facing left neck"},
	} {
		if a, b := lengths[w[0]], lengths[w[1]]; a == 0 || math.Abs(a-b) > 0.0005 {
			t.Errorf("%s %.2f cm, %s %.2f cm, want them to walk within 0.5 mm", w[0], a*100, w[1], b*100)
		}
	}
}

// stretch is the length of an edge.
func stretch(p paper.Piece, e paper.Edge) float64 {
	l, n := 0.0, len(p.Outline)
	for i := e.From; i != e.To; i = (i + 1) % n {
		l += r2.Norm(r2.Sub(p.Outline[i], p.Outline[(i+1)%n]))
	}
	return l
}

func TestDefaultAllowances(t *testing.T) {
	for _, q := range []struct{ grain, side float64 }{{45, 0.025}, {-45, 0.025}, {30, 0.025}, {0, 0.01}, {90, 0.01},
		{-90, 0.01}, {10, 0.01}, {-10, 0.01}} {
		if a := DefaultAllowances(q.grain * math.Pi / 180); a.Side != q.side || a.Seam != 0.01 {
			t.Errorf("DefaultAllowances(%g°) = %+v, want side %.3f", q.grain, a, q.side)
		}
	}
}

// nearestOn returns the place of a side nearest to v.
func nearestOn(side [2]r2.Vec, v r2.Vec) r2.Vec {
	d := r2.Sub(side[1], side[0])
	t := r2.Dot(r2.Sub(v, side[0]), d) / r2.Norm2(d)
	return r2.Add(side[0], r2.Scale(min(max(t, 0), 1), d))
}

// Folded on paper, the back dart's edge lies on the cut line of the waist: the
// side half swung about the dart point until its leg lies on the inner leg, the
// cloth between the legs folded under towards the centre back.
func TestBackDartFolds(t *testing.T) {
	p, k := front(t, func(*draft.Cut) {})
	b, err := draft.MatchBack(k, p)
	if err != nil {
		t.Fatal(err)
	}
	s := Suit{Front: p, Back: b, Allow: DefaultAllowances(p.Grain)}
	outer, point, inner := b.Dart[0], b.Dart[1], b.Dart[2]
	cut := s.back().CutLine
	towardsCB := func(v r2.Vec) bool { return r2.Cross(r2.Sub(inner, point), r2.Sub(v, point)) < 1e-9 }
	var seam [][2]r2.Vec // sides of the cut line of the waist beyond the inner leg
	for i, v := range cut {
		if w := cut[(i+1)%len(cut)]; towardsCB(v) && towardsCB(w) && v.Y < point.Y && w.Y < point.Y && v.X > -1e-9 &&
			w.X > -1e-9 {
			seam = append(seam, [2]r2.Vec{v, w})
		}
	}
	across := func(v, a, b r2.Vec) r2.Vec { // v mirrored about ab
		u := r2.Unit(r2.Sub(b, a))
		d := r2.Sub(v, a)
		return r2.Add(a, r2.Sub(r2.Scale(2*r2.Dot(d, u), u), d))
	}
	off := func(v r2.Vec) float64 {
		least := math.Inf(1)
		for _, side := range seam {
			least = math.Min(least, r2.Norm(r2.Sub(v, nearestOn(side, v))))
		}
		return least
	}
	waist := b.Waist[len(b.Waist)-1].Y - s.Allow.Seam
	count := 0
	for i, v := range cut {
		w := cut[(i+1)%len(cut)]
		for k := range 20 {
			q := r2.Add(v, r2.Scale(float64(k)/20, r2.Sub(w, v)))
			if q.Y > waist+0.002 || r2.Cross(r2.Sub(inner, point), r2.Sub(q, point)) < 0 ||
				r2.Cross(r2.Sub(outer, point), r2.Sub(q, point)) > 0 {
				continue // not between the legs
			}
			count++
			if r2.Norm(r2.Sub(q, outer)) < r2.Norm(r2.Sub(q, inner)) {
				q = across(q, point, r2.Scale(0.5, r2.Add(outer, inner))) // the outer half lies on the inner
			}
			if d := off(across(q, point, inner)); d > 5e-5 {
				t.Errorf("cut line at (%.1f, %.1f) mm: folded under it lies %.2f mm off the cut line of the waist", q.X*1000,
					q.Y*1000, d*1000)
			}
		}
	}
	if count < 20 {
		t.Errorf("looked at %d places between the legs, want 20 or more", count)
	}
}

// Each closure draws its stops: a notch on front and back that reaches the cut edge, at
// the same place down the seam, a stop inside, and a step of the work; a slit is drawn on the
// back. Seen from the right side of the cloth, the wearer's left is at X above 0 on the
// front and below 0 on the back, whichever is the cowl; a back cowl is not slit.
func TestClosuresOnPaper(t *testing.T) {
	for _, worn := range []draft.Side{draft.AtFront, draft.AtBack} {
		checkClosures(t, worn)
	}
}

func checkClosures(t *testing.T, worn draft.Side) {
	p, k := front(t, func(c *draft.Cut) { c.Worn = worn })
	b, err := draft.MatchBack(k, p)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct {
		closure     draft.Closure
		front, back int // notches more
		lines       [2]int
	}{{draft.SideZip, 1, 1, [2]int{1, 1}}, {draft.ShoulderOpen, 1, 1, [2]int{1, 1}},
		{draft.BackOpen, 0, 0, [2]int{0, 2}}} {
		g, err := q.closure.GapIn(p, b, 0.57)
		if worn == draft.AtBack && q.closure == draft.BackOpen {
			if err == nil {
				t.Error("the centre back of a back cowl was slit, want an error")
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		plain, err := Suit{Front: p, Back: b, Allow: DefaultAllowances(p.Grain)}.Papers()
		if err != nil {
			t.Fatal(err)
		}
		got, err := Suit{Front: p, Back: b, Allow: DefaultAllowances(p.Grain), Gap: g}.Papers()
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range []int{q.front, q.back} {
			more := got[i].Notches[len(plain[i].Notches):]
			if len(more) != want || len(got[i].Lines)-len(plain[i].Lines) != q.lines[i] {
				t.Errorf("%v: %s has %d notches and %d lines more, want %d and %d", q.closure, got[i].Name, len(more),
					len(got[i].Lines)-len(plain[i].Lines), want, q.lines[i])
			}
			for _, n := range more {
				if _, end := got[i].NotchMark(n); inwardClosed(got[i].CutLine, end) > 1e-6 ||
					(n.At.X < 0) != (got[i].Worn == draft.AtBack) {
					t.Errorf("%v: notch of %s at %v ends at %v, want it on the wearer's left, to the cut edge", q.closure,
						got[i].Name, n.At, end)
				}
			}
		}
		if steps := len(got[0].Steps) + len(got[1].Steps) - len(plain[0].Steps) - len(plain[1].Steps); steps != 1 {
			t.Errorf("%v: %d steps more, want 1", q.closure, steps)
		}
	}
}
