package sim

import (
	"math"
	"testing"
)

// The fast way agrees with the library's arcsine, up to the seam and beyond.
func TestSteep(t *testing.T) {
	c := &Cloth{}
	n := 0
	for s := 1e-9; s < 1; s = s*1.01 + 1e-6 {
		want := math.Asin(s) / (s * math.Max(flattest, math.Sqrt(1-s*s)))
		if got := c.steep(s * s); math.Abs(got/want-1) > 2e-15+4e-16/(1-s) {
			t.Errorf("steep at sine %g = %.17g, want %.17g", s, got, want)
		}
		n++
	}
	if c.steep(0) != 1.0000000000000007 || n < 500 {
		t.Errorf("steep(0) = %.17g after %d sines, want 1 after hundreds", c.steep(0), n)
	}
}
