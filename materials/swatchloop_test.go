package materials

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Loops of 15 cm of a cloth of 100 g/m² with bending lengths of a known part of
// it, as deep as shooting says, read to 0.01 mm.
func TestSwatchLoop(t *testing.T) {
	for _, lengths := range []float64{3, 6, 9} {
		height := fmt.Sprintf("%.3fcm", 15*shotDepth(t, lengths))
		m, err := swatchOf(t, "weight 100gsm", "loop-length 15.00cm", "loop-warp "+height, "loop-weft "+height,
			"loop-bias "+height).Measure()
		if err != nil {
			t.Fatalf("loop %s: %v", height, err)
		}
		want := 0.1 * 9.80665 * math.Pow(0.15/lengths, 3)
		for _, q := range []Field{BendWarp, BendWeft, BendBias} {
			if got := q.Value(m.Fabric); math.Abs(got/want-1) > 2e-3 || m.Fabric.Basis[q].Kind != Measured {
				t.Errorf("loop %s: %s = %.4g (%v), want %.4g N·m, measured", height, q.Key(), got, m.Fabric.Basis[q], want)
			}
		}
	}
}

// Of a loop of 9 bending lengths 1 % of the height is 1.31 % of the bending
// length (shooting at 8.9 and 9).
func TestSwatchLoopSpread(t *testing.T) {
	m, err := swatchOf(t, "weight 100gsm", "loop-length 15.000cm", "loop-warp 4.872cm,4.970cm,4.775cm",
		"loop-weft 4.872cm").Measure()
	if err != nil {
		t.Fatal(err)
	}
	slope := math.Log(9/8.9) / math.Log(shotDepth(t, 9)/shotDepth(t, 8.9))
	want := slope * 0.0975 / math.Sqrt(3) / 4.872
	if got := m.Lengths[0].Relative(); math.Abs(got/want-1) > 0.1 {
		t.Errorf("± of the bending length %.4f, want %.4f", got, want)
	}
}

func TestSwatchLoopRefuses(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"loop-warp 5cm; loop-weft 5cm", "loop-warp without loop-length"},
		{"loop-length 15cm; loop-warp 2cm; loop-weft 5cm",
			"2.1 cm–6.75 cm: the cloth is too stiff for it, want a longer loop"},
		{"loop-length 15cm; loop-warp 7cm; loop-weft 5cm", "too limp for it, want a shorter loop"},
		{"loop-length 15cm; overhang-warp 3cm; overhang-weft 3cm", "loop-length without a height"},
		{"loop-length 15cm; loop-warp 5cm; overhang-warp 3cm; overhang-weft 3cm",
			"given twice, by overhang-warp and loop-warp"},
		{"overhang-warp 3cm", "one of overhang-weft, loop-weft"},
	} {
		_, err := swatchOf(t, append(strings.Split(c.lines, "; "), "weight 100gsm")...).Measure()
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.lines, err, c.want)
		}
	}
}
