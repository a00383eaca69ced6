package main

import (
	"bytes"
	"strings"
	"testing"

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
