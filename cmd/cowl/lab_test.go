package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// labJSON runs a test of the lab with --json and returns what it prints.
func labJSON(t *testing.T, args ...string) map[string]any {
	t.Helper()
	got := call(t.Context(), append(append([]string{"lab"}, args...), "--json")...)
	var out map[string]any
	if err := json.Unmarshal([]byte(got.out), &out); err != nil || got.code != console.ExitOK || got.err != "" {
		t.Fatalf("cowl lab %v = %d, %q, %v", args, got.code, got.err, err)
	}
	for _, key := range []string{"residual", "nodes", "seconds", "spacing_mm", "status", "fabric"} {
		if _, ok := out[key]; !ok {
			t.Errorf("cowl lab %v: no %s", args, key)
		}
	}
	return out
}

// near compares a number of out.
func near(t *testing.T, out map[string]any, key string, want, tol float64) {
	t.Helper()
	if v, ok := out[key].(float64); !ok || math.Abs(v-want) > tol {
		t.Errorf("%s = %v, want %g ± %g", key, out[key], want, tol)
	}
}

// A 50 mm strip at 150 g/m² and 10 µN·m dips 60.19° by the heavy elastica; its
// bending length is (B/w)^⅓ = 18.95 mm.
func TestLabBend(t *testing.T) {
	out := labJSON(t, "bend", "--weight", "150gsm", "--bend", "10uNm", "--length", "5cm", "--grain", "0")
	near(t, out, "chord_deg", 60.19, 0.3)
	near(t, out, "bending_length_mm", 18.95, 0.1)
	x, y := out["tip_x_mm"].(float64), out["tip_drop_mm"].(float64)
	if a := math.Atan2(y, x) * 180 / math.Pi; math.Abs(a-out["chord_deg"].(float64)) > 1e-9 {
		t.Errorf("tip at %g, %g lies at %g°, not at the chord %v", x, y, a, out["chord_deg"])
	}
}

// FAST reads G = 123/EB5 from a bias strip at 5 gf/cm: 3.06 % for 40 N/m, of
// which yarns of 2000 N/m give nothing.
func TestLabPull(t *testing.T) {
	out := labJSON(t, "pull", "--weight", "150gsm", "--bend", "10uNm", "--shear", "40N/m", "--pull-warp", "200000N/m",
		"--pull-weft", "200000N/m", "--grain", "45", "--load", "5gf/cm", "--free")
	near(t, out, "extension_percent", 123./40, 0.15)
	near(t, out, "modulus_N_per_m", 160, 8)
	near(t, out, "shear_deg", 3.5, 0.2) // sin γ = (1.03065)² − 1
}

func TestLabHang(t *testing.T) {
	out := labJSON(t, "hang", "--weight", "150gsm", "--bend", "10uNm", "--width", "30cm", "--spacing", "18mm",
		"--placings", "1")
	near(t, out, "lower_bound_mm", 79.65, 0.1)
	near(t, out, "upper_bound_mm", 90, 1e-6)
	for _, key := range []string{"edge_drop_mm", "energy_mJ"} {
		if _, ok := out[key].(float64); !ok {
			t.Errorf("no %s", key)
		}
	}
}

// Two pleats a side make two folds; the lower edge of 40 × 18 cm hangs 18 cm deep.
func TestLabSwag(t *testing.T) {
	out := labJSON(t, "swag", "--fabric", "polyester-twill", "--width", "40cm", "--pleats", "2")
	near(t, out, "edge_depth_mm", 180, 9)
	if folds, ok := out["folds"].([]any); !ok || len(folds) != 2 {
		t.Errorf("folds = %v, want 2", out["folds"])
	}
	near(t, out, "pierced", 0, 0)
}

// A loop of 5 bending lengths of 20 mm hangs 19.46 mm deep by the heavy elastica.
func TestLabLoop(t *testing.T) {
	out := labJSON(t, "loop", "--weight", "150gsm", "--bend", "11.768uNm", "--shear", "30N/m", "--length", "10cm",
		"--angle", "0", "--spacing", "1.5mm")
	loops, ok := out["loops"].([]any)
	if !ok || len(loops) != 1 {
		t.Fatalf("loops = %v, want one", out["loops"])
	}
	loop := loops[0].(map[string]any)
	near(t, loop, "elastica_depth_mm", 19.459, 0.002)
	near(t, loop, "depth_mm", 19.459, 0.25)
	near(t, loop, "bending_length_mm", 20, 0.35)
	near(t, loop, "plate_bend_uNm", 11.768, 0.001)
}

func TestLabDisc(t *testing.T) {
	dir := t.TempDir()
	out := labJSON(t, "disc", "--weight", "150gsm", "--bend", "2000uNm", "--specimen", "24cm", "--disc", "18cm",
		"--spacing", "5mm", "--placings", "1", "--out", dir)
	near(t, out, "drape_coefficient_percent", 99, 1.5)
	near(t, out, "node_count", 0, 0)
	if c, ok := out["node_counts"].(map[string]any); !ok || c["0"] != 1.0 {
		t.Errorf("node_counts = %v, want one placing with 0", out["node_counts"])
	}
	for _, name := range []string{"result.json", "shadow.png"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
}

// Friction of bending holds cloth up: the band reads less without it than with it, and
// L0 = √(2HB/w) is what it holds flat (150 g/m² with half a loop of 0.05 mN: 8.25 mm).
func TestLabDiscBand(t *testing.T) {
	if testing.Short() {
		t.Skip("two discs")
	}
	out := labJSON(t, "disc", "--weight", "150gsm", "--bend", "20uNm", "--bend-friction", "0.05mN", "--specimen", "24cm",
		"--spacing", "8mm", "--placings", "1", "--band")
	band, ok := out["without_bend_friction"].(map[string]any)
	if !ok {
		t.Fatalf("without_bend_friction = %v, want a reading", out["without_bend_friction"])
	}
	near(t, band, "friction_length_mm", 8.245, 0.005)
	with, without := out["drape_coefficient_percent"].(float64), band["drape_coefficient_percent"].(float64)
	if with <= without {
		t.Errorf("coefficient %.1f %% with friction of bending and %.1f %% without, want more with it", with, without)
	}
}

// The twist of a plate cannot be less than nothing; a fabric whose bias bends
// as if it were is held, and the user is told.
func TestLabWarnsOfTwist(t *testing.T) {
	file := filepath.Join(t.TempDir(), "limp.yaml")
	text := "name: limp-on-the-bias\nweight_gsm: 150\nbend_warp_uNm: 10\nbend_weft_uNm: 10\nbend_bias_uNm: 4\n"
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	got := call(t.Context(), "lab", "bend", "--fabric-file", file, "--length", "2cm", "--json")
	var out struct{ Warning string }
	if err := json.Unmarshal([]byte(got.out), &out); err != nil || got.code != console.ExitOK {
		t.Fatalf("cowl lab bend = %d, %q, %v", got.code, got.err, err)
	}
	for _, text := range []string{got.err, out.Warning} {
		if !strings.Contains(text, "bend_bias_uNm: 4") || !strings.Contains(text, "5.5") {
			t.Errorf("warning %q, want the 4 that was given and the 5.5 that is used", text)
		}
	}
}

func TestLabRefuses(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"bend --weight 150 --bend 10uNm", "no unit"},
		{"bend --weight 150gsm --bend 10", "10µN·m"},
		{"bend --weight 150gsm --bend 10kg", `"kg"`},
		{"bend --weight 150gsm", "--bend"},
		{"bend --bend 10uNm", "--weight"},
		{"bend --weight 3gsm --bend 10uNm", "10–1500 g/m²"},
		{"bend --weight 150gsm --bend 10uNm --bend-friction 0.3", "0.3mN"},
		{"bend --fabric wool-tropical --weight 150gsm --bend 10uNm", "not both"},
		{"bend --fabric nothing-like-it", "no fabric"},
		{"bend --length 3m", "5–500 mm"},
		{"bend --length 5", "no unit"},
		{"bend --length=-5cm", "more than nothing"},
		{"pull --load 5", "5N/m"},
		{"pull --load 5000N/m", "0.001–1000 N/m"},
		{"pull --width 5m", "5–500 mm"},
		{"hang --span 90cm", "120–599.4 mm"},
		{"hang --placings 0", "1–12"},
		{"hang --placings 40", "1–12"},
		{"disc --specimen 10cm --disc 18cm", "20–90 mm"},
		{"disc --placings 100", "1–48"},
		{"disc --spacing 5cm", "1–20 mm"},
		{"hang --shakes 501", "0–500"},
		{"hang --gap 2cm", "0–5 mm"},
		{"disc --fall thrown", "dropped"},
		{"disc --gap 2cm", "0–5 mm"},
		{"disc --weight 150gsm --bend 10uNm --band", "no friction of bending"},
		{"swag --pleats 0", "1–8"},
		{"swag --pleats 9", "1–8"},
		{"swag --depth 2m", "204–714 mm"},
		{"loop --length 2cm", "30–500 mm"},
		{"loop --length=-5cm", "more than nothing"},
		{"loop --spacing 5mm", "0.3–3.75 mm"},
		{"stir", "stir"},
	} {
		got := call(t.Context(), append([]string{"lab"}, strings.Fields(c.args)...)...)
		if got.code != console.ExitBadInput || got.out != "" || !strings.Contains(got.err, c.want) {
			t.Errorf("cowl lab %s = %d, out %q, err %q, want %d and %q", c.args, got.code, got.out, got.err,
				console.ExitBadInput, c.want)
		}
	}
}
