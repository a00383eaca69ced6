package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/cloths"
	"cowl/cmd/cowl/internal/console"
	"cowl/materials"
)

// crepe are tests a sample room does on a dress crepe.
var crepe = []string{"--square", "10.0cm", "--mass", "1.35g", "--overhang-warp", "3.2cm,3.3cm,3.1cm",
	"--overhang-weft", "2.6cm", "--overhang-bias", "2.8cm", "--bias-stretch", "5%", "--name", "my-crepe"}

func swatch(more ...string) []string {
	return append(append([]string{"swatch"}, crepe...), more...)
}

// Every trial has its flag and every flag its trial.
func TestSwatchFlags(t *testing.T) {
	keys := map[string]bool{}
	for _, trial := range materials.Trials() {
		keys[trial.Key()] = true
	}
	for _, r := range cloths.Tests() {
		if !keys[r.Name] {
			t.Errorf("flag --%s is no trial", r.Name)
		}
	}
	if got := call(t.Context(), "swatch", "--help"); got.code != console.ExitOK ||
		!strings.Contains(got.out, "56.19 N/m") || !strings.Contains(got.out, "NOT the G of FAST") {
		t.Errorf("cowl swatch --help = %d, want it to tell the shear of KES from that of FAST: %s", got.code, got.out)
	}
}

// The file that swatch writes is the cloth it shows, and drape takes it.
func TestSwatchFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "my.yaml")
	got := call(t.Context(), swatch("--json", "--out", path)...)
	var out struct {
		Properties []struct {
			Key    string
			Value  float64
			Spread float64
		}
		Lengths map[string]struct{ Value, Spread float64 } `json:"bending_length_mm"`
		File    string
	}
	if err := json.Unmarshal([]byte(got.out), &out); err != nil || got.code != console.ExitOK || out.File != path {
		t.Fatalf("cowl swatch --json = %d, %v, %s%s", got.code, err, got.out, got.err)
	}
	f, err := materials.FromFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range out.Properties {
		for _, q := range materials.Fields() {
			if q.Key() == p.Key && (math.Abs(q.InUnits(f)-p.Value) > 1e-9*p.Value ||
				math.Abs(q.SpreadInUnits(f)-p.Spread) > 1e-9*p.Spread) {
				t.Errorf("%s = %g ± %g in the file, %g ± %g shown", p.Key, q.InUnits(f), q.SpreadInUnits(f), p.Value, p.Spread)
			}
		}
	}
	if l := out.Lengths["warp"]; len(out.Properties) != len(materials.Fields()) || math.Abs(l.Value-16) > 1e-9 ||
		math.Abs(l.Spread-0.3227) > 1e-3 {
		t.Errorf("%d properties, warp %g ± %g mm, want all and 16 ± 0.32: half of 3.2 cm", len(out.Properties), l.Value,
			l.Spread)
	}
	s := call(t.Context(), "draft", "--style", write(t, "s.yaml", "fabric: {file: "+path+"}\n"), "--out", t.TempDir())
	if s.code != console.ExitOK {
		t.Errorf("a style with that file = %d, %s", s.code, s.err)
	}
}

// Without --out the output is itself a fabric file, its table a comment; a
// sheet gives the same as flags, and a flag goes before it.
func TestSwatchSheet(t *testing.T) {
	sheet := write(t, "sheet.yaml", "name: my-crepe\nsquare: 10.0cm\nmass: 1.35g\noverhang-warp: [3.2cm, 3.3cm, "+
		"3.1cm]\noverhang_weft: 9cm\noverhang-bias: 2.8cm\nbias-stretch: 5%\n")
	flags := call(t.Context(), swatch()...)
	file := call(t.Context(), "swatch", "--sheet", sheet, "--overhang-weft", "2.6cm")
	if flags.code != console.ExitOK || flags.out != file.out {
		t.Errorf("cowl swatch = %d, %q; with --sheet %q", flags.code, flags.out+flags.err, file.out+file.err)
	}
	f, err := materials.Parse("out", []byte(flags.out))
	if err != nil || f.Name != "my-crepe" || math.Abs(f.Weight-0.135) > 1e-12 {
		t.Errorf("what cowl swatch prints reads back as %v, %v", f, err)
	}
	for _, part := range []string{"# property", "mean", "±", "Drape coefficient", "bending friction was not tested"} {
		if !strings.Contains(flags.out, part) {
			t.Errorf("cowl swatch lacks %q:\n%s", part, flags.out)
		}
	}
	if got := call(t.Context(), "swatch", "--sheet", sheet, "--overhang-weft", "2.6cm", "--out",
		sheet); got.code != console.ExitBadInput || !strings.Contains(got.err, "the sheet itself") {
		t.Errorf("cowl swatch over its own sheet = %d, %s", got.code, got.err)
	}
	quiet := call(t.Context(), swatch("--quiet")...)
	if !strings.HasPrefix(quiet.out, "name: ") {
		t.Errorf("cowl swatch --quiet = %q, want the file alone", quiet.out)
	}
}

// A fabric without a name is called as its file, or as the sheet it comes from.
func TestSwatchNamed(t *testing.T) {
	tests := []string{"swatch", "--quiet", "--weight", "135gsm", "--overhang-warp", "3.2cm", "--overhang-weft", "2.6cm"}
	for file, want := range map[string]string{"linen-2.yaml": "linen-2", "My Silk (old).yaml": "my-silk-old",
		"élan.yml": "lan", "__.yaml": "swatch"} {
		path := filepath.Join(t.TempDir(), file)
		got := call(t.Context(), append(tests, "--out", path)...)
		f, err := materials.FromFile(path)
		if got.code != console.ExitOK || err != nil || f.Name != want {
			t.Errorf("cowl swatch --out %q = %d, %v, name %q, want %q: %s", file, got.code, err, f.Name, want, got.err)
		}
	}
	sheet := write(t, "crepe-3.yaml", "weight: 135gsm\noverhang-warp: 3.2cm\noverhang-weft: 2.6cm\n")
	if got := call(t.Context(), "swatch", "--quiet", "--sheet", sheet); !strings.HasPrefix(got.out,
		"name: \"crepe-3\"\n") {
		t.Errorf("cowl swatch --sheet crepe-3.yaml = %q, %s, want it named crepe-3", got.out, got.err)
	}
	if got := call(t.Context(), append(tests, "--name", "own")...); !strings.HasPrefix(got.out, "name: \"own\"\n") {
		t.Errorf("cowl swatch --name own = %q, want that name", got.out)
	}
}

func TestSwatchBad(t *testing.T) {
	good := []string{"--overhang-warp", "3cm", "--overhang-weft", "3cm"}
	for _, q := range []struct {
		args []string
		want []string
	}{
		{nil, []string{"weight is missing", "bending of the warp is missing"}},
		{append([]string{"--weight", "1.6kg/m2"}, good...), []string{"--weight", "1600 g/m²", "10–1500 g/m²"}},
		{append([]string{"--square", "10cm", "--mass", "16g"}, good...), []string{"weight 1600 g/m²", "10–1500 g/m²"}},
		{append([]string{"--weight", "-5gsm"}, good...), []string{"--weight", "-5 g/m²"}},
		{append([]string{"--weight", "135"}, good...), []string{"--weight", "no unit", "135gsm"}},
		{[]string{"--weight", "135gsm", "--overhang-warp", "21cm", "--overhang-weft", "3cm"},
			[]string{"--overhang-warp", "21 cm", "1–20 cm", "10 cm"}},
		{append([]string{"--weight", "135gsm", "--overhang-bias", "5cm"}, good...),
			[]string{"bias bends 4.6 times", "at most 2"}},
		{append([]string{"--weight", "135gsm", "--kes-g", "30"}, good...), []string{"--kes-g", "fast-g", "56.19"}},
		{append([]string{"--weight", "135gsm", "--fast-g", "0.5"}, good...), []string{"--fast-g", "kes-g", "56.19"}},
		{append([]string{"--weight", "135gsm", "--name", "My Silk"}, good...), []string{`"My Silk"`, "lower-case"}},
		{[]string{"--sheet", "/nowhere/s.yaml"}, []string{"/nowhere/s.yaml", "no such file"}},
	} {
		dir := t.TempDir()
		got := call(t.Context(), append([]string{"swatch", "--out", filepath.Join(dir, "f.yaml")}, q.args...)...)
		if got.code != console.ExitBadInput || got.out != "" || !isEmpty(t, dir) {
			t.Errorf("cowl swatch %v = %d, %q, want %d and nothing written", q.args, got.code, got.out, console.ExitBadInput)
		}
		for _, part := range q.want {
			if !strings.Contains(got.err, part) {
				t.Errorf("cowl swatch %v says %q, want %q in it", q.args, got.err, part)
			}
		}
	}
}

func TestSwatchCannotSave(t *testing.T) {
	file := write(t, "file", "in the way")
	for _, out := range []string{filepath.Join(file, "f.yaml"), t.TempDir()} {
		if got := call(t.Context(), swatch("--out", out)...); got.code != console.ExitCannotSave || got.out != "" ||
			!strings.Contains(got.err, file) && !strings.Contains(got.err, out) {
			t.Errorf("cowl swatch --out %s = %d, %q, want %d and the path", out, got.code, got.err, console.ExitCannotSave)
		}
	}
	if _, err := os.Stat(file); err != nil {
		t.Error(err)
	}
}

func TestFabricsSearch(t *testing.T) {
	for _, q := range []struct {
		args     []string
		has, not []string
	}{
		{[]string{"--search", "silk"}, []string{"silk-satin-memory", "silk-organza-memory"}, []string{"\n  cotton"}},
		{[]string{"--weight", "100gsm:125gsm"}, []string{"polyester-faille", "cotton-broad", "25.4/12.7, 7"},
			[]string{"denim", "polyester-twill  "}},
		{[]string{"--bending-length", ":10mm"}, []string{"polyester-twill  ", "22.3, 30/18"}, []string{"linen"}},
		{[]string{"--search", "linen"}, []string{"150–200 ?", "12–45 ?", "From memory"},
			[]string{"Partly assumed", "Measured:"}},
		{[]string{"--search", "zebra"}, []string{"No fabric"}, nil},
	} {
		got := call(t.Context(), append([]string{"fabrics"}, q.args...)...)
		if got.code != console.ExitOK {
			t.Errorf("cowl fabrics %v = %d, %s", q.args, got.code, got.err)
		}
		for _, p := range q.has {
			if !strings.Contains(got.out, p) {
				t.Errorf("cowl fabrics %v lacks %q:\n%s", q.args, p, got.out)
			}
		}
		for _, p := range q.not {
			if strings.Contains(got.out, p) {
				t.Errorf("cowl fabrics %v has %q:\n%s", q.args, p, got.out)
			}
		}
	}
	limp := call(t.Context(), "fabrics", "--limp", "--json")
	var all struct{ Fabrics []map[string]any }
	if err := json.Unmarshal([]byte(limp.out), &all); err != nil || len(all.Fabrics) < 26 {
		t.Fatalf("cowl fabrics --limp --json: %v, %d fabrics", err, len(all.Fabrics))
	}
	for i, f := range all.Fabrics[1:] {
		if f["bending_length_mm"].(float64) < all.Fabrics[i]["bending_length_mm"].(float64) {
			t.Errorf("--limp: %v after %v", f["name"], all.Fabrics[i]["name"])
		}
	}
	for _, bad := range []struct{ flag, value, want string }{
		{"--weight", "80:150gsm", "no unit"}, {"--weight", "150gsm:80gsm", "lower value first"},
		{"--weight", "80gsm", "colon"},
		{"--weight", ":", "colon"}, {"--bending-length", "8:12mm", "no unit"},
		{"--bending-length", "-3mm:2mm", "none below 0"},
	} {
		if got := call(t.Context(), "fabrics", bad.flag+"="+bad.value); got.code != console.ExitBadInput ||
			!strings.Contains(got.err, bad.flag) || !strings.Contains(got.err, bad.want) {
			t.Errorf("cowl fabrics %s %s = %d, %q, want %d and %q", bad.flag, bad.value, got.code, got.err,
				console.ExitBadInput, bad.want)
		}
	}
}

// Loops of 9 bending lengths hang 0.3248 of their length deep by the heavy elastica.
func TestSwatchLoopFlags(t *testing.T) {
	got := call(t.Context(), strings.Fields("swatch --weight 100gsm --loop-length 15cm --loop-warp 4.872cm "+
		"--loop-weft 48.72mm --quiet")...)
	if got.code != console.ExitOK || !strings.Contains(got.out, "bend_warp_uNm: 4.5") ||
		!strings.Contains(got.out, "heart loop: loop-warp 4.872 cm of loop-length 15 cm") {
		t.Errorf("cowl swatch = %d, %s%s", got.code, got.out, got.err)
	}
	got = call(t.Context(), strings.Fields("swatch --weight 100gsm --loop-length 15 --loop-warp 5cm --loop-weft 5cm")...)
	if got.code != console.ExitBadInput || !strings.Contains(got.err, "no unit") {
		t.Errorf("cowl swatch --loop-length 15 = %d, %q, want that the unit is missing", got.code, got.err)
	}
}
