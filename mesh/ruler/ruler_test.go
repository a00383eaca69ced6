package ruler

import (
	"errors"
	"math"
	"strings"
	"testing"

	"cowl/mesh/limit"
)

func TestUnitsParse(t *testing.T) {
	for _, c := range []struct {
		units Units
		text  string
		want  float64 // m
	}{
		{Centimetres, "8", 0.08}, {Centimetres, " 8,5 ", 0.085}, {Centimetres, "80mm", 0.08}, {Centimetres, "1in", 0.0254},
		{Inches, "3 1/8", 0.079375}, {Inches, "1/4", 0.00635}, {Inches, "3.25 in", 0.08255}, {Inches, "8cm", 0.08},
		{Inches, "2\"", 0.0508},
	} {
		if got, err := c.units.Parse(c.text); err != nil || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("Parse(%q) in %s = %v, %v, want %v", c.text, c.units, got, err, c.want)
		}
	}
	for _, text := range []string{"", "x", "8 km", "1/0", "3 1/", "nan", "1e999"} {
		if got, err := Inches.Parse(text); err == nil || !strings.Contains(err.Error(), "type a number") {
			t.Errorf("Parse(%q) = %v, %v, want an error that says what to type", text, got, err)
		}
	}
}

// A refusal is read in the units of the controls, on one line.
func TestUnitsWords(t *testing.T) {
	err := errors.Join(limit.Range{Field: "extension", Value: 0.381, Hi: 0.127, Unit: limit.Length,
		Why: limit.Say("so")}.Check(), errors.New("8 cm stay as they are"))
	for u, want := range map[Units]string{
		Centimetres: "extension 38.1 cm, want 0.0–12.7 cm: so; 8 cm stay as they are",
		Inches:      "extension 15.00 in, want 0.00–5.00 in: so; 8 cm stay as they are",
	} {
		if got := u.Words(err); got != want {
			t.Errorf("words in %s = %q, want %q", u, got, want)
		}
	}
}

func TestUnitsWrite(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Centimetres.Length(0.1234), "12.3 cm"}, {Inches.Length(0.0254), "1 in"}, {Centimetres.Length(-0.00001), "0.0 cm"},
		{Centimetres.Small(0.0123), "12 mm"}, {Inches.Small(0.0127), "1/2 in"}, {Inches.Length(-0.0254), "-1 in"},
		{Inches.Length(0.0508 + 0.0254*0.37), "2 3/8 in"}, {Inches.Length(0.0254 * 3.94), "4 in"},
		{Inches.Length(0.0254 / 4), "1/4 in"}, {Inches.Length(-0.0254 / 20), "0 in"},
		{Inches.Small(0.008), "5/16 in"}, {Inches.Small(0.001), "1/32 in"}, {Inches.Small(0.082), "3 1/4 in"},
		{Inches.Apart(0.015), "19/32 in"}, {Centimetres.Apart(0.015), "15 mm"}, {Centimetres.Apart(0.0125), "12.5 mm"},
		{Centimetres.Area(0.0005, 1), "5.0 cm²"}, {Inches.Area(0.00064516, 1), "1.00 sq in"},
		{Inches.Fine(0.0254 * 12.5), "12 1/2 in"}, {Inches.Fine(0.0254 / 32), "1/32 in"},
		{Centimetres.Fine(0.12345), "12.35 cm"},
		{Inches.Slight(0.0254 / 8), "0.125 in"}, {Inches.Slight(-1e-6), "0.000 in"}, {Centimetres.Slight(0.00034), "0.3 mm"},
		{Inches.Round(0.0254 * 45), "45 in"}, {Inches.Round(1.4), "55 in"}, {Centimetres.Round(1.4), "140 cm"},
		{Inches.Enough(0.0254 * 20.01), "20 1/2 in"}, {Inches.Enough(0.508), "20 in"}, {Centimetres.Enough(0.501), "51 cm"},
		{Centimetres.Enough(0.29), "29 cm"},
		{Inches.Cloth(0.83612736), "1.00 sq yd"}, {Centimetres.Cloth(1.234), "1.23 m²"},
	} {
		if c.got != c.want {
			t.Errorf("wrote %q, want %q", c.got, c.want)
		}
	}
}

// An inch is 25.4 mm and a square inch 6.4516 cm², exactly (NIST SP 811, appendix B).
func TestInch(t *testing.T) {
	if Inch*1000 != 25.4 || math.Abs(Inches.PerMetre()*Inch-1) > 1e-15 || math.Abs(Inch*Inch-6.4516e-4) > 1e-18 {
		t.Errorf("Inch = %.17g m, want 0.0254", Inch)
	}
}

func TestSpeak(t *testing.T) {
	defer Speak(Centimetres)
	if got := Spoken(); got != Centimetres {
		t.Errorf("Spoken() = %s before anybody spoke, want cm", got)
	}
	for _, u := range []Units{Inches, Centimetres} {
		if Speak(u); Spoken() != u {
			t.Errorf("Speak(%s): Spoken() = %s", u, Spoken())
		}
	}
}
