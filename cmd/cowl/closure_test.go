package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// A closure of the style file draws what the flag draws, is written with the style and read
// back, and a flag goes before it. A style without one is written as before there were any.
func TestClosureInStyle(t *testing.T) {
	plain := string(demo)
	closed := write(t, "closed.yaml", strings.Replace(plain, "cut:\n", "cut:\n  closure: side\n", 1))
	drawn := func(args ...string) []byte {
		t.Helper()
		dir := t.TempDir()
		got := call(t.Context(), append([]string{"draft", "--quiet", "--out", dir}, args...)...)
		if got.code != console.ExitOK {
			t.Fatalf("cowl draft %v = %d, %s", args, got.code, got.err)
		}
		b, err := os.ReadFile(filepath.Join(dir, "draft.svg"))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	file, flag, none, over := drawn("--style", closed), drawn("--closure", "side"), drawn(),
		drawn("--style", closed, "--closure", "none")
	if !bytes.Equal(file, flag) || !bytes.Contains(file, []byte("opening, stop")) {
		t.Errorf("closure: side in the file draws another pattern than --closure side, or no stop")
	}
	if bytes.Equal(file, none) || !bytes.Equal(over, none) {
		t.Errorf("--closure none over closure: side draws another pattern than a style without one")
	}
	s, err := style.FromFile(closed)
	if err != nil {
		t.Fatal(err)
	}
	again, err := style.Parse("again", s.YAML())
	if err != nil || s.Closure != draft.SideZip || again.Closure != draft.SideZip {
		t.Errorf("closure %v, written and read %v, %v, want side", s.Closure, again.Closure, err)
	}
	if s.Closure = draft.NoClosure; strings.Contains(string(s.YAML()), "closure") {
		t.Errorf("a style without a closure is written with one:\n%s", s.YAML())
	}
}

// A closure that does not go into the style, and a word that is none, are refused with the
// line or the flag they came from.
func TestClosureRefused(t *testing.T) {
	for _, q := range []struct {
		key, says string
		flags     []string
	}{
		{"closure: zip", "want none, side, shoulder or back", nil},
		{"closure: shoulder\n  pleats: 2", "bad.yaml:11: ", nil},
		{"pleats: 0", "--closure back: no back is drafted", []string{"--closure", "back"}},
		{"pleats: 0", "want none, side, shoulder or back", []string{"--closure", "zip"}},
	} {
		text := strings.Replace(string(demo), "  cowl_point_cm: 4 ", "  # ", 1)
		bad := write(t, "bad.yaml", strings.Replace(text, "cut:\n", "cut:\n  "+q.key+"\n", 1))
		got := call(t.Context(), append([]string{"draft", "--style", bad, "--out", t.TempDir()}, q.flags...)...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, q.says) {
			t.Errorf("%s, %v = %d, %q, want a refusal that says %q", q.key, q.flags, got.code, got.err, q.says)
		}
	}
}
