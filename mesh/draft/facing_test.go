package draft

import (
	"math"
	"math/rand/v2"
	"testing"
)

// On 200 bodies and cuts the free edge of the facing, folded down, keeps 1 cm from the
// armhole, unless it is so deep that its level part is down to a quarter of the half edge.
func TestFacingClearOfArmhole(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 8))
	count, clear := 0, 0
	for count < 200 {
		_, p, ok := cutOf(rnd, AtFront)
		if !ok {
			continue
		}
		count++
		least, level := math.Inf(1), 0.0
		for i := 1; i < len(p.FacingEdge); i++ {
			a, b := p.FacingEdge[i-1], p.FacingEdge[i]
			if a.Y == b.Y {
				level = a.X
			}
			for k := range 51 {
				v := lerp(a, b, float64(k)/50)
				v.Y = 2*p.FoldY - v.Y
				for j := range 10 * (len(p.Armhole) - 1) {
					least = math.Min(least, dist(v, lerp(p.Armhole[j/10], p.Armhole[j/10+1], float64(j%10)/10)))
				}
			}
		}
		switch {
		case least > 0.0098: // places looked at lie 1 mm apart
			clear++
		case level > leastPlateau*p.HalfEdge+0.002:
			t.Errorf("case %d: facing %.0f mm deep keeps %.1f mm from the armhole, want 10 mm", count, p.Facing*1000, least*1000)
		}
	}
	if clear < 180 {
		t.Errorf("%d of %d facings are clear of the armhole, want 180 or more", clear, count)
	}
}
