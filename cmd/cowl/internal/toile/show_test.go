package toile

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/study/readback"
	"cowl/materials"
	spoken "cowl/mesh/ruler"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// madeUp stands in for the physics: no cloth does this. The edge drops 15 cm, 2 cm less a
// fold of the logarithm of the bending (of 1 µN·m), 1 mm either way by the hand; two folds
// lie 5 and 15 cm down, the first as deep as the loop of bending friction says.
func madeUp(_ context.Context, list []study.Hanging) ([]study.Hung, error) {
	var out []study.Hung
	for i, h := range list {
		var one study.Hung
		for k := range h.Style.Hang.Placings {
			hand := rand.New(rand.NewPCG(uint64(i), uint64(k)))
			o := madeUpOutcome(h.Style.Fabric, hand)
			o.Laid = h.Style.Hang.Folds
			o.Kept = min(o.Laid, 2)
			one.Each = append(one.Each, &o)
		}
		one.Missing = "made up"
		out = append(out, one)
	}
	return out, nil
}

func madeUpOutcome(f materials.Fabric, hand *rand.Rand) drape.Outcome {
	x := math.Log(f.BendWarp * 1e6)
	o := drape.Outcome{Status: sim.Settled, EdgeDrop: 0.15 - 0.02*x + 0.001*hand.NormFloat64(), Forward: 0.05 + 0.03*x +
		0.001*hand.NormFloat64()}
	for k, depth := range []float64{0.03 + 600*f.BendFriction, 0.02} {
		o.Folds = append(o.Folds, drape.Fold{Kept: true, Fold: fold.Fold{Depth: depth + 0.001*hand.NormFloat64(), CF: 0.05 +
			0.10*float64(k), Zone: fold.AboveBust}})
	}
	return o
}

// Folds of a prediction are matched with those of the toile in their order, by place.
func TestAlongside(t *testing.T) {
	at := func(cm ...float64) (out []Fold) {
		for _, v := range cm {
			out = append(out, Fold{Depth: v / 1000, At: v / 100})
		}
		return out
	}
	none := math.NaN()
	for _, q := range []struct {
		toile, predicted []Fold
		want             []float64 // cm
	}{
		{at(5, 15), at(4, 16), []float64{4, 16}},
		{at(14), at(5, 15, 22), []float64{15}},
		{at(5, 10, 15), at(6, 14), []float64{6, none, 14}},
		{at(5, 15), nil, []float64{none, none}},
		{nil, at(5), nil},
		{[]Fold{{0.04, none}}, at(5, 15), []float64{5}},
		{[]Fold{{0.04, none}, {0.03, none}}, at(5, 15, 20), []float64{5, 15}},
	} {
		var got []float64
		for _, f := range alongside(q.toile, q.predicted) {
			got = append(got, f.At*100)
		}
		if d := cmp.Diff(q.want, got, cmpopts.EquateNaNs(), cmpopts.EquateApprox(0, 1e-9)); d != "" {
			t.Errorf("alongside(%v, %v): %s", q.toile, q.predicted, d)
		}
	}
}

// Bias is the mean of prediction less toile and spread their deviation, worked out by hand.
func TestAgreement(t *testing.T) {
	one := func(toile float64, hands ...float64) held {
		h := held{Toile: Toile{Reading: nothing()}}
		h.Drop = toile
		for _, v := range hands {
			r := nothing()
			r.Drop = v
			h.hands = append(h.hands, r)
		}
		return h
	}
	all := []held{one(0.12, 0.13, 0.15), one(0.10, 0.11), one(0.11), one(math.NaN(), 0.1), one(0.14, 0.14, math.NaN())}
	a := agreements(all)[Drop]
	// 2, 1 and 0 cm: mean 1, deviation 1
	if len(a.each) != 3 || math.Abs(a.bias-0.01) > 1e-12 || math.Abs(a.spread-0.01) > 1e-12 {
		t.Errorf("agreement = %+v, want 1 ± 1 cm of 3", a)
	}
	few, many := make([]float64, 4), make([]float64, 5)
	for want, a := range map[string]agreement{
		"": {},
		"In your last 1 toile the drop came out 2.0 cm deeper than cowl toile show predicts; so few say little.": {
			each: []float64{-0.02}, bias: -0.02,
		},
		"In your last 5 toiles the drop came out 1.2 ± 0.3 cm less deep than cowl toile show predicts.": {
			each: many, bias: 0.012, spread: 0.003,
		},
		"In your last 4 toiles the drop came out 1.2 ± 0.3 cm deeper than cowl toile show predicts; so few say little.": {
			each: few, bias: -0.012, spread: 0.003,
		},
	} {
		if got := sentence(a); got != want {
			t.Errorf("sentence = %q, want %q", got, want)
		}
	}
}

// book enters toiles of polyester-twill with these drops and returns the book.
func bookOf(t *testing.T, drops ...string) string {
	t.Helper()
	s, path := styleFile(t, "polyester-twill"), filepath.Join(t.TempDir(), "toiles.csv")
	for _, d := range drops {
		if _, _, err := Add(path, entered(s, d)); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

// The sheet of made-up predictions: whole, with the bias that was put in, and the same
// again.
func TestShow(t *testing.T) {
	path, dir := bookOf(t, "12cm", "13cm"), t.TempDir()
	var out, warn bytes.Buffer
	c := console.Console{Out: &out, Err: &warn}
	if err := Show(t.Context(), Options{Book: path, hang: madeUp}, c, 3, dir); err != nil {
		t.Fatal(err, warn.String())
	}
	page, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	readback.WellFormed(t, page)
	var got resultJSON
	data, _ := os.ReadFile(filepath.Join(dir, "result.json"))
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	// ln 1.95 is 0.6678: the drop of the cloth as it is known is 136.6 mm, of the toiles 125 in the mean
	drop := got.Figures[Drop]
	if drop.N != 2 || math.Abs(*drop.Bias-11.6) > 2 || math.Abs(*drop.Spread-7.07) > 2 || got.Figures[Depth].N != 4 ||
		*got.Figures[Kept].Bias != 0 {
		t.Errorf("result.json says of drops %d, %v ± %v mm", drop.N, *drop.Bias, *drop.Spread)
	}
	rows := readback.Table(t, filepath.Join(dir, "table.csv"))
	if len(rows) != 2 || rows[0]["edge_drop_mm_toile"] != "120" || rows[1]["edge_drop_mm_toile"] != "130" ||
		rows[0]["fold2_cf_mm_toile"] != "150" || rows[0]["forward_mm_toile"] != "" || rows[0]["forward_mm_mean"] == "" {
		t.Errorf("table.csv = %v", rows)
	}
	for _, want := range []string{"Edge drop: predicted 1.", "mean of 2", "mean little", "A prediction is not a toile"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("said %q, want %q in it", out.String(), want)
		}
	}
	var again bytes.Buffer
	if err := Show(t.Context(), Options{Book: path, hang: madeUp, JSON: true}, console.Console{Out: &again, Err: &warn},
		3, dir); err != nil || again.String() != string(data) {
		t.Errorf("--json printed %q, %v, want result.json", again.String(), err)
	}
}

// A toile whose drape gave no result is marked, and a book that is not there is told.
func TestShowWithout(t *testing.T) {
	path, dir := bookOf(t, "12cm"), t.TempDir()
	failed := func(context.Context, []study.Hanging) ([]study.Hung, error) {
		return []study.Hung{{Each: make([]*drape.Outcome, 1), Why: "failed: made up"}}, nil
	}
	var out, warn bytes.Buffer
	err := Show(t.Context(), Options{Book: path, hang: failed}, console.Console{Out: &out, Err: &warn}, 1, dir)
	var silent console.Silent
	if !errors.As(err, &silent) || silent.Code != console.ExitNotSettled ||
		!strings.Contains(out.String(), "1 of 1 drapes gave no result (failed: made up)") {
		t.Errorf("Show = %v, said %q", err, out.String())
	}
	page, _ := os.ReadFile(filepath.Join(dir, "index.html"))
	readback.WellFormed(t, page)
	if err := Show(t.Context(), Options{Book: filepath.Join(dir, "none.csv")}, console.Console{}, 1, dir); err == nil ||
		!strings.Contains(err.Error(), "cowl toile add") {
		t.Errorf("Show of no book = %v", err)
	}
}

// Nothing is said without a book or a stored prediction; a book that cannot be read is an
// error.
func TestSaidNothing(t *testing.T) {
	path := bookOf(t, "12cm")
	for _, p := range []string{path, filepath.Join(t.TempDir(), "none.csv")} {
		if text, err := Said(p); text != "" || err != nil {
			t.Errorf("Said(%s) = %q, %v, want nothing", p, text, err)
		}
	}
	if _, err := os.Stat(filepath.Join(filepath.Dir(path), "toiles", "rows")); !os.IsNotExist(err) {
		t.Errorf("something was hung or written: %v", err)
	}
	if err := os.WriteFile(path, []byte("key\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Said(path); err == nil {
		t.Error("Said of a book without columns = nil, want an error")
	}
}

// In inches what toiles have taught is said in inches too: 25.4 mm each (NIST SP 811).
func TestSaidInches(t *testing.T) {
	spoken.Speak(spoken.Inches)
	defer spoken.Speak(spoken.Centimetres)
	a := agreement{kind: Drop, each: []float64{0.0254, 0.0254, 0.0254}, bias: 0.0254, spread: 0.00635}
	for what, q := range map[string][2]string{
		"sentence": {sentence(a), "1.00 ± 0.25 in less deep"},
		"finding":  {a.finding(), "predicted 1.00 in more than"},
		"figure":   {Reach.said(-0.0508), "−2.00"},
		"folds":    {Kept.said(2), "2"},
	} {
		if !strings.Contains(q[0], q[1]) {
			t.Errorf("%s = %q, want %q in it", what, q[0], q[1])
		}
	}
}
