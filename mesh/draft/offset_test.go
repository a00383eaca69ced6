package draft

import (
	"cowl/mesh/polyline"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestOffset(t *testing.T) {
	square := []r2.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}
	// A 1 × 1 square with a slot 0.1 wide and 0.5 deep in its top.
	slot := []r2.Vec{{}, {X: 1}, {X: 1, Y: 1}, {X: 0.55, Y: 1}, {X: 0.55, Y: 0.5}, {X: 0.45, Y: 0.5}, {X: 0.45, Y: 1},
		{Y: 1}}
	// A sharp triangle: 1 high on a base of 0.2.
	spike := []r2.Vec{{}, {X: 0.2}, {X: 0.1, Y: 1}}
	for _, q := range []struct {
		name       string
		p          []r2.Vec
		d          float64
		area, high float64
	}{
		{"square", square, 0.1, 1.2 * 1.2, 1.1},
		{"none", square, 0, 1, 1},
		{"slot kept", slot, 0.02, 1.04*1.04 - 0.06*0.5, 1.02},
		{"slot filled", slot, 0.06, 1.12 * 1.12, 1.06},
		{"spike capped", spike, 0.05, math.NaN(), 1.1},
	} {
		got := offset(q.p, q.d)
		if a := polyline.Area(got); !math.IsNaN(q.area) && math.Abs(a-q.area) > 1e-9 {
			t.Errorf("offset(%s, %g): area %.6f, want %.6f", q.name, q.d, a, q.area)
		}
		var high float64
		for _, v := range got {
			high = max(high, v.Y)
		}
		if math.Abs(high-q.high) > 1e-9 {
			t.Errorf("offset(%s, %g): reaches %.4f, want %.4f", q.name, q.d, high, q.high)
		}
	}
}

// No point of the cut line lies nearer the outline than the allowance, and
// none further than a capped corner.
func TestCutLineDistance(t *testing.T) {
	for _, trim := range []float64{0.005, 0.01, 0.025, 0.06, 0.1} {
		for _, extension := range []float64{0, 0.08, 0.16} {
			c := DefaultCut()
			c.Trim, c.Extension = trim, extension
			p, err := Draft(workedBlock(t), c)
			if err != nil {
				t.Fatal(err)
			}
			n := len(p.Outline)
			for _, v := range p.CutLine {
				d := math.Inf(1)
				for i := range p.Outline {
					a, b := p.Outline[i], p.Outline[(i+1)%n]
					s := r2.Dot(r2.Sub(v, a), r2.Sub(b, a)) / r2.Norm2(r2.Sub(b, a))
					d = min(d, dist(v, lerp(a, b, min(max(s, 0), 1))))
				}
				if d < trim-1e-6 || d > 2.2*trim {
					t.Errorf("trim %g, extension %g: cut line %.5f m from the outline", trim, extension, d)
				}
			}
			if len(p.CutLine) < 14 {
				t.Errorf("trim %g: cut line of %d points, want at least 14", trim, len(p.CutLine))
			}
		}
	}
}
