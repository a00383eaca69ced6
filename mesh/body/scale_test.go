package body

import (
	"math"
	"testing"
)

// At the bust of a size the scaled body is the chart's; half way between two sizes it is
// their mean, and beyond the last the line goes on by its step.
func TestAtBust(t *testing.T) {
	for _, n := range Sizes() {
		want, err := FromChart(n)
		if err != nil {
			t.Fatal(err)
		}
		if got := AtBust(want.Bust); got != want {
			t.Errorf("AtBust(%.2f) = %+v, want size %d, %+v", want.Bust, got, n, want)
		}
	}
	// Size 11: shoulder 12.375, neck 37.5, back width 34.9 cm; size 24 (bust 116 cm): shoulder 14, neck 44 cm.
	for _, q := range []struct {
		bust, shoulder, neck float64
		on                   bool
	}{{0.90, 0.12375, 0.375, true}, {1.16, 0.14, 0.44, false}, {0.76, 0.115, 0.34, false}} {
		b := AtBust(q.bust)
		if math.Abs(b.Shoulder-q.shoulder) > 1e-4 || math.Abs(b.Neck-q.neck) > 1e-4 || OnChart(q.bust) != q.on {
			t.Errorf("AtBust(%.2f): shoulder %.4f, neck %.4f, on the chart %t, want %.4f, %.4f, %t", q.bust, b.Shoulder, b.Neck,
				OnChart(q.bust), q.shoulder, q.neck, q.on)
		}
	}
}

// A height 8.3 cm less takes a twentieth off what is measured upright, nothing off girths.
func TestTall(t *testing.T) {
	was, err := FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	b := was.Tall(0.95*ChartHeight, ChartHeight)
	for _, q := range []struct {
		name      string
		got, want float64
	}{
		{"nape to waist", b.NapeToWaist, 0.3895}, {"armscye depth", b.ArmscyeDepth, 0.1995},
		{"waist to hip", b.WaistToHip, 0.19285},
		{"bust", b.Bust, 0.88}, {"shoulder", b.Shoulder, 0.1225}, {"apex depth", b.ApexDepth, 0.255 - 0.0105},
	} {
		if math.Abs(q.got-q.want) > 1e-5 {
			t.Errorf("Tall: %s %.5f m, want %.5f", q.name, q.got, q.want)
		}
	}
}
