package console

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

// Where one file cannot be put in place no half-written one and no temporary
// one stays, and no new folder.
func TestSaveFails(t *testing.T) {
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "b", "full"), 0o755); err != nil { // a folder where a file is to go
		t.Fatal(err)
	}
	err := Save(dir, []File{{"a/x", nil}, {"b", nil}})
	if !errors.Is(err, ErrCannotSave) {
		t.Errorf("save over a folder = %v, want errCannotSave", err)
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("save left %v, want the folder that was there", files)
	}
	if err := Save(filepath.Join(dir, "new", "deep"), []File{{"in/it", nil}, {"../out", nil}}); err == nil {
		t.Error("save out of the folder = nil, want an error")
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("save left %v, want no new folder", files)
	}
}

func TestSaveReplaces(t *testing.T) {
	dir := t.TempDir()
	for _, text := range []string{"old and long", "new"} {
		if err := Save(dir, []File{{"x", []byte(text)}}); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(filepath.Join(dir, "x")); err != nil || string(got) != text {
			t.Errorf("save(%q) left %q, %v", text, got, err)
		}
	}
}

func TestWritableLeavesNoTrace(t *testing.T) {
	dir := t.TempDir()
	if err := Writable(filepath.Join(dir, "a", "b")); err != nil {
		t.Errorf("writable = %v, want nil", err)
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) > 0 {
		t.Errorf("writable left %v, %v, want no trace", left, err)
	}
}

// Where one file of a set cannot be put in place the others are as before.
func TestSaveAllOrNone(t *testing.T) {
	dir := t.TempDir()
	if err := errors.Join(os.WriteFile(filepath.Join(dir, "draft.pdf"), []byte("old"), 0o644),
		os.MkdirAll(filepath.Join(dir, "draft.dxf", "full"), 0o755)); err != nil {
		t.Fatal(err)
	}
	err := Save(dir, []File{{"draft.pdf", []byte("new")}, {"draft.dxf", []byte("new")}})
	if got, _ := os.ReadFile(filepath.Join(dir, "draft.pdf")); err == nil || string(got) != "old" {
		t.Errorf("save = %v, left the PDF %q, want an error and the old one", err, got)
	}
}
