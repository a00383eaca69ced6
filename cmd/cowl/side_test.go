package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// ofTheFront are words that nothing about a back cowl may say; of its plain front some may.
var ofTheFront = regexp.MustCompile(`(?i)centre front|front neck point|above the bust|bust point|\bapex|\bCF\b|"cf_|_cf_|cowl front`)

// A back cowl is drafted with its plain front: they walk and join, the words are those of a
// back, and its paper comes back as a back cowl of the same figures.
func TestDraftSideBack(t *testing.T) {
	args := []string{"--side", "back", "--extension", "10cm", "--cowl-point", "5cm"}
	dir := t.TempDir()
	got := call(t.Context(), append([]string{"draft", "--front", "--json", "--format", "all", "--out", dir}, args...)...)
	if got.code != console.ExitOK {
		t.Fatalf("cowl draft --side back --front = %d, %s", got.code, got.err)
	}
	all := object(t, got.out)
	plain, ok := all["front"].(map[string]any)
	if !ok || all["back"] != nil || all["side"] != "back" || all["cb_length_mm"] == nil || plain["facing_cf_mm"] == nil {
		t.Fatalf("keys of a back cowl: %s", got.out)
	}
	for _, w := range plain["walked"].([]any) {
		m := w.(map[string]any)
		if d := m["front_mm"].(float64) - m["back_mm"].(float64); math.Abs(d) > 0.5 {
			t.Errorf("%v apart by %.2f mm, want 0.5 mm at most", m["name"], d)
		}
	}
	joined := plain["joined"].([]any)
	for _, j := range joined {
		m := j.(map[string]any)
		if a := m["angle_deg"].(float64); math.Abs(a-180) > 2 {
			t.Errorf("%v joins at %.1f°, want 180° ± 2°", m["name"], a)
		}
	}
	if len(joined) != 3 {
		t.Errorf("%d joins, want 3", len(joined))
	}
	strap := all["strap"].(map[string]any)
	if strap["kind"] != "strap" || strap["slips_without"] != true || strap["long_mm"].(float64) < 200 {
		t.Errorf("strap %v, want one: the neck is wide and low", strap)
	}
	for _, name := range []string{"draft.dxf", "draft.svg", "draft.csv"} {
		back := call(t.Context(), "draft", "--piece", filepath.Join(dir, name), "--json", "--out", t.TempDir())
		if back.code != console.ExitOK {
			t.Errorf("%s read back = %d, %s", name, back.code, back.err)
			continue
		}
		again := object(t, back.out)
		for _, key := range []string{"half_edge_mm", "cb_length_mm", "shoulder_mm", "side_mm", "extension_mm", "facing_mm",
			"grain_deg"} {
			if a, b := again[key].(float64), all[key].(float64); math.Abs(a-b) > 0.1 {
				t.Errorf("%s: %s %.2f, want %.2f", name, key, a, b)
			}
		}
	}
}

// What is said of a back cowl by itself has none of the words of a front.
func TestBackWords(t *testing.T) {
	count := 0
	for _, args := range []string{"draft", "draft --json", "draft --sizes 8,12", "draft --sizes 8,12 --json",
		"draft --how slash --extension 7cm", "draft --pleats 2 --cf-weight 8g --hem 10cm",
		"draft --closure shoulder --strap tie"} {
		dir := t.TempDir()
		got := call(t.Context(), append(strings.Fields(args), "--side", "back", "--format", "svg,csv", "--out", dir)...)
		if got.code != console.ExitOK {
			t.Errorf("cowl %s --side back = %d, %s", args, got.code, got.err)
			continue
		}
		texts := map[string]string{"report": got.out + got.err}
		for _, name := range []string{"draft.svg", "draft.csv"} {
			b, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				t.Fatal(err)
			}
			texts[name] = string(b)
		}
		for name, text := range texts {
			count++
			if said := ofTheFront.FindString(text); said != "" || !strings.Contains(text, "back") {
				t.Errorf("cowl %s --side back: %s says %q, want the words of a back", args, name, said)
			}
		}
	}
	if count != 21 {
		t.Errorf("read %d texts, want 21", count)
	}
}

// What makes no sense at that side is refused with what to do instead.
func TestSideRefuses(t *testing.T) {
	block := write(t, "b.yaml", "cut: {side: back}\nblock:\n  - {name: neck, x_cm: 6.7, y_cm: 0}\n")
	style := write(t, "s.yaml", "cut:\n  side: back\n  closure: back\n")
	count := 0
	for _, q := range []struct{ args, want string }{
		{"draft --side left", `--side: side "left", want front or back`},
		{"draft --side back --back", "--back: the cowl is the back itself, want --front"},
		{"draft --front", "--front: the cowl is the front itself, want --back"},
		{"draft --side back --front --back-grain 30", "--back-grain: the back is the cowl"},
		{"draft --back --front-grain 30", "--front-grain: the front is the cowl"},
		{"draft --side back --front-grain 30", "--front-grain: no plain front is drafted"},
		{"lay --side back --no-back", "--no-back: the cowl is the back itself, want --no-front"},
		{"lay --no-front", "--no-front: the cowl is the front itself, want --no-back"},
		{"draft --side back --closure back", "--closure: closure back, but the side is back"},
		{"draft --style " + style, "s.yaml:3: closure back, but the side is back"},
		{"draft --style " + block, "b.yaml:2: block of your own, but the side is back"},
		{"draft --strap tie", "--strap: strap tie, but the side is front"},
		{"draft --side back --strap rope", `--strap: strap "rope", want none, strap, tie`},
		{"drape --side back --lean 80", "--lean: lean 80.0°, want 0.0–60.0°"},
		{"drape --side back --lean 30 --free --waist free", "--lean: lean 30.0° of a piece that hangs free, want 0"},
		{"draft --side back --cowl-point 12cm", "--cowl-point: cowl point 12.0 cm, want 0.0–"},
		{"draft --side back --facing 30cm --hem 1cm", "--hem: hem 1.0 cm"},
		{"drape --side back --edge-depth 50cm", "--edge-depth: "},
		{"draft --side back --bust 300cm", "--bust: bust 300"},
		{"view " + write(t, "v.yaml", "cut: {side: backwards}\n"), `v.yaml:1: cut: side "backwards", want front or back`},
	} {
		count++
		got := call(t.Context(), append(strings.Fields(q.args), "--out", t.TempDir())...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, q.want) {
			t.Errorf("cowl %s = %d, %q, want %q", q.args, got.code, got.err, q.want)
		}
	}
	if count < 20 {
		t.Errorf("%d cases", count)
	}
}

// A back cowl hangs on 20 mm: at rest, unpierced, with a fold it was laid, its edge below the
// neck points; report, result and style say back, and the style is hung again alike.
func TestDrapeSideBack(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cowl")
	}
	dir := t.TempDir()
	args := []string{"--spacing", "20mm", "--folds", "2", "--fabric", "silk-crepe-de-chine-memory", "--out", dir}
	got := call(t.Context(), append([]string{"drape", "--side", "back", "--extension", "10cm", "--cowl-point", "5cm"},
		args...)...)
	if got.code != console.ExitOK {
		t.Fatalf("cowl drape --side back = %d, %s", got.code, got.err)
	}
	text, err := os.ReadFile(filepath.Join(dir, "result.json"))
	if err != nil {
		t.Fatal(err)
	}
	r := object(t, string(text))
	if r["status"] != "settled" || r["pierced"].(float64) != 0 || r["kept"].(float64) < 1 || r["side"] != "back" {
		t.Errorf("status %v, pierced %v, kept %v, side %v, want a back cowl at rest, unpierced, with a fold kept",
			r["status"], r["pierced"], r["kept"], r["side"])
	}
	// Below the curve it hangs in alone it cannot drop, nor rise to where it was pinned.
	if drop := r["edge_drop_mm"].(float64); !(drop > 30 && drop < r["edge_drop_v_mm"].(float64)) {
		t.Errorf("edge drop %.0f mm, want it between 30 mm and that of a V, %.0f mm", drop, r["edge_drop_v_mm"])
	}
	for name, said := range map[string]string{"report": got.out, "result.json": string(text)} {
		if w := ofTheFront.FindString(said); w != "" {
			t.Errorf("%s says %q of a back cowl", name, w)
		}
	}
	again := blind(t.Context(), "drape", "--style", filepath.Join(dir, "style.yaml"), "--json", "--out", t.TempDir())
	if a := object(t, again.out); a["edge_drop_mm"] != r["edge_drop_mm"] || a["side"] != "back" {
		t.Errorf("hung again from style.yaml: drop %v, side %v, want %v and back", a["edge_drop_mm"], a["side"],
			r["edge_drop_mm"])
	}
	if picture, err := os.ReadFile(filepath.Join(dir, "drape.png")); err == nil &&
		!bytes.HasPrefix(picture, []byte("\x89PNG")) {
		t.Error("drape.png is no picture")
	}
}
