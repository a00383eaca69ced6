package flags

import (
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// grammar is a command line with all that the tables make.
type grammar struct {
	Cut    any    `embed:"" table:"cut weight"`
	Tests  any    `embed:"" table:"tests"`
	Width  Length `default:"1m"`
	Number *int   `type:"count" least:"1" most:"8"`
}

var tables = Tables{"tests": {
	Rows: []Row{{Name: "load", Holder: "N", Of: reflect.TypeFor[*float64]()},
		{Name: "words", Of: reflect.TypeFor[[]string]()}, {Name: "secret", Hidden: true, Of: reflect.TypeFor[[]string]()}},
	Read: func(flag, text string) (float64, error) {
		v, err := strconv.ParseFloat(strings.TrimSuffix(text, "kN"), 64)
		if flag != "load" {
			err = errors.New("read as " + flag)
		}
		return 1000 * v, err
	},
}}

// Flags of tables are read in SI, in the order of the tables, and what was not given is
// not there; those of the style set the style.
func TestTables(t *testing.T) {
	var g grammar
	p, err := NewParser(&g, tables)
	if err != nil {
		t.Fatal(err)
	}
	words := strings.Fields("--allowance 1in --cf-weight 8g --load 2kN --words a,b --width 30cm --number 3")
	if _, err := p.Parse(words); err != nil {
		t.Fatal(err)
	}
	got := map[string]any{}
	for _, table := range []any{g.Cut, g.Tests} {
		for name, v := range Given(table) {
			got[name] = v.Interface()
		}
	}
	want := map[string]any{"allowance": 0.0254, "cf-weight": 0.008, "load": 2000.0, "words": []string{"a", "b"}}
	if !reflect.DeepEqual(got, want) || g.Width != 0.3 || *g.Number != 3 {
		t.Errorf("read %v, width %g, number %d, want %v, 0.3 and 3", got, g.Width, *g.Number, want)
	}
	if IsGiven(g.Cut, "grain") || !IsGiven(g.Cut, "allowance") {
		t.Errorf("grain given %t, allowance %t, want the allowance alone", IsGiven(g.Cut, "grain"),
			IsGiven(g.Cut, "allowance"))
	}
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if err := SetFields(&s, g.Cut); err != nil || math.Abs(s.Cut.Trim-0.0254) > 1e-12 ||
		math.Abs(s.Stand.Weight-0.008) > 1e-12 {
		t.Errorf("SetFields: %v, allowance %g m, weight %g kg, want 0.0254 and 0.008", err, s.Cut.Trim, s.Stand.Weight)
	}
}

// What is refused says which flag, and what it is called now if it had another name.
func TestRefused(t *testing.T) {
	for args, says := range map[string]string{
		"--load many": "--load", "--width 3": "no unit", "--number 9": "1–8", "--number x": "whole number",
		"--trim 1cm": "--trim is now called --allowance", "--weight 8g": "--weight is now called --cf-weight",
		"--hem-line 3cm": "unknown flag --hem-line",
	} {
		p, err := NewParser(&grammar{}, tables)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := p.Parse(strings.Fields(args)); err == nil || !strings.Contains(Renamed(err).Error(), says) {
			t.Errorf("%s: %v, want %q", args, err, says)
		}
	}
	var other struct{ Height Length }
	p, err := NewParser(&other, nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.Parse([]string{"--trim", "1cm"}); err == nil || Renamed(err) != err {
		t.Errorf("--trim where there is no --allowance: %v, want what the parser says", err)
	}
}
