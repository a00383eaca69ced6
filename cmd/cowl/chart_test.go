package main

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// ownChart is a chart of three sizes.
const ownChart = `source: our own grading
height_cm: 168
sizes: [36, 38, 40]
bust_cm: [84, 88, 92]
waist_mm: [680, 720, 760]
hip_cm: [92, 96, 100]
back_width_cm: [33.4, 34.4, 35.4]
across_front_cm: [31.2, 32.4, 33.6]
shoulder_cm: [12, 12.25, 12.6]
neck_cm: [36, 37, 38]
bust_dart_cm: [6.4, 7, 7.6]
armscye_depth_cm: [20.6, 21, 21.4]
nape_to_waist_cm: [40.5, 41, 41.5]
waist_to_hip_cm: 20.3
bust_span_cm: [19, 19.5, 20]
`

// A chart of one's own is printed, drafted from by its sizes and at a bust between them, and
// goes along in style.yaml, which gives the same piece without the file.
func TestOwnChart(t *testing.T) {
	path := write(t, "chart.yaml", ownChart)
	sizes := call(t.Context(), "sizes", "--chart", path)
	for _, want := range []string{"Sizes of " + path, "36      38      40", "Source: our own grading",
		"the 168 cm of the chart"} {
		if sizes.code != console.ExitOK || !strings.Contains(sizes.out, want) {
			t.Errorf("cowl sizes --chart = %d, %s%s, want %q", sizes.code, sizes.out, sizes.err, want)
		}
	}
	shoulder := func(args ...string) float64 {
		t.Helper()
		got := call(t.Context(), append([]string{"draft", "--json", "--cowl-point", "0cm", "--out", t.TempDir()}, args...)...)
		if got.code != console.ExitOK {
			t.Fatalf("cowl draft %v = %d, %s", args, got.code, got.err)
		}
		return object(t, got.out)["shoulder_mm"].(float64)
	}
	// The shoulder of the draft is that of the body; of 90 cm half way from 12.25 to 12.6 cm,
	// of 94 cm half a step beyond 12.6.
	for _, q := range []struct {
		args string
		want float64
	}{{"--size 36", 120}, {"--size 40", 126}, {"--bust 90cm", 124.25}, {"--bust 94cm", 127.75}} {
		if got := shoulder(append(strings.Fields(q.args), "--chart", path)...); math.Abs(got-q.want) > 0.02 {
			t.Errorf("%s: shoulder %.2f mm, want %.2f", q.args, got, q.want)
		}
	}
	style := write(t, "s.yaml", "body: {chart: chart.yaml, size: 40}\nhang: {spacing_mm: 20, folds: 1}\n")
	if err := os.WriteFile(filepath.Join(filepath.Dir(style), "chart.yaml"), []byte(ownChart), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := shoulder("--style", style); math.Abs(got-126) > 0.02 {
		t.Errorf("chart in the style: shoulder %.2f mm, want 126", got)
	}
	out := t.TempDir()
	if testing.Short() {
		return
	}
	hung := blind(t.Context(), "drape", "--style", style, "--out", out)
	if hung.code != console.ExitOK || !strings.Contains(hung.out, "for own chart size 40") {
		t.Fatalf("cowl drape = %d, %s%s, want own chart size 40", hung.code, hung.out, hung.err)
	}
	if err := os.Remove(filepath.Join(filepath.Dir(style), "chart.yaml")); err != nil {
		t.Fatal(err)
	}
	if got := shoulder("--style", filepath.Join(out, "style.yaml")); math.Abs(got-126) > 0.02 {
		t.Errorf("style.yaml without the chart's file: shoulder %.2f mm, want 126", got)
	}
}

// What is wrong with a chart is told by field, value, range and line, and what a chart has
// not is refused where it is asked for.
func TestBadCharts(t *testing.T) {
	count := 0
	for _, q := range []struct{ from, to, args, want string }{
		{"bust_cm: [84, 88, 92]", "bust_cm: [84, 880, 92]", "", "chart.yaml:4: size 38: bust 880.0 cm, want 60.0–160.0 cm"},
		{"bust_cm: [84, 88, 92]", "bust_cm: [84, 83, 92]", "",
			"chart.yaml:4: bust of size 38 83.0 cm, want more than the 84.0 cm"},
		{"bust_cm: [84, 88, 92]", "bust_cm: [84, 88]", "", "chart.yaml:4: bust_cm has 2 numbers, want 3"},
		{"bust_cm: [84, 88, 92]", "bust: [84, 88, 92]", "", `chart.yaml:4: chart: unknown key "bust", want sizes`},
		{"bust_cm: [84, 88, 92]", "bust_cm: [84, x, 92]", "", "chart.yaml:4: bust_cm is x, want a number"},
		{"bust_cm: [84, 88, 92]", "bust_cm: wide", "", "chart.yaml:4: bust_cm is wide, want a list of numbers"},
		{"hip_cm: [92, 96, 100]\n", "", "", "chart: hip_cm missing, want one number a size"},
		{"sizes: [36, 38, 40]", "sizes: [36, 40, 38]", "", "chart.yaml:3: sizes: 38, want whole numbers from 0 to 999"},
		{"sizes: [36, 38, 40]", "sizes: [36, 38.5, 40]", "", "chart.yaml:3: sizes: 38.5, want whole numbers"},
		{"sizes: [36, 38, 40]\n", "", "", "chart: no sizes, want a list of whole numbers"},
		{"sizes: [36, 38, 40]", "sizes: []", "", "sizes: 0 of them, want 1–60"},
		{"height_cm: 168", "height_cm: 16.8", "", "chart.yaml:2: chart: height 16.8 cm, want 140.0–200.0 cm"},
		{"source:", "sauce:", "", `chart.yaml:1: chart: unknown key "sauce"`},
		{"source:", "", "--size 12", "--size: size 12, want one of [36 38 40]"},
		{"height_cm: 168\n", "", "--size 38 --height 160cm", "height 160.0 cm, but your chart does not say"},
		{"", "one", "--bust 90cm", "--bust: bust 90.0 cm, but your chart has one size"},
		{"armscye_depth_cm: [20.6", "armscye_depth_cm: [40", "", "size 36: armscye depth 40.0 cm, want 15.0–30.0 cm"},
	} {
		count++
		text := strings.Replace(ownChart, q.from, q.to, 1)
		if q.to == "" && q.from == "source:" {
			text = ownChart
		}
		if q.to == "one" {
			text = regexp.MustCompile(`\[([0-9.]+),[^]]*\]`).ReplaceAllString(ownChart, "[$1]")
		}
		args := append([]string{"draft", "--chart", write(t, "chart.yaml", text), "--out", t.TempDir()},
			strings.Fields(q.args)...)
		got := call(t.Context(), args...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, q.want) {
			t.Errorf("%q for %q, %s = %d, %q, want %q", q.to, q.from, q.args, got.code, got.err, q.want)
		}
	}
	if got := call(t.Context(), "sizes", "--chart", filepath.Join(t.TempDir(), "none.yaml")); got.code !=
		console.ExitBadInput || !strings.Contains(got.err, "none.yaml: no such file, want a size chart in YAML") {
		t.Errorf("cowl sizes of no file = %d, %q", got.code, got.err)
	}
	if count < 17 {
		t.Errorf("%d cases", count)
	}
}
