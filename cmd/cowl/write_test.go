package main

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// Where one file cannot be put in place no half-written one and no temporary
// one stays, and no new folder.
func TestSaveFails(t *testing.T) {
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "b", "full"), 0o755); err != nil { // a folder where a file is to go
		t.Fatal(err)
	}
	err := save(dir, []output{{"a/x", nil}, {"b", nil}})
	if !errors.Is(err, errCannotSave) {
		t.Errorf("save over a folder = %v, want errCannotSave", err)
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("save left %v, want the folder that was there", files)
	}
	if err := save(filepath.Join(dir, "new", "deep"), []output{{"no/such", nil}}); err == nil {
		t.Error("save into a missing folder = nil, want an error")
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("save left %v, want no new folder", files)
	}
}

func TestSaveReplaces(t *testing.T) {
	dir := t.TempDir()
	for _, text := range []string{"old and long", "new"} {
		if err := save(dir, []output{{"x", []byte(text)}}); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(filepath.Join(dir, "x")); err != nil || string(got) != text {
			t.Errorf("save(%q) left %q, %v", text, got, err)
		}
	}
}

func TestWritableLeavesNoTrace(t *testing.T) {
	dir := t.TempDir()
	if err := writable(filepath.Join(dir, "a", "b")); err != nil || !isEmpty(t, dir) {
		t.Errorf("writable = %v, want nil and no trace", err)
	}
}

func TestJoined(t *testing.T) {
	for _, q := range []struct{ args, want []string }{
		{[]string{"drape", "--grain", "-45"}, []string{"drape", "--grain=-45"}},
		{[]string{"--grain=3", "-4"}, []string{"--grain=3", "-4"}},
		{[]string{"--json", "-q"}, []string{"--json", "-q"}},
		{[]string{"-1"}, []string{"-1"}},
	} {
		if got := joined(q.args); !slices.Equal(got, q.want) {
			t.Errorf("joined(%q) = %q, want %q", q.args, got, q.want)
		}
	}
}
