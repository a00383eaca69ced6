package window

import (
	"image/color"
	"math"
	"testing"

	"cowl/cmd/cowl/internal/stage"
)

// lightness is L* of CIE 1976 from sRGB (IEC 61966-2-1).
func lightness(c color.RGBA) float64 {
	lin := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	y := 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

// A ramp that rises evenly in lightness is read by every kind of colour vision.
func TestOneWayRampRisesInLightness(t *testing.T) {
	const steps = 32
	last := lightness(oneWay.At(0))
	whole := lightness(oneWay.At(1)) - last
	for i := 1; i <= steps; i++ {
		l := lightness(oneWay.At(float64(i) / steps))
		if rise := l - last; rise < 0.4*whole/steps || rise > 2*whole/steps {
			t.Errorf("step %d rises by %.2f, want about %.2f", i, rise, whole/steps)
		}
		last = l
	}
	if whole < 60 {
		t.Errorf("the ramp spans %.0f of lightness, want 60 or more", whole)
	}
}

// The two-way ramp is lightest in the middle, falls to both ends, and its ends
// are told apart by blue against yellow, which red-green blind eyes see.
func TestTwoWayRamp(t *testing.T) {
	for i := range len(twoWays) / 2 {
		a, b := lightness(twoWays[i]), lightness(twoWays[i+1])
		c, d := lightness(twoWays[len(twoWays)-1-i]), lightness(twoWays[len(twoWays)-2-i])
		if b <= a || d <= c {
			t.Errorf("colour %d from the ends: %.0f then %.0f, %.0f then %.0f, want lighter inwards", i, a, b, c, d)
		}
	}
	blueness := func(c color.RGBA) int { return int(c.B) - (int(c.R)+int(c.G))/2 }
	n := len(twoWays)
	for i := range n / 2 {
		if blueness(twoWays[i]) < 10 || blueness(twoWays[n-1-i]) > -10 {
			t.Errorf("pair %d: %d against %d of blue, want blue against yellow", i, blueness(twoWays[i]),
				blueness(twoWays[n-1-i]))
		}
	}
}

func TestYarnsDifferInLightness(t *testing.T) {
	if d := lightness(yarnColours.Weft) - lightness(yarnColours.Warp); d < 30 {
		t.Errorf("yarns differ by %.0f of lightness, want 30 or more", d)
	}
}

// The list of maps is in the order of their kinds, and each has what it needs.
func TestMapsAreWhole(t *testing.T) {
	for i, m := range maps {
		if m.kind != mapKind(i) || m.name == "" || m.help.String() == "" {
			t.Errorf("map %d is %q of kind %d, want its place in the list, name and help", i, m.name, m.kind)
		}
		if m.value != nil && (m.low >= m.high || m.legend == "" || m.label == nil || m.ramp == stage.Ramp{}) {
			t.Errorf("map %q lacks range, legend or ramp", m.name)
		}
	}
}
