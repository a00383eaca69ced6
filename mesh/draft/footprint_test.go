package draft

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// The footprint of the worked cowl with a plain 10 cm strip as facing and 1 cm
// of allowance, cm, worked out apart from this program.
func TestFootprint(t *testing.T) {
	w := readWorked(t)
	var half []r2.Vec
	for _, at := range w.Cowl {
		half = append(half, fromCM(at))
	}
	a := fromCM(w.Cowl["cowl point"])
	half = append(half, r2.Vec{X: a.X, Y: a.Y + 0.10})
	outline := append([]r2.Vec(nil), half...)
	for _, v := range half {
		outline = append(outline, mirrored(v))
	}
	for _, q := range []struct{ grain, across, along float64 }{
		{0, 57.3, 52.8}, {15, 57.8, 61.9}, {30, 63.5, 66.9}, {45, 67.4, 67.4}, {60, 66.9, 63.5}, {90, 52.8, 57.3},
	} {
		for _, sign := range []float64{1, -1} {
			across, along := Footprint(outline, sign*q.grain*math.Pi/180, 0.01)
			if math.Abs(across*100-q.across) > 0.0501 || math.Abs(along*100-q.along) > 0.0501 {
				t.Errorf("Footprint(%g°) = %.2f × %.2f cm, want %.1f × %.1f", sign*q.grain, across*100, along*100, q.across,
					q.along)
			}
		}
	}
}
