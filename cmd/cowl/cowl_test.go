package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
)

// called is what a run of the command left.
type called struct {
	code     int
	out, err string
}

// call runs cowl in this process.
func call(ctx context.Context, args ...string) called { return callWith(ctx, stage.New, args) }

// blind runs cowl where nothing can be drawn: a picture takes half as long as cloth on 20 mm.
func blind(ctx context.Context, args ...string) called {
	return callWith(ctx, func() (*stage.Stage, error) { return nil, errors.New("blindfold") }, args)
}

func callWith(ctx context.Context, draw drawn.Stager, args []string) called {
	var out, err bytes.Buffer
	code := run(ctx, args, console.Console{Out: &out, Err: &err}, draw)
	return called{code, out.String(), err.String()}
}

// isEmpty tells whether dir holds nothing or is not there.
func isEmpty(t *testing.T, dir string) bool {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return len(files) == 0
}

// write puts text into a file and returns its path.
func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestHelp(t *testing.T) {
	for _, args := range [][]string{nil, {"--help"}, {"drape", "--help"}, {"--version"}, {"version"}} {
		got := call(t.Context(), args...)
		if got.code != console.ExitOK || got.out == "" || got.err != "" {
			t.Errorf("cowl %v = %d, out %q, err %q, want 0 and help on standard output", args, got.code, got.out, got.err)
		}
	}
	if got := call(t.Context()); !strings.Contains(got.out, `"cowl drape"`) {
		t.Errorf("cowl = %q, want a hint how to run the demo", got.out)
	}
}

const crossed = `block:
  - {name: cf neck, x_cm: 0, y_cm: -7.2}
  - {name: neck, x_cm: 6.7, y_cm: 0}
  - {name: shoulder tip, x_cm: 18, y_cm: -5}
  - {name: underarm, x_cm: 23, y_cm: -21}
  - {name: side waist, x_cm: 2, y_cm: -43}
  - {name: dart outer, x_cm: 14, y_cm: -43}
  - {name: apex, x_cm: 10, y_cm: -25}
  - {name: dart inner, x_cm: 6, y_cm: -43}
  - {name: cf waist, x_cm: 0, y_cm: -43}
`

// Every wrong input ends with exit 2, a message that names field, value, range
// and where it stands, and nothing written.
func TestBadInput(t *testing.T) {
	for _, q := range []struct {
		name string
		args []string
		file string   // style file, if any
		want []string // parts of the message
	}{
		{"unknown verb", []string{"sew"}, "", []string{"sew"}},
		{"unknown flag", []string{"draft", "--depth", "8cm"}, "", []string{"--depth"}},
		{"trim by its old name", []string{"draft", "--trim", "1cm"}, "", []string{"--trim is now called --allowance"}},
		{"weight by its old name", []string{"true", "--weight", "8g"}, "", []string{"--weight is now called --cf-weight"}},
		{"a flag that nobody knew", []string{"proof", "--weight", "8g"}, "", []string{"unknown flag --weight"}},
		{"bare number", []string{"drape", "--extension", "8"}, "", []string{"--extension", `"8" has no unit`,
			"8cm, 8mm or 8in"}},
		{"unknown unit", []string{"drape", "--facing", "3ft"}, "", []string{"--facing", `"ft"`, "mm, cm, m or in"}},
		{"dart share", []string{"draft", "--dart-share", "1.2"}, "", []string{"--dart-share", "1.2", "0–1"}},
		{"negative dart share", []string{"draft", "--dart-share", "-1"}, "", []string{"--dart-share", "-1", "0–1", "auto"}},
		{"negative extension", []string{"draft", "--extension", "-1m"}, "", []string{"--extension", "-100.0 cm", "0–40 cm",
			"auto"}},
		{"cowl point off the shoulder", []string{"draft", "--cowl-point", "20cm"}, "",
			[]string{"--cowl-point", "20.0 cm", "0.0–9.2 cm"}},
		{"extension out of reach", []string{"draft", "--extension", "39cm"}, "",
			[]string{"--extension", "39.0 cm", "0.0–31.8 cm", "100 % of the dart"}},
		{"extension too large", []string{"draft", "--extension", "1m"}, "", []string{"--extension", "100.0 cm",
			"0.0–40.0 cm"}},
		{"grain", []string{"drape", "--grain", "200"}, "", []string{"--grain", "200.0°", "-90.0–90.0°"}},
		{"negative grain", []string{"drape", "--grain", "-100"}, "", []string{"--grain", "-100.0°", "-90.0–90.0°"}},
		{"spacing", []string{"drape", "--spacing", "50mm"}, "", []string{"--spacing", "50.0 mm", "2–20 mm"}},
		{"spacing below nothing", []string{"drape", "--spacing", "-3mm"}, "", []string{"--spacing: spacing", "2–20 mm", "auto"}},
		{"placings", []string{"drape", "--placings", "0"}, "", []string{"--placings", "placings 0", "1–99"}},
		{"more folds than any", []string{"drape", "--folds", "7"}, "", []string{"--folds: folds 7", "0–6", "auto"}},
		{"negative folds", []string{"drape", "--folds", "-1"}, "", []string{"--folds: folds -1", "0 to 6", "auto"}},
		{"folds in words", []string{"drape", "--folds", "x"}, "", []string{"--folds", "whole number, or auto", `"x"`}},
		{"half a fold", []string{"drape"}, "hang: {folds: 2.5}\n", []string{"s.yaml:1", "folds 2.5", "whole number", "auto"}},
		{"folds in the file", []string{"drape"}, "hang:\n  folds: 9\n", []string{"s.yaml:2: folds 9", "0–6", "auto"}},
		{"more folds than fit", []string{"drape", "--folds", "6", "--extension", "0cm"}, "",
			[]string{"--folds: folds 6", "0–2", "cm of surplus", "a wider extension"}},
		{"more folds than fit, trued", []string{"true", "--extension", "0cm"}, "hang:\n  folds: 5\n",
			[]string{"s.yaml:2: folds 5", "0–2"}},
		{"edge depth out of reach", []string{"drape", "--edge-depth", "40cm"}, "",
			[]string{"--edge-depth: edge depth 40.0 cm", "-6.0–15.7 cm", "wider extension"}},
		{"edge depth above the neck", []string{"drape"}, "hang:\n  edge_depth_cm: -7\n",
			[]string{"s.yaml:2: edge depth -7.0 cm", "-6.0–12.2 cm"}},
		{"bare edge depth", []string{"drape", "--edge-depth", "8"}, "", []string{"--edge-depth", "no unit", "8cm"}},
		{"edge depth without unit", []string{"drape"}, "hang:\n  edge_depth: 8\n",
			[]string{"s.yaml:2", "no unit", "edge_depth_cm"}},
		{"waist", []string{"drape", "--waist", "tied"}, "", []string{"--waist", `waist "tied"`,
			"side, pinned, free or auto"}},
		{"waist in the file", []string{"drape"}, "body:\n  waist_cm: 70\nhang:\n  waist: tied\n",
			[]string{"s.yaml:4", `waist "tied"`, "side, pinned, free or auto"}},
		{"hem too short", []string{"draft", "--hem", "1cm"}, "", []string{"--hem: hem 1.0 cm", "3.0–23.3 cm"}},
		{"hem below the form", []string{"drape"}, "cut: {hem_cm: 40}\n", []string{"s.yaml:1: hem 40.0 cm", "3.0–23.3 cm",
			"dress form ends"}},
		{"hem and waist pinned", []string{"drape", "--hem", "12cm", "--waist", "pinned"}, "",
			[]string{"--waist", "12.0 cm below it", "waist free or side", "hem 0"}},
		{"hem and waist slash", []string{"drape", "--hem", "12cm", "--release-waist", "5cm"}, "",
			[]string{"--release-waist", "free there"}},
		{"waist of the body", []string{"drape", "--waist", "pinned"}, "body:\n  waist_cm: 30\n",
			[]string{"s.yaml:2: waist 30.0 cm"}},
		{"shake in words", []string{"drape"}, "hang: {shake: hard}\n", []string{"s.yaml:1", "shake is hard",
			"true or false"}},
		{"pleats hung free", []string{"drape", "--free", "--folds", "2", "--pleats", "1"}, "",
			[]string{"--free", "no shoulder", "without pleats"}},
		{"size", []string{"drape", "--size", "11"}, "", []string{"--size", "size 11", "6–18"}},
		{"facing", []string{"draft", "--facing", "31cm"}, "", []string{"--facing", "31.0 cm", "1.0–30.0 cm"}},
		{"slashes alone", []string{"draft", "--slashes", "2"}, "", []string{"--slashes", "--how slash"}},
		{"way", []string{"draft", "--how", "gather"}, "", []string{"--how", "gather", "pivot, shift or slash"}},
		{"fabric name", []string{"drape", "--fabric", "polyester-twil"}, "",
			[]string{"--fabric", "polyester-twil", "polyester-twill"}},
		{"fabric twice", []string{"drape", "--fabric", "polyester-twill", "--fabric-file", "x"}, "", []string{"fabric-file"}},
		{"fabric file missing", []string{"drape", "--fabric-file", "/nowhere/cloth.yaml"}, "",
			[]string{"--fabric-file", "/nowhere/cloth.yaml", "no such file"}},
		{"style file missing", []string{"drape", "--style", "/nowhere/style.yaml"}, "",
			[]string{"/nowhere/style.yaml", "no such file"}},
		{"fabrics", []string{"fabrics", "felt"}, "", []string{"felt"}},

		{"unknown key", []string{"drape"}, "name: x\ncut:\n  extention_cm: 8\n",
			[]string{"s.yaml:3", `"extention_cm"`, "extension_cm", "\n       |   ^"}},
		{"unknown section", []string{"drape"}, "sleeve: {}\n", []string{"s.yaml:1", `"sleeve"`, "hang"}},
		{"key without unit", []string{"drape"}, "cut:\n  extension: 8\n", []string{"s.yaml:2", "has no unit",
			"extension_cm"}},
		{"key twice", []string{"drape"}, "hang:\n  seed: 1\n  seed: 2\n", []string{"s.yaml:3", "twice", "line 2"}},
		{"word for a number", []string{"drape"}, "hang:\n  seed: one\n", []string{"s.yaml:2", "seed is one",
			"want a number"}},
		{"half a seed", []string{"drape"}, "hang:\n  seed: 1.5\n", []string{"s.yaml:2", "seed 1.5", "whole number"}},
		{"body", []string{"drape"}, "body:\n  size: 12\n  bust_cm: 35\n", []string{"s.yaml:3", "bust 35.0 cm",
			"60.0–160.0 cm"}},
		{"range in the file", []string{"drape"}, "cut:\n  cowl_point_cm: 20\n",
			[]string{"s.yaml:2", "cowl point 20.0 cm", "0.0–9.2 cm"}},
		{"inches", []string{"drape"}, "cut:\n  extension_in: 30\n", []string{"s.yaml:2", "extension 76.2 cm", "0.0–40.0 cm"}},
		{"spacing in the file", []string{"drape"}, "hang:\n  spacing_mm: 50\n",
			[]string{"s.yaml:2", "spacing 50.0 mm", "2–20 mm"}},
		{"crossed block", []string{"draft"}, crossed, []string{"s.yaml:1", "crosses itself", "dart outer–side waist"}},
		{"block point", []string{"draft"}, "block:\n  - {name: elbow, x_cm: 1, y_cm: 2}\n",
			[]string{"s.yaml:2", `"elbow"`, "underarm"}},
		{"point off the front", []string{"draft"}, strings.Replace(crossed, "cf waist, x_cm: 0", "cf waist, x_cm: 3", 1),
			[]string{"s.yaml:10", "cf waist 3.00 cm off CF", "0 ± 0.05 cm"}},
		{"piece file missing", []string{"draft", "--piece", "/nowhere/front.dxf"}, "",
			[]string{"--piece", "/nowhere/front.dxf", "no such file"}},
		{"piece unit alone", []string{"draft", "--piece-unit", "mm"}, "", []string{"--piece-unit", "no --piece"}},
		{"piece without lines", []string{"draft"}, "piece:\n  - {name: waist, x_cm: 1, y_cm: 2}\n",
			[]string{"s.yaml:1", "shoulder has 0 points"}},
		{"piece point", []string{"draft"}, "piece:\n  - {name: elbow, x_cm: 1, y_cm: 2}\n",
			[]string{"s.yaml:2", `"elbow"`, "armhole"}},
		{"piece with an extension", []string{"draft", "--extension", "4cm"}, "piece:\n  - {name: waist, x_cm: 1, y_cm: 2}\n",
			[]string{"--extension", "finished one (", "s.yaml:1"}},
		{"piece with a way", []string{"draft", "--how", "shift"}, "piece:\n  - {name: waist, x_cm: 1, y_cm: 2}\n",
			[]string{"--how", "finished one"}},
		{"piece is a word", []string{"draft"}, "piece: front.dxf\n", []string{"s.yaml:1", "piece is front.dxf",
			"file: front.dxf"}},
		{"seek a piece", []string{"seek", "--want", "folds 2"}, "piece:\n  - {name: waist, x_cm: 1, y_cm: 2}\n",
			[]string{"seek", "finished"}},
		{"unreadable fabric", []string{"drape"}, "fabric:\n  name: mine\n  weight_gsm: heavy\n  bend_mean_uNm: 4\n",
			[]string{"s.yaml:3", "weight_gsm is heavy", "number"}},
		{"fabric out of range", []string{"drape"}, "name: x\nfabric: {name: mine, weight_gsm: 5, bend_mean_uNm: " +
			"4}\nhang: {seed: 2}\n", []string{"s.yaml:2", "weight_gsm 5 g/m²", "10–1500 g/m²"}},
		{"no YAML", []string{"drape"}, "name: \"x\ncut:\n", []string{"s.yaml:1", "quote"}},
		{"no text", []string{"drape"}, "\xff\xfe", []string{"s.yaml:1", "UTF-8"}},
	} {
		t.Run(q.name, func(t *testing.T) {
			t.Chdir(t.TempDir()) // where a stray cowl-out would show
			args := q.args
			if q.file != "" {
				args = append(args, "--style", write(t, "s.yaml", q.file))
			}
			got := call(t.Context(), args...)
			if got.code != console.ExitBadInput || got.out != "" {
				t.Errorf("cowl %v = %d, out %q, want %d and nothing on standard output", args, got.code, got.out,
					console.ExitBadInput)
			}
			for _, part := range q.want {
				if !strings.Contains(got.err, part) {
					t.Errorf("cowl %v says %q, want %q in it", args, got.err, part)
				}
			}
			if !isEmpty(t, ".") {
				t.Errorf("cowl %v wrote something, want nothing", args)
			}
		})
	}
}

func TestCannotSave(t *testing.T) {
	file := write(t, "file", "in the way")
	for _, args := range [][]string{{"draft", "--out", file}, {"drape", "--out", filepath.Join(file, "deeper")}} {
		if got := call(t.Context(), args...); got.code != console.ExitCannotSave || !strings.Contains(got.err, file) {
			t.Errorf("cowl %v = %d, %q, want %d and the path", args, got.code, got.err, console.ExitCannotSave)
		}
	}
	for _, verb := range []string{"draft", "lay", "true"} {
		if got := call(t.Context(), verb, "--out", ""); got.code != console.ExitCannotSave ||
			!strings.Contains(got.err, "--out is empty, want a folder") {
			t.Errorf("cowl %s without a folder = %d, %q, want %d", verb, got.code, got.err, console.ExitCannotSave)
		}
	}
}

// A flag goes before the style file.
func TestFlagOverridesFile(t *testing.T) {
	path := write(t, "s.yaml", "cut:\n  cowl_point_cm: 20\n  grain_deg: 30\n")
	got := call(t.Context(), "draft", "--style", path, "--cowl-point", "40mm", "--out", t.TempDir())
	for _, part := range []string{"4.0 cm down the shoulder", "30.0° to the centre front"} {
		if got.code != console.ExitOK || !strings.Contains(got.out, part) {
			t.Errorf("cowl draft --cowl-point 40mm = %d, %q, want %q", got.code, got.out+got.err, part)
		}
	}
}

// mustDemo is the built-in style.
func mustDemo(t *testing.T) style.Style {
	t.Helper()
	s, err := style.Parse(demoFile, demo)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
