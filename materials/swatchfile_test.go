package materials

import (
	"strings"
	"testing"
)

const swatchText = `name: my-crepe
title: "A crepe"
square: 10.0cm
mass: [1.35g, 1.36g]
overhang_warp: 3.2cm, 3.3cm, 3.1cm
overhang-weft: 2.6 cm
kes-g: 0.5
`

func TestParseSheet(t *testing.T) {
	s, err := ParseSwatch("s.yaml", []byte(swatchText))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		trial Trial
		mean  float64
		count int
	}{{Square, 0.1, 1}, {Mass, 1.355e-3, 2}, {OverhangWarp, 0.032, 3}, {OverhangWeft, 0.026, 1}, {KESShear, 28.094, 1},
		{BiasStretch, 0, 0}} {
		if r := s.Readings[c.trial]; !close1(r.Mean, c.mean, 1e-4) || r.Count != c.count {
			t.Errorf("ParseSheet %s = %+v, want %g from %d", c.trial.Key(), r, c.mean, c.count)
		}
	}
	if s.Name != "my-crepe" || s.Title != "A crepe" {
		t.Errorf("ParseSheet name %q, title %q", s.Name, s.Title)
	}
}

func TestParseSheetErrors(t *testing.T) {
	for _, c := range []struct{ add, want string }{
		{"mas: 3g\n", `s.yaml:8: unknown key "mas" (near: mass)`},
		{"disc: 18\n", `s.yaml:8: disc: "18" has no unit`},
		{"kes-g-warp: 30\n", "s.yaml:8: kes-g-warp: 30 gf/(cm·deg)"},
		{"overhang-warp: 3cm\n", "s.yaml:8: overhang-warp is set twice"},
		{"mass: 3g\n", "s.yaml:8: mass is set twice, first in line 4"},
		{"disc: {a: b}\n", "s.yaml:8: disc is"},
		{"disc:\n", "s.yaml:8: disc is empty"},
		{"disc: []\n", "s.yaml:8: disc: empty"},
	} {
		_, err := ParseSwatch("s.yaml", []byte(swatchText+c.add))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseSheet with %q: error %v, want it to say %q", c.add, err, c.want)
		}
	}
	if _, err := ParseSwatch("s.yaml", []byte("name: My Silk\n")); err == nil ||
		!strings.Contains(err.Error(), "s.yaml:1: name") {
		t.Errorf("ParseSheet with a bad name: %v", err)
	}
}

// What a sheet gives is a valid fabric or an error, never a panic.
func FuzzParseSheet(f *testing.F) {
	f.Add([]byte(swatchText))
	f.Add([]byte("kes-w: 12.38\nkes-b: 0.118\nkes-2hb: 0.124\nkes-emt-warp: 2.7\n"))
	f.Add([]byte("fast-w: 168\nfast-c-warp: 15\nfast-c-weft: 14.5\nfast-e5-warp: 0.5\nfast-e20-warp: 0.5000001\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := ParseSwatch("s", data)
		if err != nil {
			return
		}
		m, err := s.Measure()
		if err != nil {
			return
		}
		if err := m.Fabric.Validate(); err != nil {
			t.Fatalf("Measure gave an invalid fabric: %v\n%s", err, data)
		}
		if _, err := Parse("f", m.Fabric.YAML()); err != nil {
			t.Fatalf("Parse of a swatch: %v\n%s", err, m.Fabric.YAML())
		}
	})
}

func TestDimensions(t *testing.T) {
	for _, c := range []struct {
		of        dimension
		text      string
		si, digit float64
	}{
		{lengths, "3.20 cm", 0.032, 1e-4},
		{lengths, ".5in", 0.0127, 0.00254},
		{weights, "4oz/yd²", 0.135624, 0.033906},
		{weights, "16 momme", 0.06944, 4.340e-3},
		{loads, "5gf/cm", 4.903325, 0.980665},
		{rigidities, "98.0665µN·m", 98.0665e-6, 1e-10},
		{rigidities, "1 gf·cm²/cm", 98.0665e-6, 98.0665e-6},
		{rigidities, "1e1 mg·cm", 0.980665e-6, 0.980665e-6},
		{moments, "0.3mN", 0.3e-3, 1e-4},
		{shears, "1gf/(cm·deg)", 56.187, 56.187},
		{shears, "1 gf/cm/deg", 56.187, 56.187},
	} {
		got, err := c.of.parse(c.text, "")
		if err != nil || !close1(got.si, c.si, 1e-4) || !close1(got.digit, c.digit, 1e-4) {
			t.Errorf("parse(%q) = %+v, %v, want %g in steps of %g", c.text, got, err, c.si, c.digit)
		}
	}
}
