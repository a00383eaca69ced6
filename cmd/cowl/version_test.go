package main

import (
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// The notices name what is linked in, with the copyright of each.
func TestLicences(t *testing.T) {
	got := call(t.Context(), "version", "--licences")
	for _, part := range []string{"\ngo go1.", "The Go Authors", "github.com/goccy/go-yaml", "gonum.org/v1/gonum",
		"codeberg.org/go-pdf/fpdf", "Bigelow & Holmes", "github.com/go-gl/glfw"} {
		if got.code != console.ExitOK || !strings.Contains(got.out, part) {
			t.Errorf("cowl version --licences = %d, lacks %q", got.code, part)
		}
	}
	if plain := call(t.Context(), "version"); strings.Count(plain.out, "\n") != 1 {
		t.Errorf("cowl version = %q, want a line", plain.out)
	}
}
