package main

import (
	"bytes"
	"context"
	"encoding/json"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/stage"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// keys that result.json promises.
var resultKeys = strings.Fields(`status fold_count folds edge_drop_mm edge_below_neck_mm stand_off_mm forward_mm
	twist_mm cf_growth_percent wrong_side_mm2 max_strain_percent pin_pull_N residual energy_mJ nodes spacing_mm
	seconds iterations fabric extension_mm grain_deg placings count_share edge_drop_spread_mm fold_radius_mm pierced
	edge_drop_curve_mm edge_drop_v_mm fold_count_all laid kept extra tried taken_up_mm shake_a energy_total_mJ`)

// object reads one JSON object and nothing after it.
func object(t *testing.T, text string) map[string]any {
	t.Helper()
	var m map[string]any
	d := json.NewDecoder(strings.NewReader(text))
	if err := d.Decode(&m); err != nil || d.More() {
		t.Fatalf("%q is not one JSON object: %v", text, err)
	}
	return m
}

// coarse is a drape quick enough for a test.
func coarse(dir string, more ...string) []string {
	return append([]string{"drape", "--spacing", "20mm", "--out", dir}, more...)
}

func TestDrapeWritesAll(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cloth")
	}
	dir := t.TempDir()
	got := call(t.Context(), coarse(dir, "--extension", "3cm", "--json")...)
	result := object(t, got.out)
	settled := result["status"] == "settled"
	if want := map[bool]int{true: console.ExitOK, false: console.ExitNotSettled}[settled]; got.code != want {
		t.Errorf("cowl drape = %d with status %v, want %d", got.code, result["status"], want)
	}
	if settled == strings.Contains(got.err, "NOT SETTLED") {
		t.Errorf("cowl drape with status %v says %q", result["status"], got.err)
	}
	for _, k := range resultKeys {
		if _, ok := result[k]; !ok {
			t.Errorf("result lacks %q", k)
		}
	}
	want := []string{"draft.svg", "drape.glb", "drape.png", "result.json", "style.yaml"}
	if st, err := stage.New(); err != nil {
		t.Logf("no picture on this machine: %v", err)
		want = slices.DeleteFunc(want, func(s string) bool { return s == "drape.png" })
	} else {
		st.Close()
	}
	var names []string
	files, err := os.ReadDir(dir)
	for _, f := range files {
		names = append(names, f.Name())
	}
	if err != nil || !slices.Equal(names, want) {
		t.Fatalf("cowl drape left %v, want %v", names, want)
	}
	checkFiles(t, dir, names)
	if data, err := os.ReadFile(filepath.Join(dir, "result.json")); err != nil || string(data) != got.out {
		t.Errorf("result.json = %q, %v, want what was printed", data, err)
	}
}

// checkFiles reads the files back.
func checkFiles(t *testing.T, dir string, names []string) {
	t.Helper()
	for _, name := range names {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		switch filepath.Ext(name) {
		case ".svg":
			elements(t, data)
		case ".glb":
			if !bytes.HasPrefix(data, []byte("glTF")) {
				t.Errorf("%s begins with %q, want glTF", name, data[:4])
			}
		case ".png":
			if img, err := png.Decode(bytes.NewReader(data)); err != nil || img.Bounds().Dx() < 1000 {
				t.Errorf("%s = %v, want a picture of 1000 pixels or more", name, err)
			}
		}
	}
}

// style.yaml runs the same drape again, bit for bit, although the first run
// took its values from flags. Nothing can be drawn: all else is written.
func TestDrapeAgain(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cloth twice")
	}
	dir := t.TempDir()
	first := blind(t.Context(), coarse(dir, "--json", "--folds", "2", "--edge-depth", "6cm", "--waist", "pinned", "--extension",
		"3.25in", "--fabric", "polyester-viscose-twill", "--seed", "3")...)
	if !strings.Contains(first.err, "no picture: blindfold") {
		t.Errorf("a drape without picture says %q, want the reason", first.err)
	}
	if _, err := os.Stat(filepath.Join(dir, "drape.glb")); err != nil {
		t.Errorf("a drape without picture lacks the mesh: %v", err)
	}
	other := t.TempDir()
	if again := blind(t.Context(), "drape", "--quiet", "--style", filepath.Join(dir, "style.yaml"), "--out", other); again.out != "" {
		t.Errorf("cowl drape --quiet prints %q, want nothing", again.out)
	}
	data, err := os.ReadFile(filepath.Join(other, "result.json"))
	if err != nil {
		t.Fatal(err)
	}
	a, b := object(t, first.out), object(t, string(data))
	if len(a) < len(resultKeys) {
		t.Fatalf("result has %d keys, want %d or more", len(a), len(resultKeys))
	}
	if a["laid"] != 2.0 || a["edge_depth_set_mm"] != 60.0 || a["tried"] != nil {
		t.Errorf("%v laid, edge set to %v mm, tried %v, want 2, 60 and none", a["laid"], a["edge_depth_set_mm"], a["tried"])
	}
	delete(a, "seconds")
	delete(b, "seconds")
	left, _ := json.Marshal(a)
	right, _ := json.Marshal(b)
	if !bytes.Equal(left, right) {
		t.Errorf("the same style hung twice gives\n%s\n%s", left, right)
	}
}

// What a dressmaker reads. An outcome that is not settled says so in report and
// caption, several placings give their spread, every figure has its unit.
func TestDrapeReport(t *testing.T) {
	s, err := styleFlags{}.load()
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	o := drape.Outcome{
		Status: sim.Settled, FoldCount: 2, CountShare: 0.6, Placings: 5, EdgeDrop: 0.151,
		EdgeDrops: []float64{0.151, 0.147, 0.149 - 0.02465, 0.149 + 0.02465, 0.149},
		Folds: []drape.Fold{{Fold: fold.Fold{Depth: 0.042, CF: 0.080, Height: 0.270, Zone: fold.AboveBust}},
			{Fold: fold.Fold{Depth: 0.061, CF: 0.090, Height: 0.090, Zone: fold.BelowBust}}},
		Drift: -0.003, CFGrowth: -0.023, PinPull: 0.8,
	}
	rest, fall := drape.Outcome{Status: sim.Settled}, drape.Outcome{Status: sim.StepLimit}
	for _, q := range []struct {
		status sim.Status
		each   []drape.Outcome
		want   []string
	}{
		{sim.Settled, []drape.Outcome{rest, rest}, []string{"2 above the bust in 60 % of 5 placings",
			"42 mm deep, 8.0 cm down the centre front, 27.0 cm above the waist", "Other folds  1 below the bust",
			"61 mm deep, 9.0 cm down", "15.1 cm below the shoulder neck points; 14.9 ± 1.7 cm",
			"it also runs forward, so it drops less", "2.3 % shorter than cut", "carries 82 g",
			"3.0 mm to the wearer's right", say.Caution}},
		{sim.Settled, []drape.Outcome{rest, fall}, []string{"settled; NOT SETTLED: 1 of the 5 placings"}},
		{sim.StepLimit, []drape.Outcome{fall, rest}, []string{"NOT SETTLED (step-limit): in motion"}},
	} {
		o.Status, o.Warning = q.status, "in motion"
		h := &hung{Drape: drawn.Drape{Style: s, Cowl: p, Run: &drape.Run{Outcome: o, Each: q.each}}}
		var b bytes.Buffer
		h.report(&b)
		for _, part := range q.want {
			if !strings.Contains(b.String(), part) {
				t.Errorf("report says %q, want %q in it", b.String(), part)
			}
		}
		words := strings.Join(h.caption(), "\n")
		if strings.Contains(words, "NOT SETTLED") != (h.restless() > 0) || !strings.HasSuffix(words, say.Caution) ||
			!strings.Contains(words, "deepest 42 mm") {
			t.Errorf("caption of a %s drape says %q", q.status, words)
		}
	}
}

// A drape that is called off, before it begins or while the cloth falls, leaves
// nothing behind, not even the folder; nor does it draw a progress line where
// no terminal is.
func TestCancel(t *testing.T) {
	for _, after := range []time.Duration{10 * time.Millisecond, 2 * time.Second} {
		if testing.Short() && after > time.Second {
			continue
		}
		ctx, cancel := context.WithTimeout(t.Context(), after)
		dir := filepath.Join(t.TempDir(), "out")
		got := call(ctx, "drape", "--spacing", "3mm", "--out", dir)
		cancel()
		if got.code != console.ExitCancelled || got.out != "" || strings.Contains(got.err, "\r") {
			t.Errorf("drape cancelled after %v = %d, out %q, err %q, want %d and nothing written", after, got.code, got.out,
				got.err, console.ExitCancelled)
		}
		if _, err := os.Stat(dir); err == nil {
			t.Errorf("drape cancelled after %v made %s, want no folder", after, dir)
		}
	}
}
