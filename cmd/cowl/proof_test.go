package main

import (
	"bytes"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/sim/proof"
)

// The table shows misses as misses, with why, and counts them.
func TestProofTable(t *testing.T) {
	rows := []proof.Check{
		{Name: "strip", Got: 2, Want: 2, Tolerance: 0.1, Unit: "mm", Source: "a book", Pass: true},
		{Name: "sheet", Got: 3, Want: 2, Tolerance: 0.1, Source: "a paper", Note: "it bellies"},
	}
	for name, print := range map[string]func() string{
		"table":    func() string { var b bytes.Buffer; proofTable(&b, rows); return b.String() },
		"markdown": func() string { var b bytes.Buffer; markdown(&b, rows); return b.String() },
	} {
		got := print()
		for _, want := range []string{"strip", "2 mm", "± 0.1 mm", "a book", "pass", "sheet", "MISS", "1 of 2 pass"} {
			if !strings.Contains(got, want) {
				t.Errorf("%s = %q, want %q in it", name, got, want)
			}
		}
	}
	var b bytes.Buffer
	if proofTable(&b, rows); !strings.Contains(b.String(), "sheet: it bellies") {
		t.Errorf("table = %q, want the reason of the miss", b.String())
	}
}

// --only runs the checks that have the word in their name and no others,
// whatever is printed; a word that none has is refused, with all names.
func TestProofOnly(t *testing.T) {
	for _, how := range []string{"-q", "--markdown", "--json"} {
		got := call(t.Context(), "proof", "--only", "HALF edge", how)
		if got.code != console.ExitOK || !strings.Contains(got.out, "half edge for a drop of 16 cm") {
			t.Errorf("cowl proof --only \"HALF edge\" %s = %d, %q, %q, want the row of the half edge", how, got.code, got.out,
				got.err)
		}
		if strings.Contains(got.out, "bust girth") {
			t.Errorf("cowl proof --only \"HALF edge\" %s = %q, want no other row", how, got.out)
		}
	}
	all := proof.All()
	got := call(t.Context(), "proof", "--only", "teapot")
	if got.code != console.ExitBadInput || got.out != "" {
		t.Errorf("cowl proof --only teapot = %d, %q, want it refused", got.code, got.out)
	}
	for _, c := range all {
		if !strings.Contains(got.err, c.Name) {
			t.Errorf("cowl proof --only teapot does not list %q", c.Name)
		}
	}
	if every, err := only(all, ""); err != nil || len(every) != len(all) {
		t.Errorf("only(all, \"\") = %d trials, %v, want all %d", len(every), err, len(all))
	}
}
