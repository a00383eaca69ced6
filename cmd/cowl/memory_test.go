package main

import (
	"math"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// The demo has 3916 points on 8 mm and 26,356 on 3 mm, and took 56 and 218 MB
// (DEVELOPERS.md, cowl bench): the estimate is no less, and not three times as much.
func TestMemoryOf(t *testing.T) {
	h := &hung{madeOf: madeOf{style: mustDemo(t)}}
	var err error
	if h.piece, err = h.style.Piece(); err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct{ spacing, points, memory float64 }{{0.012, 1808, 37e6}, {0.008, 3916, 56e6}, {0.005, 9681, 122e6}, {0.003, 26356, 218e6}} {
		points := pointsOf(h.piece, q.spacing)
		if math.Abs(points/q.points-1) > 0.15 {
			t.Errorf("pointsOf on %g m = %.0f, want %.0f ± 15 %%", q.spacing, points, q.points)
		}
		if got := memoryOf(points, 1, 2); got < q.memory || got > 3*q.memory {
			t.Errorf("memoryOf on %g m = %.0f MB, want %.0f to three times that", q.spacing, got/1e6, q.memory/1e6)
		}
	}
}

// What this machine has not the memory for is refused before it is hung.
func TestMemoryRefused(t *testing.T) {
	real := freeMemory
	defer func() { freeMemory = real }()
	if v := real(); !(v > 1e7 && v < 1e14) {
		t.Errorf("freeMemory() = %g, want some memory", v)
	}
	freeMemory = func() float64 { return 300e6 }
	fine := write(t, "fine.yaml", "hang: {spacing_mm: 2}\n")
	for _, line := range []string{
		"drape --spacing 2mm", "drape --placings 99 --folds 1", "true --spacing 2mm", "view " + fine,
		"lab bend --length 50cm --width 20cm --spacing 0.3mm", "lab pull --length 1m --width 50cm --spacing 0.5mm", "lab hang --width 3m --spacing 7.5mm",
		"lab disc --specimen 60cm --disc 20cm --spacing 1mm", "lab swag --width 2m --spacing 2mm", "lab loop --length 50cm --width 20cm --spacing 0.3mm",
	} {
		args := strings.Fields(line)
		got := call(t.Context(), append(args, "--out", t.TempDir())...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, "GB of memory, want at most 0.2 GB") || !strings.Contains(got.err, "spacing") {
			t.Errorf("cowl %v = %d, %q, want %d and the memory", args, got.code, got.err, console.ExitBadInput)
		}
	}
	if got := call(t.Context(), "lab", "bend", "--spacing", "0.01mm"); got.code != console.ExitBadInput || strings.Contains(got.err, "memory") {
		t.Errorf("cowl lab bend --spacing 0.01mm = %d, %q, want its range", got.code, got.err)
	}
}
