package measure

import (
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim/drape"
)

// What a wearer who bends does to the edge is said in the words of its side, and no change
// is called none.
func TestLeanLines(t *testing.T) {
	ruler.Speak(ruler.Centimetres)
	upright := drape.Posture{StandOff: 0.019, Opening: 0.00229, Kept: 2, Settled: true}
	for _, q := range []struct {
		worn    draft.Side
		off, at float64
		want    string
	}{
		{draft.AtFront, 0.025, 0.00298,
			"so the edge falls 6 mm from the chest, and the neck opens by 7 cm² for who looks from the front and above"},
		{draft.AtBack, 0.014, 0.00179,
			"so the edge comes 5 mm nearer to the back, and the neck closes by 5 cm² for who looks from the back and above"},
		{draft.AtBack, 0.0187, 0.00227,
			"so the edge stays about as near to the back, and the neck is about as open for who looks from the back and above"},
	} {
		o := &drape.Outcome{Laid: 2, Lean: &drape.Lean{Upright: upright, Back: upright,
			Bent: drape.Posture{StandOff: q.off, Opening: q.at, Kept: 2, Settled: true}}}
		if got := q.worn.Say(strings.Join(LeanLines(o), "\n")); !strings.Contains(got, "\n"+q.want+"\n") {
			t.Errorf("%v, edge from 19 to %g mm: %q, want %q", q.worn, q.off*1000, got, q.want)
		}
	}
}
