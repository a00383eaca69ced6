package study

import (
	"bytes"
	"context"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/memory"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/study/readback"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// fake stands in for the physics: the edge drops 0.7 of the hanging curve, a
// millimetre less for every 20 g/m² and up to a millimetre more or less by the
// hand; one fold, two from an edge drop of 150 mm on. Of the folds that are laid it
// keeps two, and a first hand that finds it out tries four.
func fake(calls *atomic.Int32) func(context.Context, oneCase, int) (rows.Made[Row], error) {
	return func(_ context.Context, c oneCase, k int) (rows.Made[Row], error) {
		calls.Add(1)
		curve, _ := c.bounds()
		hand := rand.New(rand.NewPCG(c.seed(k), 9)).Float64()*2 - 1
		o := drape.Outcome{Status: sim.Settled, FoldCount: 1, StandOff: (10 + hand) / 1000, Twist: hand / 1000,
			Seed: c.seed(k)}
		o.EdgeDrop = (0.7*curve - c.style.Fabric.Weight*1000/20 + hand) / 1000
		if o.EdgeDrop > 0.150 {
			o.FoldCount = 2
		}
		if c.style.Hang.EdgeDepth != draft.Auto {
			o.Taken = 0.01
		}
		o.Laid, o.Forward = c.style.Hang.Folds, 0.058
		switch {
		case c.first != nil:
			o.Laid = c.first.Laid
		case o.Laid == drape.Auto:
			o.Laid = 2
		}
		if c.style.Hang.Folds == drape.Auto && c.finds() && c.first == nil {
			o.Tried = []drape.Try{{Laid: 1, Kept: 1, Settled: true}, {Laid: 2, Kept: 2, Settled: true},
				{Laid: 3, Kept: 2, Extra: 1, Settled: true}, {Laid: 4, Kept: 2}}
		}
		o.Kept = min(o.Laid, 2)
		for range o.FoldCount {
			o.Folds = append(o.Folds, drape.Fold{Fold: fold.Fold{Depth: o.EdgeDrop / 4, Zone: fold.AboveBust}})
		}
		made := rows.Made[Row]{Value: Row{Outcome: o}}
		if c.drawn(k) {
			made.Value.Section, made.Value.Form = [][2]float64{{100, 0}, {110, 200}}, [][2]float64{{90, 0}, {95, 200}}
			made.Files = map[string][]byte{"jpg": []byte("\xff\xd8 picture of " + c.Name)}
		}
		return made, nil
	}
}

// faked is a runner that computes nothing.
func faked(dir string, part rows.Part, calls *atomic.Int32) (*runner, *bytes.Buffer, *bytes.Buffer) {
	var out, err bytes.Buffer
	w := newRunner(Options{Dir: dir, Jobs: 2, Part: part, Stage: func() (*stage.Stage, error) {
		return nil, errors.New("blind")
	}}, console.Console{Out: &out, Err: &err})
	w.hang = fake(calls)
	return w, &out, &err
}

// asked makes a spec on the demo.
func asked(t *testing.T, verb string, placings int, vary []string, fabrics ...string) Spec {
	t.Helper()
	s := demoStyle(t)
	a, err := NewSpec(verb, s, placings)
	if err != nil {
		t.Fatal(err)
	}
	a.Vary = vary
	if a.Fabrics, err = Pin(fabrics); err != nil {
		t.Fatal(err)
	}
	return a
}

// demoStyle is the built-in style of the program.
func demoStyle(t *testing.T) style.Style {
	t.Helper()
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sheets of every verb.
var asks = []struct {
	verb          string
	vary, fabrics []string
	drapes        int
	says          []string
}{
	{"compare", nil, []string{"polyester-twill", "wool-tropical", "silk-chiffon-memory"}, 15,
		[]string{"Which cloth", "silk-chiffon-memory", "From memory", "hand by hand",
			"wool-tropical keeps 2 of 2 laid folds, the deepest ", " mm, 5.8 cm ahead of the form.",
			"How many folds each cloth keeps", "2 kept, 1 extra", "2 kept, not settled",
			"what the first hand of each row finds"}},
	{"sweep", []string{"folds=1,2,3"}, nil, 15, []string{"Folds laid 3: the cloth keeps 2 of 3 laid folds",
		"Folds laid 1: the cloth keeps 1 of 1 laid fold,"}},
	{"sweep", []string{"size=8:14:2"}, nil, 20, []string{"What size does", "size 8", "size 14",
		"drafted anew, extension is what each dart gives"}},
	{"sweep", []string{"edge-depth=4cm:10cm:2cm"}, nil, 20, []string{"Taken up at either cowl point", "1.0 cm at 4 cm",
		"10 cm", "Laid folds kept: 2 of 2 at 4 cm"}},
	{"sweep", []string{"folds=0,2"}, []string{"polyester-twill", "wool-tropical"}, 20,
		[]string{"Folds laid 0: the cloth is let fall", "Laid folds kept, mean"}},
	{"sweep", []string{"extension=0cm:14cm:2cm"}, nil, 40, []string{"every step is clear", "V, edge alone",
		"hanging curve", "8 cm", "higher than the hanging curve"}},
	{"sweep", []string{"grain=0:90:45", "weight=100gsm,200gsm"}, nil, 30,
		[]string{"end to end: no clear difference", "weight 200 g/m²", "No effect of grain may be claimed"}},
	{"sweep", []string{"extension=2cm:6cm:2cm"}, []string{"polyester-twill", "wool-tropical"}, 30,
		[]string{"In wool-tropical"}},
	{"sure", nil, nil, 5 + 5 + 10*2*5, []string{"hands and cloth", "weight", "± 10 % assumed",
		"Of 2 laid folds the cloth keeps all with 5 of 5 hands; with 5 of 5", "as many as the draft asks for, else two"}},
	{"teach", nil, nil, 25, []string{"true bias", "Questions", "Answers", "22.5°", "Nothing may be claimed",
		"No effect of grain may be claimed", "which lay 2 folds"}},
}

// Every verb leaves the whole folder; the same again hangs nothing and gives
// the same bytes.
func TestStudies(t *testing.T) {
	for _, q := range asks {
		dir := t.TempDir()
		spec := asked(t, q.verb, 5, q.vary, q.fabrics...)
		var first []byte
		for round, want := range []int{q.drapes, 0} {
			var calls atomic.Int32
			w, out, errs := faked(dir, rows.Part{}, &calls)
			if err := w.study(t.Context(), spec); err != nil {
				t.Fatalf("%s: %v, %s", q.verb, err, errs)
			}
			if int(calls.Load()) != want || errs.Len() > 0 || !strings.Contains(out.String(), "Wrote to") {
				t.Errorf("%s %v, round %d: %d drapes, said %q, %q; want %d", q.verb, q.vary, round, calls.Load(), out, errs, want)
			}
			sheet, err := os.ReadFile(filepath.Join(dir, "index.html"))
			if err != nil {
				t.Fatal(err)
			}
			if round > 0 && !bytes.Equal(sheet, first) {
				t.Errorf("%s: the resumed study gives another sheet", q.verb)
			}
			first = sheet
		}
		readback.WellFormed(t, first)
		for _, s := range append(q.says, say.Caution) {
			if !bytes.Contains(first, []byte(s)) {
				t.Errorf("%s %v: the sheet lacks %q", q.verb, q.vary, s)
			}
		}
		checkFolder(t, dir, spec)
	}
}

// A row that cannot be cut, one that fails and one that does not settle are
// marked and left out; the rest goes on.
func TestBadRows(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	w, out, errs := faked(dir, rows.Part{}, &calls)
	good := w.hang
	w.hang = func(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
		made, err := good(ctx, c, k)
		switch {
		case c.Values[0] == 5 && k == 1:
			return made, errors.New("the cloth tore")
		case c.Values[0] == 10 && k == 0:
			made.Value.Outcome.Status, made.Value.Outcome.EdgeDrop = sim.StepLimit, 9.999
		}
		return made, err
	}
	var code console.Silent
	err := w.study(t.Context(), asked(t, "sweep", 4, []string{"extension=5cm,10cm,39cm"}))
	if !errors.As(err, &code) || code.Code != console.ExitNotSettled || !strings.Contains(errs.String(),
		"6 drapes gave no result") {
		t.Errorf("study with bad rows: %v, %s", err, errs)
	}
	if !strings.Contains(out.String(), "6 drapes gave no result and are left out") {
		t.Errorf("findings %q", out)
	}
	list := readback.Table(t, filepath.Join(dir, "table.csv"))
	for i, want := range []struct{ n, why string }{{"1", "the cloth tore"}, {"1", "step-limit"}, {"4", "cannot be cut"}} {
		if list[i]["without_result"] != want.n || !strings.Contains(list[i]["why"], want.why) {
			t.Errorf("row %d: %q without a result, %q, want %v", i, list[i]["without_result"], list[i]["why"], want)
		}
	}
	if v, _ := strconv.ParseFloat(list[1]["edge_drop_mm_mean"], 64); !(v > 50 && v < 200) ||
		list[2]["edge_drop_mm_mean"] != "" {
		t.Errorf("means %q and %q hold drapes that gave no result", list[1]["edge_drop_mm_mean"],
			list[2]["edge_drop_mm_mean"])
	}
	sheet, _ := os.ReadFile(filepath.Join(dir, "index.html"))
	readback.WellFormed(t, sheet)
	if !bytes.Contains(sheet, []byte("†")) {
		t.Error("the sheet does not mark the rows")
	}
}

// A study in the folder of another leaves nothing of it but rows.
func TestStudyReplaces(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	for _, vary := range []string{"extension=2cm:10cm:2cm", "extension=4cm,6cm"} {
		w, _, _ := faked(dir, rows.Part{}, &calls)
		if err := w.study(t.Context(), asked(t, "sweep", 3, []string{vary})); err != nil {
			t.Fatal(err)
		}
	}
	if calls.Load() != 15 {
		t.Errorf("%d drapes, want the 15 of the first study alone", calls.Load())
	}
	var names []string
	for _, d := range []string{"pictures", "styles"} {
		files, _ := os.ReadDir(filepath.Join(dir, d))
		for _, f := range files {
			names = append(names, f.Name())
		}
	}
	if want := []string{"01-4-cm.jpg", "02-6-cm.jpg", "01-4-cm.yaml", "02-6-cm.yaml"}; !slices.Equal(names, want) {
		t.Errorf("left %v, want %v", names, want)
	}
}

// Called off, a study says what is kept and leaves no sheet.
func TestStudyCancelled(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	w, _, errs := faked(dir, rows.Part{}, &calls)
	ctx, cancel := context.WithCancel(t.Context())
	good := w.hang
	w.hang = func(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
		if calls.Load() == 4 {
			cancel()
		}
		return good(ctx, c, k)
	}
	var code console.Silent
	err := w.study(ctx, asked(t, "sweep", 3, []string{"extension=2cm:10cm:2cm"}))
	if !errors.As(err, &code) || code.Code != console.ExitCancelled || !strings.Contains(errs.String(),
		"the same command goes on") {
		t.Errorf("called off: %v, %q", err, errs)
	}
	if _, err := os.Stat(filepath.Join(dir, "index.html")); err == nil {
		t.Error("a study called off left a sheet")
	}
}

// A study that this machine has not the memory for is refused before it is hung.
func TestStudyTooLarge(t *testing.T) {
	real := memory.Free
	defer func() { memory.Free = real }()
	var calls atomic.Int32
	w, _, _ := faked(t.TempDir(), rows.Part{}, &calls)
	memory.Free = func() float64 { return 100e6 }
	if err := w.study(t.Context(), asked(t, "sweep", 2, []string{"extension=4cm,8cm"})); err == nil ||
		!strings.Contains(err.Error(), "--jobs") || calls.Load() > 0 {
		t.Errorf("a study beyond the memory: %v, %d drapes, want it refused", err, calls.Load())
	}
}
