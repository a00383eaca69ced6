//go:build unix

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

// fileFlags are the ways to name a file; PATH stands for it.
var fileFlags = []string{
	"draft --style PATH", "drape --fabric-file PATH", "swatch --sheet PATH",
	"draft --chart PATH", "draft --block PATH", "draft --piece PATH", "lay --style PATH",
	"compare --fabrics polyester-twill,PATH",
}

// A pipe, a folder, a device and a file that is too large are refused at once and
// by their kind, whatever is to read them.
func TestNoFiles(t *testing.T) {
	dir := t.TempDir()
	pipe, large := filepath.Join(dir, "pipe.dxf"), filepath.Join(dir, "large.dxf")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(large, []byte(strings.Repeat("a: 1\n", 2<<20)), 0o600); err != nil {
		t.Fatal(err)
	}
	study := filepath.Join(dir, "study")
	if err := os.MkdirAll(filepath.Join(study, "study.json"), 0o700); err != nil {
		t.Fatal(err)
	}
	expect := func(says string, args ...string) {
		t.Helper()
		start := time.Now()
		got := call(t.Context(), append(args, "--out", filepath.Join(dir, "out"))...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, says) || len(got.err) > 1000 {
			t.Errorf("cowl %v = %d, %.300q, want %d and %q, in short", args, got.code, got.err, console.ExitBadInput, says)
		}
		if took := time.Since(start); took > time.Second {
			t.Errorf("cowl %v took %v, want 1 s or less", args, took)
		}
	}
	for _, r := range fileFlags {
		for path, says := range map[string]string{pipe: pipe + " is a pipe", dir: dir + " is a folder",
			"/dev/zero": "/dev/zero is a device", large: "larger than"} {
			expect(says, strings.Fields(strings.ReplaceAll(r, "PATH", path))...)
		}
	}
	expect("study.json is a folder", "gather", study)
	for _, text := range []string{"fabric: {file: PATH}\n", "block: {file: PATH, unit: mm}\n",
		"piece: {file: PATH, unit: mm}\n"} {
		path := write(t, "s.yaml", strings.ReplaceAll(text, "PATH", pipe))
		expect(path+":1: ", "draft", "--style", path)
		expect("is a pipe", "draft", "--style", path)
	}
}

// However much is wrong with a file, 20 things are told of, in short.
func TestManyMistakes(t *testing.T) {
	var keys strings.Builder
	for i := range 900 {
		fmt.Fprintf(&keys, "key_%d: 1\n", i)
	}
	points := "block:\n" + strings.Repeat("  - {name: "+strings.Repeat("é", 150)+", x_cm: 1, y_cm: "+"[1]}\n", 2000)
	for _, q := range []struct{ verb, flag, text, more string }{
		{"draft", "--style", keys.String(), "880 more mistakes"},
		{"draft", "--chart", "sizes: [1]\n" + keys.String(), "880 more mistakes"},
		{"drape", "--fabric-file", keys.String(), "more mistakes"},
		{"swatch", "--sheet", keys.String(), "880 more mistakes"}, {"draft", "--style", points, "3980 more mistakes"},
		{"draft", "--style", "name: \"" + strings.Repeat("x", 1<<19), ""}, {"draft", "--style", strings.Repeat("é", 1<<19) +
			": 1", ""},
		{"draft", "--style", "fabric: " + strings.Repeat("wool_", 1<<16), "letters, want at most"},
		{"draft", "--style", "cut: {how: " + strings.Repeat("w", 900) + "}", ""},
	} {
		got := call(t.Context(), q.verb, q.flag, write(t, "f.yaml", q.text), "--out", t.TempDir())
		if got.code != console.ExitBadInput || len(got.err) > 20000 || !strings.Contains(got.err, q.more) {
			t.Errorf("cowl %s %s = %d, %d letters: %.400s, want %d, 20000 at most and %q", q.verb, q.flag, got.code,
				len(got.err), got.err, console.ExitBadInput, q.more)
		}
		for line := range strings.Lines(got.err) {
			if len([]rune(line)) > 900 {
				t.Errorf("cowl %s %s says a line of %d letters: %.200s", q.verb, q.flag, len([]rune(line)), line)
			}
		}
	}
}
