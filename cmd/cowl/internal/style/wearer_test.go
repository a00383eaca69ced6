package style

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"
)

func parsed(t *testing.T, text string) Style {
	t.Helper()
	s, err := Parse("s.yaml", []byte(text))
	if err != nil {
		t.Fatalf("Parse(%q): %v", text, err)
	}
	return s
}

// A bust without a size reads the chart at that bust; with one it is a single measurement.
// A flag goes before the file. What is written reads back to the same wearer.
func TestWearerByBust(t *testing.T) {
	for _, q := range []struct {
		file     string
		flags    map[string]float64
		shoulder float64 // cm
		line     string
	}{
		{"body:\n  bust_cm: 100\n", nil, 13, "size 16.0"},
		{"body:\n  bust_cm: 100\n  size: 10\n", nil, 12.25, ""},
		{"body:\n  size: 10\n", map[string]float64{"bust": 1.12}, 13.75, "drawn on beyond the 6 to 18"},
		{"body:\n  bust_cm: 100\n  shoulder_cm: 12.1\n", nil, 12.1, "size 16.0"},
		{"body:\n  size: auto\n  bust_cm: 84\n  height_cm: 158\n", nil, 12, "a height of 158 cm"},
	} {
		s := parsed(t, q.file)
		for name, v := range q.flags {
			if err := s.SetFlag(name, v); err != nil {
				t.Fatal(err)
			}
		}
		b, err := s.Wearer()
		if err != nil {
			t.Fatalf("%q: %v", q.file, err)
		}
		if math.Abs(b.Shoulder*100-q.shoulder) > 1e-6 {
			t.Errorf("%q %v: shoulder %.3f cm, want %.3f", q.file, q.flags, b.Shoulder*100, q.shoulder)
		}
		if got := s.SizeLine(); !strings.Contains(got, q.line) || q.line == "" && got != "" {
			t.Errorf("%q: SizeLine() = %q, want %q in it", q.file, got, q.line)
		}
		again := parsed(t, string(s.YAML()))
		if c, err := again.Wearer(); err != nil || c != b {
			t.Errorf("%q read back: %+v, %v, want %+v", q.file, c, err, b)
		}
	}
}

// Waist over the bust, plus and petite figures are drafted and formed within the ranges
// that the reference states; outside they are refused, and what was not measured is named.
func TestWearerFigures(t *testing.T) {
	count := 0
	for _, bust := range []float64{72, 104, 128} {
		for _, waist := range []float64{0, -0.25 * bust, -4, 4} {
			for _, height := range []float64{148, 184} {
				text := fmt.Sprintf("body:\n  bust_cm: %g\n  height_cm: %g\n", bust, height)
				if waist != 0 {
					text += fmt.Sprintf("  waist_cm: %g\n  hip_cm: %g\n", bust+waist, bust+max(8, waist+10))
				}
				s := parsed(t, text)
				p, err := s.Cowl()
				if err == nil {
					err = s.Stands()
				}
				if err != nil {
					t.Errorf("%q: %v", text, err)
					continue
				}
				if err := polyline.Area(p.Outline); err <= 0 {
					t.Errorf("%q: area %v", text, err)
				}
				count++
			}
		}
	}
	if count != 24 {
		t.Errorf("%d figures were drafted and formed, want 24", count)
	}
	for text, want := range map[string]string{
		"body:\n  bust_cm: 140\n":                    "measure and give bust_dart",
		"body:\n  bust_cm: 88\n  waist_cm: 95\n":     "front and back waist measured apart",
		"body:\n  size: auto\n":                      "want a bust with it",
		"body:\n  bust_cm: 88\n  height_cm: 210\n":   "height 210.0 cm, want 140.0–200.0 cm",
		"body:\n  bust_cm: 150\n  bust_dart_cm: 9\n": "measure and give neck",
	} {
		s := parsed(t, text)
		if _, err := s.Wearer(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: error %v, want %q in it", text, err, want)
		}
	}
	if body.LeastHeight > 1.48 || body.MostHeight < 1.84 {
		t.Error("the heights of the cases lie outside the range")
	}
}
