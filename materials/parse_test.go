package materials

import (
	"bytes"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// minimal is the least a fabric file may say.
const minimal = `name: my-silk
weight_gsm: 70
bend_warp_uNm: 2
bend_weft_uNm: 1.5
`

func TestParseMinimal(t *testing.T) {
	f, err := Parse("silk.yaml", []byte(minimal))
	if err != nil {
		t.Fatalf("Parse(minimal): %v", err)
	}
	for _, c := range []struct {
		field Field
		want  float64 // SI
		kind  Kind
	}{
		{Weight, 0.070, Measured},
		{BendWarp, 2e-6, Measured},
		{BendWeft, 1.5e-6, Measured},
		{BendBias, 1.7231e-6, Assumed}, // (½/√2 + ½/√1.5)⁻²
		{Shear, 30, Assumed},
		{TensileWarp, 2000, Assumed},
		{TensileWeft, 2000, Assumed},
		{Thickness, 0.16055e-3, Assumed}, // 70 g/m² over 436 kg/m³
		{Friction, 0.3, Assumed},
		{FrictionCloth, 0.4, Assumed},
		{BendFriction, 0, Assumed},
		{ShearFriction, 0, Assumed},
		{BendSoftening, 0, Assumed},
		{ShearLock, 0, Assumed},
	} {
		if got := c.field.Value(f); !close1(got, c.want, 1e-4) || f.Basis[c.field].Kind != c.kind {
			t.Errorf("Parse(minimal) %s = %g, %v, want %g, %v", c.field.Key(), got, f.Basis[c.field], c.want, c.kind)
		}
	}
	if f.Complete() {
		t.Errorf("Parse(minimal) is Complete with an assumed shear")
	}
}

func TestParseMean(t *testing.T) {
	f, err := Parse("f.yaml", []byte("name: a\nweight_gsm: 100\nbend_mean_uNm: 3\nshear_N_per_m: 20\n"))
	if err != nil {
		t.Fatal(err)
	}
	if f.BendWarp != f.BendWeft || !close1(f.BendWarp, 3e-6, 1e-12) || f.Basis[BendWeft].Kind != Derived {
		t.Errorf("bend_mean_uNm 3 gave %g × %g, %v", f.BendWarp, f.BendWeft, f.Basis[BendWeft])
	}
	if !f.Complete() {
		t.Errorf("weight, mean bending and shear given, but not Complete")
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct {
		what, add string // add follows minimal, so its first line is line 5
		want      []string
	}{
		{"unknown key", "bend_bais_uNm: 2\n", []string{"f.yaml:5:", `"bend_bais_uNm"`, "near: bend_bias_uNm"}},
		{"out of range", "\nshear_N_per_m: -3\n", []string{"f.yaml:6:", "shear_N_per_m -3 N/m", "want 2–1000 N/m"}},
		{"KES unit by mistake", "shear_N_per_m: 0.5\n", []string{"f.yaml:5:", "shear_N_per_m 0.5 N/m", "56.2 N/m"}},
		{"not a number", "friction: smooth\n", []string{"f.yaml:5:", "friction is smooth, want a number"}},
		{"number with unit", "thickness_mm: 0.2 mm\n", []string{"f.yaml:5:", "thickness_mm is 0.2 mm, want a number"}},
		{"infinite", "thickness_mm: .inf\n", []string{"f.yaml:5:", "thickness_mm"}},
		{"huge", "thickness_mm: 1e999\n", []string{"f.yaml:5:", "thickness_mm"}},
		{"empty value", "title: linen\nfriction:\n", []string{"f.yaml:6:", "friction is empty, want a number"}},
		{"set twice", "weight_gsm: 80\n", []string{"f.yaml:5:", "weight_gsm is set twice, first in line 2"}},
		{"mean beside warp", "bend_mean_uNm: 80\n", []string{"f.yaml:5:", "bend_mean_uNm beside bend_warp_uNm"}},
		{"bending thrice", "bend_mean_uNm: 2\n", []string{"f.yaml:5:", "beside bend_weft_uNm"}},
		{"list", "title: [a, b]\n", []string{"f.yaml:5:", "title is", "want text"}},
		{"basis without value", "basis:\n  friction: measured\n", []string{"f.yaml:6:", "basis: friction has no value"}},
		{"basis kind", "basis:\n  weight_gsm: guessed\n", []string{"f.yaml:6:", `weight_gsm is "guessed"`,
			"measured, derived, assumed, memory"}},
		{"basis key", "basis:\n  weight: measured\n", []string{"f.yaml:6:", `unknown key "weight"`, "near: weight_gsm"}},
		{"drape key", "drape:\n  disk_mm: 180\n", []string{"f.yaml:6:", `unknown key "disk_mm"`, "near: disc_mm"}},
		{"drape range", "drape:\n  coefficient_pct: 0.22\n", []string{"f.yaml:6:", "coefficient_pct 0.22 %", "want 1–100 %"}},
		{"drape empty", "drape:\n  disc_mm: 180\n", []string{"f.yaml:5:", "coefficient_pct is missing"}},
		{"drape sizes", "drape:\n  coefficient_pct: 30\n  disc_mm: 300\n  specimen_mm: 240\n",
			[]string{"f.yaml:5:", "specimen_mm 240 mm, want more than disc_mm 300 mm"}},
		{"pull below shear", "shear_N_per_m: 300\npull_weft_N_per_m: 200\n",
			[]string{"f.yaml:6:", "pull_weft_N_per_m 200 N/m, want more than shear_N_per_m 300 N/m"}},
		{"range", "range:\n  weight_gsm: [80, 90]\n", []string{"f.yaml:6:",
			"weight_gsm 80–90 g/m² does not hold its value 70 g/m²"}},
		{"range end", "range:\n  weight_gsm: [5, 90]\n", []string{"f.yaml:6:", "weight_gsm 5 g/m², want 10–1500 g/m²"}},
		{"range form", "range:\n  weight_gsm: 60-80\n", []string{"f.yaml:6:", "weight_gsm is 60-80, want [low, high]"}},
		{"range key", "range:\n  weight: [60, 80]\n", []string{"f.yaml:6:", `unknown key "weight"`, "near: weight_gsm"}},
		{"range without value", "range:\n  friction: [0, 1]\n", []string{"f.yaml:6:", "range: friction has no value"}},
		{"spread", "spread:\n  weight_gsm: -1\n", []string{"f.yaml:6:", "spread: weight_gsm -1 g/m²"}},
		{"spread form", "spread:\n  weight_gsm: [1, 2]\n", []string{"f.yaml:6:", "weight_gsm is", "want a number"}},
		{"confidence", "confidence: sure\n", []string{"f.yaml:5:", `confidence "sure", want high, medium or low`}},
		{"syntax", "title: \"open\n", []string{"f.yaml:5:"}},
		{"second document", "---\nname: b\n", []string{"f.yaml:", "one fabric"}},
		{"alias", "friction: *x\n", []string{"f.yaml:5:", "friction"}},
	} {
		_, err := Parse("f.yaml", []byte(minimal+c.add))
		if err == nil {
			t.Errorf("%s: Parse accepted %q", c.what, c.add)
			continue
		}
		for _, w := range c.want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: Parse error %q, want it to say %q", c.what, err, w)
			}
		}
	}
}

func TestParseMissing(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"", []string{"f.yaml:1:", "want one fabric"}},
		{"# nothing\n", []string{"f.yaml:1:"}},
		{"- a\n- b\n", []string{"f.yaml:1:", "keys and values"}},
		{"{}", []string{"f.yaml:1:", "name is missing"}},
		{"silk", []string{"f.yaml:1:", "keys and values"}},
		{"\xff\xfe", []string{"f.yaml:1:", "not UTF-8"}},
		{"\nname: a\n", []string{"f.yaml:2:", "weight_gsm is missing, want 10–1500 g/m²",
			"bend_warp_uNm is missing, want 0.05–2000 µN·m, or bend_mean_uNm", "bend_weft_uNm is missing"}},
		{"weight_gsm: 70\nbend_mean_uNm: 1\n", []string{"f.yaml:1:", "name is missing"}},
		{"name: a\nbend_mean_uNm: 1\nbend_warp_uNm: 1\nweight_gsm: 70\n", []string{"f.yaml:2:",
			"bend_mean_uNm beside bend_warp_uNm, want one or the other"}},
		{"name: My Silk\nweight_gsm: 70\nbend_mean_uNm: 1\n", []string{"f.yaml:1:", `name "My Silk"`, "lower-case"}},
	} {
		_, err := Parse("f.yaml", []byte(c.text))
		if err == nil {
			t.Errorf("Parse(%q) accepted", c.text)
			continue
		}
		for _, w := range c.want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("Parse(%q) error %q, want it to say %q", c.text, err, w)
			}
		}
	}
}

func TestFromFile(t *testing.T) {
	if _, err := FromFile("library/no-such.yaml"); err == nil || !strings.Contains(err.Error(), "no-such.yaml") {
		t.Errorf("FromFile of a missing file: error %v, want one with its name", err)
	}
	got, err := FromFile("library/" + defaultName + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(Default(), got); diff != "" {
		t.Errorf("FromFile differs from Default (-want +got):\n%s", diff)
	}
}

func TestYAMLRoundTrip(t *testing.T) {
	n := 0
	for _, f := range Library() {
		n++
		got, err := Parse(f.Name, f.YAML())
		if err != nil {
			t.Errorf("Parse(%s.YAML()): %v", f.Name, err)
			continue
		}
		if diff := cmp.Diff(f, got, cmpopts.EquateApprox(1e-11, 0)); diff != "" {
			t.Errorf("%s changed through YAML (-want +got):\n%s", f.Name, diff)
		}
	}
	if n == 0 {
		t.Error("no fabric tried")
	}
}

// Any valid fabric survives the file format, whatever its numbers and words.
func TestYAMLRoundTripProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Default()
		f.Range = Ranges{} // of its own values
		for _, q := range Fields() {
			r := quantities[q]
			r.set(&f, rapid.Float64Range(r.low, r.high).Draw(t, r.key))
			f.Basis[q] = Evidence{Kind(rapid.IntRange(int(Measured), int(Memory)).Draw(t, "kind")), "a: b"}
			f.Spread[q] = rapid.Float64Range(0, r.high).Draw(t, "spread") * r.scale
		}
		f.TensileWarp, f.TensileWeft = max(f.TensileWarp, 1001), max(f.TensileWeft, 1001) // above any shear
		f.Title = strings.Join(strings.Fields(strings.Map(func(r rune) rune {
			if unicode.IsControl(r) {
				return -1
			}
			return r
		}, rapid.String().Draw(t, "title"))), " ")
		got, err := Parse("f", f.YAML())
		if err != nil {
			t.Fatalf("Parse(YAML): %v\n%s", err, f.YAML())
		}
		if diff := cmp.Diff(f, got, cmpopts.EquateApprox(1e-11, 0)); diff != "" {
			t.Fatalf("changed through YAML (-want +got):\n%s", diff)
		}
	})
}

// What Parse accepts is valid and its YAML form is a fixed point.
func FuzzParse(f *testing.F) {
	f.Add([]byte(minimal))
	f.Add([]byte(minimal + "drape: {coefficient_pct: 30, disc_mm: 180}\nbasis: {weight_gsm: 'memory: x'}\nnote: >-\n  " +
		"a\n  b\n"))
	f.Add(Default().YAML())
	f.Add([]byte(minimal + "range: {weight_gsm: [60, 80], bend_warp_uNm: [2, 2]}\nspread: {weight_gsm: " +
		"0.5}\nbend_friction_mN: 0.6\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := Parse("f", data)
		if err != nil {
			return
		}
		if err := c.Validate(); err != nil {
			t.Fatalf("Parse accepted an invalid fabric: %v", err)
		}
		once := c.YAML()
		again, err := Parse("f", once)
		if err != nil {
			t.Fatalf("Parse of own YAML: %v\n%s", err, once)
		}
		if twice := again.YAML(); !bytes.Equal(once, twice) {
			t.Fatalf("YAML is no fixed point:\n%s\n%s", once, twice)
		}
	})
}

// A slip of the finger anywhere in a file is reported or harmless: no panic,
// no invalid fabric, and a message that names the file.
func TestParseTypos(t *testing.T) {
	text := minimal + "drape:\n  coefficient_pct: 30\nbasis:\n  weight_gsm: \"memory: x\"\nnote: >-\n  a\n  b\n"
	refused, tried := 0, 0
	for at := range len(text) {
		for _, slip := range []string{"", "\n", ":", "-", "#", "\"", "'", "[", "{", "&", "*", "!", "|", "\t", "0", "<<", "?",
			"%", "---\n", "é"} {
			tried++
			f, err := Parse("f.yaml", []byte(text[:at]+slip+text[at+1:]))
			if err != nil {
				refused++
				if !strings.HasPrefix(err.Error(), "f.yaml:") {
					t.Errorf("%q at byte %d: error %q, want file and line first", slip, at, err)
				}
				continue
			}
			if err := f.Validate(); err != nil {
				t.Errorf("%q at byte %d: Parse accepted an invalid fabric: %v", slip, at, err)
			}
		}
	}
	if refused == 0 || refused == tried {
		t.Errorf("%d of %d typos refused, want some", refused, tried)
	}
}
