package truing

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// marksOfStrap returns the places on the outline where a strap is marked.
func marksOfStrap(p paper.Piece) []r2.Vec {
	var out []r2.Vec
	for _, n := range p.Notches {
		if strings.HasSuffix(n.Name, ", middle") {
			out = append(out, n.At)
		}
	}
	for _, l := range p.Lines {
		if strings.HasSuffix(l.Name, ", middle") {
			out = append(out, l.Points[0])
		}
	}
	return out
}

// A strap is a strip twice as wide as it is finished, on the straight grain, and its places
// on cowl and plain front lie 1.5 cm down the shoulder seam, where they meet; with an
// allowance of 1 cm they are notches, with 2.5 cm a notch on the cowl would cross its facing.
func TestStrapOnPaper(t *testing.T) {
	p, k := front(t, func(c *draft.Cut) { c.Worn, c.Extension, c.CowlPoint = draft.AtBack, 0.10, 0.05 })
	b, err := draft.MatchBack(k, p)
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, allowance := range []float64{0.01, 0.025} {
		for kind, want := range map[draft.Strapping]string{draft.Strapped: "Strap", draft.Tied: "Tie"} {
			strap, err := p.StrapOf(kind)
			if err != nil {
				t.Fatal(err)
			}
			s := Suit{Front: p, Back: b, Strap: strap, Allow: Allowances{Seam: allowance, Side: allowance}}
			pieces, err := s.Papers()
			if err != nil {
				t.Fatal(err)
			}
			alone, err := s.CowlPapers()
			if err != nil || len(pieces) != 4 || len(alone) != 2 || alone[1].Name != want {
				t.Fatalf("Papers: %d pieces, CowlPapers: %d, %v, want 4 and the cowl with its %s", len(pieces), len(alone), err,
					want)
			}
			strip := pieces[3]
			lo, hi := paper.Box(strip.Outline)
			cutLo, cutHi := paper.Box(strip.CutLine)
			if math.Abs(hi.Y-lo.Y-strap.Long) > 1e-9 || math.Abs(hi.X-lo.X-0.04) > 1e-9 || strip.Grain() != 0 ||
				strip.Quantity != int(kind) {
				t.Errorf("%s: %v to %v, grain %g, %d times, want %g × 0.04 m along the warp, %d times", strip.Name, lo, hi,
					strip.Grain(), strip.Quantity, strap.Long, kind)
			}
			if math.Abs(cutHi.X-hi.X-0.01) > 1e-9 || math.Abs(lo.Y-cutLo.Y-allowance) > 1e-9 {
				t.Errorf("%s: cut %v to %v, want 1 cm beside the strip and %g m beyond its ends", strip.Name, cutLo, cutHi,
					allowance)
			}
			count += strapMarked(t, pieces[0], p.Shoulder[0]) + strapMarked(t, pieces[1], b.Shoulder[0])
			for _, n := range pieces[0].Notches {
				if on := r2.Norm(r2.Sub(pieces[0].NotchOnCut(n), n.At)); strings.HasSuffix(n.Name, ", middle") &&
					on > 1.2*allowance {
					t.Errorf("a notch of the strap runs %.1f mm out, allowance %.0f mm", on*1000, allowance*1000)
				}
			}
		}
	}
	if count != 16 {
		t.Errorf("looked at %d marks, want 16", count)
	}
}

// strapMarked wants the two marks of the strap 15 mm from the cowl points, and counts them.
func strapMarked(t *testing.T, piece paper.Piece, cowlPoint r2.Vec) (count int) {
	t.Helper()
	marks := marksOfStrap(piece)
	if len(marks) != 2 {
		t.Fatalf("%s has %d marks of the strap, want 2", piece.Name, len(marks))
	}
	for _, v := range marks {
		count++
		if v.X < 0 {
			v = mirrored(v)
		}
		if d := r2.Norm(r2.Sub(v, cowlPoint)); math.Abs(d-0.015) > 1e-9 {
			t.Errorf("%s: strap %.2f mm from the cowl point, want 15 mm", piece.Name, d*1000)
		}
	}
	return count
}
