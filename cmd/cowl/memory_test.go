package main

import (
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/memory"
)

// What this machine has not the memory for is refused before it is hung.
func TestMemoryRefused(t *testing.T) {
	real := memory.Free
	defer func() { memory.Free = real }()
	if v := real(); !(v > 1e7 && v < 1e14) {
		t.Errorf("Free() = %g, want some memory", v)
	}
	memory.Free = func() float64 { return 300e6 }
	fine := write(t, "fine.yaml", "hang: {spacing_mm: 2}\n")
	for _, line := range []string{
		"drape --spacing 2mm", "drape --placings 99 --folds 1", "true --spacing 2mm", "view " + fine,
		"lab bend --length 50cm --width 20cm --spacing 0.3mm", "lab pull --length 1m --width 50cm --spacing 0.5mm",
		"lab hang --width 3m --spacing 7.5mm",
		"lab disc --specimen 60cm --disc 20cm --spacing 1mm", "lab swag --width 2m --spacing 2mm",
		"lab loop --length 50cm --width 20cm --spacing 0.3mm",
	} {
		args := strings.Fields(line)
		got := call(t.Context(), append(args, "--out", t.TempDir())...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, "GB of memory, want at most 0.2 GB") ||
			!strings.Contains(got.err, "spacing") {
			t.Errorf("cowl %v = %d, %q, want %d and the memory", args, got.code, got.err, console.ExitBadInput)
		}
	}
	if got := call(t.Context(), "lab", "bend", "--spacing", "0.01mm"); got.code != console.ExitBadInput ||
		strings.Contains(got.err, "memory") {
		t.Errorf("cowl lab bend --spacing 0.01mm = %d, %q, want its range", got.code, got.err)
	}
}
