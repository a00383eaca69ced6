package main

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

// Every count has bounds: 0 and -1 are refused where there is no none, and so is
// more than can be meant, at once.
func TestCounts(t *testing.T) {
	n := 0
	for flag, bounds := range map[string]string{
		"compare --fabrics polyester-twill,wool-tropical --jobs": "1–256", "sweep --vary folds=1,2 --jobs": "1–256",
		"sweep --vary folds=1,2 --placings": "1–99",
		"seek --want folds,2 --placings":    "1–99", "seek --want folds,2 --jobs": "1–256", "teach grain --placings": "1–99",
		"sure --placings":     "3–99",
		"lab disc --placings": "1–48", "lab hang --placings": "1–12", "lab swag --pleats": "1–8",
		"drape --placings": "1–99",
	} {
		for _, v := range []string{"0", "-1", "1000", "1000000000", "99999999999999999999"} {
			n++
			start := time.Now()
			args := append(strings.Fields(flag), v, "--out", filepath.Join(t.TempDir(), "out"))
			got := call(t.Context(), args...)
			name := args[len(args)-4]
			if got.code != console.ExitBadInput || !strings.Contains(got.err, name) || !strings.Contains(got.err, bounds) &&
				flag != "drape --placings" {
				t.Errorf("cowl %v = %d, %q, want %d, %s and %s", args, got.code, got.err, console.ExitBadInput, name, bounds)
			}
			if took := time.Since(start); took > time.Second {
				t.Errorf("cowl %v took %v, want 1 s or less", args, took)
			}
		}
	}
	for _, part := range []string{"0/1", "-1/4", "1/0", "1/-1", "1/1001", "1/99999999999999999999"} {
		n++
		got := call(t.Context(), "sweep", "--vary", "folds=1,2", "--part", part, "--out", filepath.Join(t.TempDir(), "out"))
		if got.code != console.ExitBadInput || !strings.Contains(got.err, "--part") ||
			!strings.Contains(got.err, "up to 1000") {
			t.Errorf("cowl sweep --part %s = %d, %q, want %d and the bounds", part, got.code, got.err, console.ExitBadInput)
		}
	}
	if n < 60 {
		t.Errorf("%d counts tried, want 60 or more", n)
	}
}

// A sweep that comes to more lines than a chart holds is refused before anything is cut.
func TestSweepTooLarge(t *testing.T) {
	start := time.Now()
	got := call(t.Context(), strings.Fields("sweep --vary extension=0cm:5.9cm:0.1cm --vary facing=1cm:6.9cm:0.1cm "+
		"--vary grain=0:59:1 --out "+t.TempDir())...)
	if took := time.Since(start); got.code != console.ExitBadInput || !strings.Contains(got.err,
		"3600 lines in one chart") || took > time.Second {
		t.Errorf("a sweep of 216,000 cuts = %d, %q in %v, want %d within a second", got.code, got.err, took,
			console.ExitBadInput)
	}
}
