package truing

import (
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// Every edge of every piece lies inside its cut line by its own allowance, the
// edges go once round, and what is sewn together is of one length.
func TestPapers(t *testing.T) {
	p, k := front(t, func(*draft.Cut) {})
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
		{"Cowl front left shoulder", "Back left shoulder"}, {"Cowl front right side seam", "Back right side seam"},
		{"Cowl front left facing end", "Back neck facing left shoulder"}, {"Back left neck", "Back neck facing left neck"},
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
	for _, q := range []struct{ grain, side float64 }{{45, 0.025}, {-45, 0.025}, {30, 0.025}, {0, 0.01}, {90, 0.01}, {-90, 0.01}, {10, 0.01}, {-10, 0.01}} {
		if a := DefaultAllowances(q.grain * math.Pi / 180); a.Side != q.side || a.Seam != 0.01 {
			t.Errorf("DefaultAllowances(%g°) = %+v, want side %.3f", q.grain, a, q.side)
		}
	}
}
