package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/mesh/ruler"
)

// inchFolder is a config folder of a test alone, where nothing is kept yet.
func inchFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	t.Cleanup(func() { ruler.Speak(ruler.Centimetres) })
	return filepath.Join(dir, "cowl", unitFile)
}

// The unit is kept once it is set, until another is set or the file goes; what is
// written for programs stays as it was.
func TestUnitKept(t *testing.T) {
	file := inchFolder(t)
	draft := func(more ...string) called {
		return call(t.Context(), append([]string{"draft", "--size", "10", "--out", t.TempDir()}, more...)...)
	}
	was := draft("--json")
	for _, q := range []struct {
		args []string
		inch bool
	}{{nil, false}, {[]string{"--unit", "inch"}, true}, {nil, true}, {[]string{"--unit", "cm"}, false}, {nil, false},
		{[]string{"--unit", "inch"}, true}} {
		got := draft(q.args...)
		if inch := strings.Contains(got.out, " in, "); got.code != console.ExitOK || inch != q.inch ||
			strings.Contains(got.out, " cm") == q.inch {
			t.Errorf("draft %v = %d, want inches %v:\n%s%s", q.args, got.code, q.inch, got.out, got.err)
		}
	}
	if got := draft("--json"); got.out != was.out || !json.Valid([]byte(got.out)) {
		t.Errorf("draft --json in inches = %s, want what it was in cm", got.out)
	}
	if err := os.WriteFile(file, []byte("unit: furlong\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := draft(); got.code != console.ExitOK || !strings.Contains(got.err, "furlong") ||
		!strings.Contains(got.err, "want inch or cm") {
		t.Errorf("draft with a spoilt %s = %d, %q, want it done and told", file, got.code, got.err)
	}
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	if got := draft(); strings.Contains(got.out, " in,") || got.err != "" {
		t.Errorf("draft without the file = %q, %q, want cm", got.out, got.err)
	}
	if got := draft("--unit", "ell"); got.code != console.ExitBadInput || !strings.Contains(got.err, "inch") {
		t.Errorf("draft --unit ell = %d, %q, want a refusal", got.code, got.err)
	}
}

// A folder that cannot be written to ends nothing.
func TestUnitNotKept(t *testing.T) {
	inchFolder(t)
	t.Setenv("XDG_CONFIG_HOME", write(t, "file", "in the way"))
	got := call(t.Context(), "draft", "--unit", "inch", "--out", t.TempDir())
	if got.code != console.ExitOK || !strings.Contains(got.err, "for this run alone") ||
		!strings.Contains(got.out, " in, ") {
		t.Errorf("draft = %d, %q, want it in inches and told: %s", got.code, got.err, got.out)
	}
}

var metric = regexp.MustCompile(`[0-9] ?(cm|mm|m)\b.*`)

// stays are the figures in centimetres that people who measure in inches are told too: the
// spacing of the lattice, which is set and studied in mm, and what the solver says of it.
var stays = regexp.MustCompile(`[0-9.]+ mm apart|lattice [0-9.]+ mm|may be put down to the spacing`)

// A report and the papers of a front in inches hold no centimetre but those that stay.
func TestUnitInch(t *testing.T) {
	inchFolder(t)
	n := 0
	for _, args := range [][]string{
		{"draft", "--back", "--hem", "20cm", "--format", "all", "--closure", "side"},
		{"draft", "--sizes", "8,10"},
		{"draft", "--bust", "94cm", "--height", "170cm", "--stay-shoulder", "--lower", "1cm"},
		{"lay"},
		{"drape", "--spacing", "20mm"},
		{"true", "--spacing", "20mm"},
	} {
		if testing.Short() && (args[0] == "drape" || args[0] == "true") {
			continue
		}
		out := t.TempDir()
		got := call(t.Context(), append(args, "--unit", "inch", "--out", out)...)
		if got.code == console.ExitBadInput || !strings.Contains(got.out, " in") {
			t.Errorf("cowl %v = %d, %s%s", args, got.code, got.out, got.err)
		}
		said := got.out
		drawn, _ := filepath.Glob(filepath.Join(out, "*.svg"))
		for _, name := range drawn {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			for _, text := range svgText.FindAllStringSubmatch(string(data), -1) {
				said += text[1] + "\n"
			}
		}
		for line := range strings.Lines(said) {
			n++
			if strings.Contains(line, "10 cm test square") {
				continue // both squares are printed, for either ruler
			}
			if bad := metric.FindString(stays.ReplaceAllString(line, "")); bad != "" {
				t.Errorf("cowl %v --unit inch says %q in %q", args, bad, strings.TrimSpace(line))
			}
		}
	}
	if n < 100 {
		t.Errorf("%d lines looked at, want 100 or more", n)
	}
}

var svgText = regexp.MustCompile(`<text[^>]*>([^<]*)</text>`)

// The half edge of a front in inches is that in mm over 25.4, to a sixteenth.
func TestUnitValue(t *testing.T) {
	inchFolder(t)
	got := call(t.Context(), "draft", "--extension", "4in", "--cowl-point", "1.5in", "--unit", "inch", "--out",
		t.TempDir())
	for _, want := range []string{"4 in a half", "1 1/2 in down the shoulder"} {
		if !strings.Contains(got.out, want) {
			t.Errorf("draft --extension 4in = %s, want %q", got.out, want)
		}
	}
	if bad := call(t.Context(), "draft", "--cowl-point", "9in", "--out", t.TempDir()); !strings.Contains(bad.err,
		"9.00 in, want 0.00–") {
		t.Errorf("draft --cowl-point 9in says %q, want it in inches", bad.err)
	}
}
