package main

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// pointsOf reads the seam and cut points of a piece of draft.csv, mm.
func pointsOf(t *testing.T, dir, piece string) [][2]float64 {
	t.Helper()
	f, err := os.Open(filepath.Join(dir, "draft.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out [][2]float64
	for _, r := range rows {
		if r[0] != piece || r[1] != "seam" && r[1] != "cut" && r[1] != "notch" {
			continue
		}
		x, errX := strconv.ParseFloat(r[4], 64)
		y, errY := strconv.ParseFloat(r[5], 64)
		if errX != nil || errY != nil {
			t.Fatalf("%s: row %v", dir, r)
		}
		out = append(out, [2]float64{x, y})
	}
	return out
}

// Every size of a nest is the single draft of that size, every point of seam line, cut line
// and notches of front, back and facing to 0.05 mm; each format holds them in one file.
func TestNestIsSingleDrafts(t *testing.T) {
	nest := t.TempDir()
	got := call(t.Context(), "draft", "--sizes", "14,8,10,12", "--back", "--quiet", "--format", "all", "--out", nest)
	if got.code != console.ExitOK || len(names(t, nest)) != 7 {
		t.Fatalf("cowl draft --sizes = %d, %s, left %v", got.code, got.err, names(t, nest))
	}
	count := 0
	for _, size := range []string{"8", "10", "12", "14"} {
		single := t.TempDir()
		call(t.Context(), "draft", "--size", size, "--back", "--quiet", "--format", "csv", "--out", single)
		for _, piece := range []string{"Cowl front", "Back", "Back neck facing"} {
			a, b := pointsOf(t, nest, piece+" "+size), pointsOf(t, single, piece)
			if len(a) != len(b) || len(a) < 50 {
				t.Fatalf("%s of size %s: %d points in the nest, %d alone", piece, size, len(a), len(b))
			}
			for i := range a {
				count++
				if d := math.Hypot(a[i][0]-b[i][0], a[i][1]-b[i][1]); d > 0.05 {
					t.Errorf("%s of size %s: point %d lies %.3f mm off that of the single draft", piece, size, i, d)
				}
			}
		}
	}
	if count < 2500 {
		t.Errorf("looked at %d points, want 2500 or more", count)
	}
}

// Held as drop, every size has the drop of the style's own; held as length, the extension.
// What is of one body is refused.
func TestNestHolds(t *testing.T) {
	own := figuresOf(t, "--out", t.TempDir())
	drop := object(t, call(t.Context(), "draft", "--sizes", "8,16", "--hold", "drop", "--json", "--out", t.TempDir()).out)
	long := object(t, call(t.Context(), "draft", "--sizes", "8,16", "--extension", "9cm", "--json", "--out",
		t.TempDir()).out)
	if len(drop) != 2 || len(long) != 2 {
		t.Fatalf("figures of %d and %d sizes, want 2", len(drop), len(long))
	}
	for size := range drop {
		if d := drop[size].(map[string]any)["drop_curve_mm"].(float64); math.Abs(d-own.DropCurve) > 0.01 {
			t.Errorf("size %s held as drop: %.2f mm, want %.2f mm", size, d, own.DropCurve)
		}
		if back, has := drop[size].(map[string]any)["back"]; has {
			t.Errorf("size %s: figures of a back that nobody asked for: %v", size, back)
		}
		if e := long[size].(map[string]any)["extension_mm"].(float64); math.Abs(e-90) > 1e-6 {
			t.Errorf("size %s held as length: extension %.2f mm, want 90 mm", size, e)
		}
	}
	for _, q := range []struct{ args, want string }{
		{"draft --sizes 8,9", "size 9"}, {"draft --sizes 8,10 --bust 90cm", "--sizes: this style has own measurements"},
		{"draft --hold drop", "--hold: one size is drafted"},
	} {
		dir := filepath.Join(t.TempDir(), "out")
		bad := call(t.Context(), append(strings.Fields(q.args), "--out", dir)...)
		if bad.code != console.ExitBadInput || !strings.Contains(bad.err, q.want) {
			t.Errorf("cowl %s = %d, %q, want %d and %q", q.args, bad.code, bad.err, console.ExitBadInput, q.want)
		}
	}
}
