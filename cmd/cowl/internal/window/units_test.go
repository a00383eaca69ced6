package window

import (
	"strings"
	"testing"
)

func TestUnitsParse(t *testing.T) {
	for _, c := range []struct {
		units Units
		text  string
		want  float64 // m
	}{
		{Centimetres, "8", 0.08}, {Centimetres, " 8,5 ", 0.085}, {Centimetres, "80mm", 0.08}, {Centimetres, "1in", 0.0254},
		{Inches, "3 1/8", 0.079375}, {Inches, "1/4", 0.00635}, {Inches, "3.25 in", 0.08255}, {Inches, "8cm", 0.08}, {Inches, "2\"", 0.0508},
	} {
		if got, err := c.units.Parse(c.text); err != nil || !near(got, c.want, 1e-12) {
			t.Errorf("Parse(%q) in %s = %v, %v, want %v", c.text, c.units, got, err, c.want)
		}
	}
	for _, text := range []string{"", "x", "8 km", "1/0", "3 1/", "nan", "1e999"} {
		if got, err := Inches.Parse(text); err == nil || !strings.Contains(err.Error(), "type a number") {
			t.Errorf("Parse(%q) = %v, %v, want an error that says what to type", text, got, err)
		}
	}
}

// A refusal is read in the units of the controls.
func TestUnitsSpoken(t *testing.T) {
	for _, c := range []struct {
		units      Units
		said, want string
	}{
		{Centimetres, "extension 39.0 cm, want 0–12.7 cm", "extension 39.0 cm, want 0–12.7 cm"},
		{Inches, "extension 38.1 cm, want 0–12.7 cm: with 70 % closed", "extension 15.00 in, want 0.00–5.00 in: with 70 % closed"},
		{Inches, "5 to 15 cm is usual; 4, 8, 12.7 cm", "1.97 to 5.91 in is usual; 1.57, 3.15, 5.00 in"},
		{Inches, "point (6.7, 1.0) cm", "point (6.7, 1.0) cm"},
		{Inches, "spacing 8.0 mm, 254 cmx", "spacing 8.0 mm, 254 cmx"},
	} {
		if got := c.units.Spoken(c.said); got != c.want {
			t.Errorf("Spoken(%q) in %s = %q, want %q", c.said, c.units, got, c.want)
		}
	}
}

func TestUnitsWrite(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Centimetres.Length(0.1234), "12.3 cm"}, {Inches.Length(0.0254), "1.00 in"}, {Centimetres.Length(-0.00001), "0.0 cm"},
		{Centimetres.Small(0.0123), "12 mm"}, {Inches.Small(0.0127), "0.50 in"}, {Inches.Length(-0.0254), "-1.00 in"},
		{Centimetres.Area(0.0005), "5.0 cm²"}, {Inches.Area(0.00064516), "1.00 sq in"},
	} {
		if c.got != c.want {
			t.Errorf("wrote %q, want %q", c.got, c.want)
		}
	}
}
