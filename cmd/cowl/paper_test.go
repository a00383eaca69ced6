package main

import (
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// What paper shows other than it usually does is told: lines of the draft where trued ones
// miss a trim, on every verb that draws them. An allowance is called so.
func TestPaperTold(t *testing.T) {
	trim := write(t, "trim.yaml", "name: x\ntrims:\n  - line_mm: [[175, -432], [170, -428.9], [155, -428], [145, -430]]\n")
	for _, q := range []struct{ args, says string }{
		{"draft --style " + trim, "the paper shows the lines of the draft, not trued over the seams: "},
		{"lay --no-back --style " + trim, "the paper shows the lines of the draft"},
	} {
		got := call(t.Context(), append(strings.Fields(q.args), "--quiet", "--out", t.TempDir())...)
		if got.code != console.ExitOK || !strings.Contains(got.err, q.says) {
			t.Errorf("cowl %s = %d, %q, want it done and %q", q.args, got.code, got.err, q.says)
		}
	}
	if got := call(t.Context(), "draft", "--quiet", "--out", t.TempDir()); got.err != "" {
		t.Errorf("cowl draft says %q, want nothing", got.err)
	}
	got := call(t.Context(), "draft", "--allowance", "30cm", "--out", t.TempDir())
	if got.code != console.ExitBadInput || !strings.Contains(got.err, "--allowance: allowance 30.0 cm, want 0.0–10.0 cm") {
		t.Errorf("cowl draft --allowance 30cm = %d, %q, want an allowance refused", got.code, got.err)
	}
}
