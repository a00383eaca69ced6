package paper

import (
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// A drawn notch ends on the cut edge, whatever the allowance, and one marks where the end
// of the facing comes to lie on the shoulder.
func TestNotchReachesCut(t *testing.T) {
	for _, allowance := range []float64{0, 0.004, 0.010, 0.025} {
		p, err := FromDraft(front(t, func(c *draft.Cut) { c.Trim = allowance }))
		if err != nil {
			t.Fatal(err)
		}
		ends := 0
		for _, n := range p.Notches {
			from, to := p.NotchMark(n)
			least := math.Inf(1)
			for i, a := range p.CutLine {
				least = math.Min(least, polyline.Off(to, a, p.CutLine[(i+1)%len(p.CutLine)]))
			}
			if want := notchIn; allowance == 0 && math.Abs(r2.Norm(r2.Sub(to, from))-want) > 1e-9 {
				t.Errorf("no allowance: notch %q is %.2f mm long, want 4 mm into the piece", n.Name, 1000*r2.Norm(r2.Sub(to, from)))
			}
			if allowance > 0 && least > 1e-6 {
				t.Errorf("allowance %.0f mm: notch %q ends %.2f mm off the cut edge", 1000*allowance, n.Name, 1000*least)
			}
			if n.Name == "end of the facing" {
				ends++
			}
		}
		if ends != 2 {
			t.Errorf("allowance %.0f mm: %d notches for the end of the facing, want one on each shoulder", 1000*allowance, ends)
		}
	}
}
