package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/form"
)

// Control characters reach the terminal from nowhere: not from names in files, the
// files' own names, pieces in a drawing, values or flags.
func TestNoControlCharacters(t *testing.T) {
	const evil = "a\x1b[31m\u009b2Jb"
	dir := t.TempDir()
	drawing := filepath.Join(dir, "front\x1b[2J.csv")
	lines := "piece,line,x_mm,y_mm\n" + evil + ",seam,0,0\n" + evil + ",seam,300,0\n" + evil + "2,seam,0,300\n"
	if err := os.WriteFile(drawing, []byte(lines), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"draft", "--style", write(t, "s.yaml", "name: \"a\\e[31mb\"\n")}, {"draft", "--style",
			write(t, "s.yaml", "name: "+evil+"\n")},
		{"draft", "--style", write(t, "s.yaml", evil+": 1\n")}, {"draft", "--style",
			write(t, "s.yaml", "cut: {how: \""+evil+"\"}\n")},
		{"draft", "--style", write(t, "s.yaml", "fabric: {name: mine, title: \"\\e[2J\", weight_gsm: 100, bend_mean_uNm: "+
			"4}\n")},
		{"draft", "--style", write(t, "s.yaml", "fabric: \"\\e[2J\"\n")}, {"draft", "--style",
			write(t, "s.yaml", "block: {file: \"\\e[2J.dxf\"}\n")},
		{"draft", "--style", "/nowhere/\x1b[2J"}, {"draft", "--block", drawing},
		{"draft", "--piece", drawing, "--piece-name", evil},
		{"draft", "--extension", evil}, {evil}, {"drape", "--fabric", evil}, {"swatch", "--name", evil},
		{"swatch", "--title", evil, "--weight", "100gsm"},
		{"swatch", "--overhang-warp", evil}, {"sweep", "--vary", evil}, {"seek", "--want", evil},
		{"gather", filepath.Join(dir, evil)}, {"proof", "--only", evil}, {"fabrics", "--search", evil}, {"fabrics", evil},
	} {
		t.Chdir(t.TempDir())
		got := call(t.Context(), args...)
		if i := strings.IndexFunc(got.out+got.err, func(r rune) bool {
			return unicode.IsControl(r) && r != '\n' && r != '\t'
		}); i >= 0 {
			t.Errorf("cowl %q says %q, with a control character", args, got.out+got.err)
		}
		if got.code != console.ExitBadInput && args[0] != "fabrics" {
			t.Errorf("cowl %q = %d, %q, want %d", args, got.code, got.out+got.err, console.ExitBadInput)
		}
	}
}

// A body that can be drafted can be hung, and the other way round.
func TestDraftAndDrapeAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("fits a form to seven bodies, some of them twice")
	}
	const ownBlock = "block:\n  - {name: cf neck, x_cm: 0, y_cm: -7.2}\n  - {name: neck, x_cm: 6.7, y_cm: 0}\n  - " +
		"{name: shoulder tip, x_cm: 18, y_cm: -5}\n  - {name: underarm, x_cm: 23, y_cm: -21}\n  - {name: side waist, " +
		"x_cm: 22, y_cm: -43}\n  - {name: dart outer, x_cm: 14, y_cm: -43}\n  - {name: apex, x_cm: 10, y_cm: -25}\n  - " +
		"{name: dart inner, x_cm: 6, y_cm: -43}\n  - {name: cf waist, x_cm: 0, y_cm: -43}\n"
	n := 0
	for _, q := range []struct {
		text string
		good bool
	}{
		{"body: {size: 10}\n", true}, {"body: {size: 18, bust_cm: 120}\n", true}, {ownBlock, true},
		{ownBlock + "body: {waist_cm: 30}\n", false}, {ownBlock + "body: {bust_cm: 60, waist_cm: 149}\n", false},
		{"body: {waist_cm: 56.5, armscye_depth_cm: 18.4, nape_to_waist_cm: 32.1, waist_to_hip_cm: 20.4}\n", false},
		{"body: {size: 8, across_front_cm: 36.9, neck_cm: 47.1, bust_dart_cm: 5.3, nape_to_waist_cm: 42.4}\n", false},
	} {
		n++
		path := write(t, "s.yaml", q.text)
		s, err := style.FromFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, hung := drapeCmd{styleFlags: styleFlags{cutFlags: cutFlags{Style: path}}}.prepare()
		for _, verb := range []string{"draft", "lay"} {
			got := call(t.Context(), verb, "--style", path, "--quiet", "--out", t.TempDir())
			if (got.code == console.ExitOK) != q.good || (hung == nil) != q.good || hung != nil &&
				!strings.Contains(got.err, hung.Error()) {
				t.Errorf("%q: cowl %s = %d, %q, cowl drape says %v, want both to take it: %t", q.text, verb, got.code, got.err,
					hung, q.good)
			}
		}
		b, err := s.Wearer()
		if err != nil {
			continue
		}
		if _, err := form.FromBody(b); (err == nil) != (form.Check(b) == nil) {
			t.Errorf("%q: FromBody says %v, Check %v", q.text, err, form.Check(b))
		}
	}
	if n < 7 {
		t.Errorf("%d bodies tried, want 7", n)
	}
}
