package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/readback"
)

// Every wrong study ends with exit 2, a message that says what to do, and
// nothing written.
func TestStudyBadInput(t *testing.T) {
	n := 0
	for _, q := range []struct {
		args string
		want []string
	}{
		{"compare", []string{"--fabrics"}},
		{"compare --fabrics polyester-twill", []string{"two or more"}},
		{"compare --fabrics polyester-twill,polyester-twill", []string{"named twice"}},
		{"compare --fabrics polyester-twill,felt", []string{"--fabrics", "felt"}},
		{"compare --fabrics polyester-twill,./nowhere.yaml", []string{"--fabrics", "nowhere.yaml", "no such file"}},
		{"compare --fabrics polyester-twill,wool-tropical --placings 0", []string{"placings 0", "1–99"}},
		{"compare --fabrics polyester-twill,wool-tropical --spacing 50mm", []string{"--spacing", "2–20 mm"}},
		{"compare --fabrics polyester-twill,wool-tropical --part 3/2", []string{"--part", "3/8"}},
		{"sweep", []string{"--vary"}},
		{"sweep --vary extension=0:14:2", []string{"--vary extension", "unit"}},
		{"sweep --vary yoke=1cm:2cm:1cm", []string{"--vary yoke", "cowl-point"}},
		{"sweep --vary slashes=1:3:1", []string{"--how slash"}},
		{"sweep --vary folds=7,8", []string{"--vary folds", "folds 7", "0–6"}},
		{"sweep --vary folds=1,1.5", []string{"--vary folds", "folds 1.5", "whole number"}},
		{"sweep --vary edge-depth=40cm,50cm", []string{"none of the 2 rows", "--vary edge-depth: edge depth 40.0 cm",
			"cm: from an edge"}},
		{"compare --fabrics polyester-twill,wool-tropical --folds 7", []string{"--folds: folds 7", "0–6"}},
		{"seek --want folds,2", []string{"--want"}},
		{"sweep --vary grain=0,45 --vary grain=0,90", []string{"given twice"}},
		{"sweep --vary grain=100,120", []string{"none of the 2 rows", "--vary grain", "-90.0–90.0°"}},
		{"sweep --vary extension=0cm,1cm --vary facing=1cm:9cm:1cm", []string{"9 lines in one chart"}},
		{"sweep --vary extension=0cm,1cm --fabric wool-tropical --fabrics polyester-twill", []string{"want one of them"}},
		{"sure --placings 2", []string{"3–99"}},
		{"seek --want 12cm", []string{"--want", "edge drop 12cm"}},
		{"seek --want edge-drop", []string{"--want"}},
		{"teach grain --grain 45", []string{"cowl sweep --vary grain"}},
		{"gather /nowhere", []string{"/nowhere", "study.json"}},
	} {
		n++
		dir := filepath.Join(t.TempDir(), "out")
		args := strings.Fields(q.args)
		got := call(t.Context(), append(args, "--out", dir)...)
		got.refused(t, q.args, dir, q.want...)
	}
	if n < 20 {
		t.Errorf("%d cases", n)
	}
}

// A real study of two cuts at 20 mm: the edge drops further with more
// extension, the second run says the same, a style file hung by cowl drape gives the row again,
// and the whole is one sheet.
func TestRealStudy(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cloth three times")
	}
	dir := t.TempDir()
	args := []string{"sweep", "--vary", "extension=4cm,8cm", "--folds", "1", "--placings", "1", "--spacing", "20mm",
		"--out", dir}
	first := call(t.Context(), args...)
	if first.code != console.ExitOK && first.code != console.ExitNotSettled {
		t.Fatalf("sweep = %d, %s", first.code, first.err)
	}
	rows := readback.Table(t, filepath.Join(dir, "table.csv"))
	if len(rows) != 2 {
		t.Fatalf("table.csv has %d rows, want 2", len(rows))
	}
	if again := call(t.Context(), args...); again.out != first.out {
		t.Errorf("the finished study said %q, then %q", first.out, again.out)
	}
	page, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	readback.WellFormed(t, page)
	if first.code == console.ExitNotSettled {
		t.Skipf("a placing did not settle: %s", first.err)
	}
	drop := func(i int) float64 {
		v, err := strconv.ParseFloat(rows[i]["edge_drop_mm_mean"], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if drop(1) < drop(0)+20 {
		t.Errorf("edge drop %.1f mm at 4 cm, %.1f mm at 8 cm, want 20 mm more or better", drop(0), drop(1))
	}
	out := filepath.Join(t.TempDir(), "drape")
	hung := blind(t.Context(), "drape", "--json", "--style", filepath.Join(dir, rows[1]["style"]), "--out", out)
	var o struct {
		Drop float64 `json:"edge_drop_mm"`
	}
	if err := json.NewDecoder(bytes.NewReader([]byte(hung.out))).Decode(&o); err != nil ||
		math.Abs(o.Drop-drop(1)) > 1e-3 {
		t.Errorf("cowl drape of %s drops %.4f mm, %v, the row says %.4f", rows[1]["style"], o.Drop, err, drop(1))
	}
}

// refused fails unless args were refused as bad input, with all the words wanted, and dir
// was left empty.
func (got called) refused(t *testing.T, args, dir string, want ...string) {
	t.Helper()
	if got.code != console.ExitBadInput || got.out != "" {
		t.Errorf("cowl %s = %d, out %q, want %d", args, got.code, got.out, console.ExitBadInput)
	}
	for _, w := range want {
		if !strings.Contains(got.err, w) {
			t.Errorf("cowl %s says %q, want %q in it", args, got.err, w)
		}
	}
	if !isEmpty(t, dir) {
		t.Errorf("cowl %s left files", args)
	}
}
