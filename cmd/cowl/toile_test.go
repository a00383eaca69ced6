package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/readback"
)

// Every verb of the book says in its help what it takes.
func TestToileHelp(t *testing.T) {
	for args, want := range map[string][]string{
		"toile --help": {"toile add", "toile show", "toile fit"}, "toile add --help": {"--fold=DEPTH@PLACE", "4.5cm@5cm",
			"--import=FILE", "shoulder neck"},
		"toile show --help": {"--placings=N", "--book=FILE"}, "toile fit --help": {"--fabric=NAME", "(12mm)", "--out=FILE"},
		"drape --help": {"--book=FILE"}, "sure --help": {"--book=FILE"},
	} {
		got := call(t.Context(), strings.Fields(args)...)
		for _, w := range want {
			if got.code != console.ExitOK || !strings.Contains(got.out, w) {
				t.Errorf("cowl %s = %d, %q, want %q in it", args, got.code, got.out, w)
			}
		}
	}
}

// Every wrong toile ends with exit 2, a message that says what to do, and nothing written.
func TestToileBadInput(t *testing.T) {
	style := write(t, "style.yaml", "name: x\n")
	n := 0
	for _, q := range []struct {
		args string
		want []string
	}{
		{"toile add", []string{"--style", "cowl-out/style.yaml"}},
		{"toile add --style STYLE", []string{"nothing is measured", "drop, kept, fold and reach"}},
		{"toile add --style STYLE --laid 2", []string{"nothing is measured"}},
		{"toile add --style STYLE --drop 12.5", []string{"--drop", `"12.5" has no unit`, "12.5cm"}},
		{"toile add --style STYLE --drop 1.25m", []string{"drop 125.0 cm, want -10.0–60.0 cm"}},
		{"toile add --style STYLE --reach -20cm", []string{"reach -20.0 cm, want -5.0–40.0 cm"}},
		{"toile add --style STYLE --laid 7 --kept 2", []string{"--laid", "0–6"}},
		{"toile add --style STYLE --laid 1 --kept 2", []string{"kept 2 of laid 1 folds"}},
		{"toile add --style STYLE --kept 2", []string{"laid is not told"}},
		{"toile add --style STYLE --fold 45cm@5cm", []string{"depth of fold 1 45.0 cm, want 0.2–25.0 cm"}},
		{"toile add --style STYLE --fold @", []string{"--fold", "DEPTH@PLACE like 4.5cm@5cm"}},
		{"toile add --style STYLE --fold 3cm@9cm --fold 3cm@8cm", []string{"fold 2 lies 8.0 cm", "from the edge down"}},
		{"toile add --style STYLE --drop 12cm --date 1.5.26", []string{`date "1.5.26"`, "year-month-day"}},
		{"toile add --style STYLE --drop 12cm --note =1", []string{"formula"}},
		{"toile add --style STYLE --drop 12cm --photo STYLE", []string{"copy it there first"}},
		{"toile add --style /nowhere.yaml --drop 12cm", []string{"/nowhere.yaml", "no such file"}},
		{"toile add --style STYLE --import STYLE", []string{"--import", "no figure and no style"}},
		{"toile add --import /nowhere.csv", []string{"--import", "/nowhere.csv", "no such file"}},
		{"toile add --import STYLE", []string{"style.yaml", `column "name: x"`}},
		{"toile show", []string{"no such file", "cowl toile add"}},
		{"toile show --placings 0", []string{"--placings", "1–99"}},
		{"toile fit", []string{"--fabric"}},
		{"toile fit --fabric denim", []string{"no such file", "cowl toile add"}},
		{"toile fit --fabric denim --spacing 12", []string{"--spacing", "no unit"}},
		{"drape --spacing 20mm --out OUT", []string{"--book", "no such file"}},
		{"sure --spacing 20mm --out OUT", []string{"--book", "no such file"}},
	} {
		n++
		dir := filepath.Join(t.TempDir(), "out")
		args := strings.Fields(strings.NewReplacer("STYLE", style, "OUT", dir).Replace(q.args))
		got := call(t.Context(), append(args, "--book", filepath.Join(dir, "toiles.csv"))...)
		got.refused(t, q.args, dir, q.want...)
	}
	if n < 20 {
		t.Errorf("%d cases", n)
	}
}

// A toile from end to end on 20 mm with one placing, its figures invented: the sheet holds
// the prediction that cowl drape gives for the same style, nothing is hung twice, and
// cowl drape then says how far the drop came out.
func TestToileEndToEnd(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cloth three times")
	}
	dir := t.TempDir()
	t.Chdir(dir)
	hung := blind(t.Context(), "drape", "--spacing", "20mm", "--folds", "1", "--json")
	var o struct {
		Drop float64 `json:"edge_drop_mm"`
	}
	if err := json.Unmarshal([]byte(hung.out), &o); err != nil || hung.code != console.ExitOK {
		t.Fatalf("drape = %d, %v, %s", hung.code, err, hung.err)
	}
	add := call(t.Context(), "toile", "add", "--style", "cowl-out/style.yaml", "--drop", "20cm", "--laid", "1", "--kept",
		"1", "--fold", "4.5cm@5cm", "--reach", "5.2cm", "--json")
	var added addedJSON
	if err := json.Unmarshal([]byte(add.out), &added); err != nil || add.code != console.ExitOK || added.Toiles != 1 {
		t.Fatalf("toile add = %d, %q, %v, %s", add.code, add.out, err, add.err)
	}
	if before := blind(t.Context(), "drape", "--spacing", "20mm", "--folds", "1"); strings.Contains(before.out,
		"toile the drop") {
		t.Errorf("drape says %q of a toile without prediction", before.out)
	}
	show := call(t.Context(), "toile", "show", "--placings", "1", "--json")
	var sheet struct {
		Figures []struct {
			N    int
			Bias *float64
		}
	}
	if err := json.Unmarshal([]byte(show.out), &sheet); err != nil || show.code != console.ExitOK ||
		len(sheet.Figures) != 5 {
		t.Fatalf("toile show = %d, %q, %v, %s", show.code, show.out, err, show.err)
	}
	if drop := sheet.Figures[1]; drop.N != 1 || math.Abs(*drop.Bias-(o.Drop-200)) > 1e-3 {
		t.Errorf("bias of the drop %v mm, want %.4f less 200", *drop.Bias, o.Drop)
	}
	page, err := os.ReadFile(filepath.Join("cowl-toiles", "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	readback.WellFormed(t, page)
	rows, _ := filepath.Glob("toiles/rows/*.json")
	if again := call(t.Context(), "toile", "show", "--placings", "1", "--json"); again.out != show.out || len(rows) != 1 {
		t.Errorf("the second sheet is %q, the first %q; %d rows, want 1", again.out, show.out, len(rows))
	}
	said := blind(t.Context(), "drape", "--spacing", "20mm", "--folds", "1", "--out", "again")
	if want := "In your last 1 toile the drop came out "; !strings.Contains(said.out, want) ||
		!strings.Contains(said.out, " cm deeper than cowl toile show predicts") {
		t.Errorf("drape says %q, want %q", said.out, want)
	}
}
