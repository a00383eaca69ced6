package main

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/trial"
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
	if err := save(filepath.Join(dir, "new", "deep"), []output{{"in/it", nil}, {"../out", nil}}); err == nil {
		t.Error("save out of the folder = nil, want an error")
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

// Where one file of a set cannot be put in place the others are as before.
func TestSaveAllOrNone(t *testing.T) {
	dir := t.TempDir()
	if err := errors.Join(os.WriteFile(filepath.Join(dir, "draft.pdf"), []byte("old"), 0o644), os.MkdirAll(filepath.Join(dir, "draft.dxf", "full"), 0o755)); err != nil {
		t.Fatal(err)
	}
	err := save(dir, []output{{"draft.pdf", []byte("new")}, {"draft.dxf", []byte("new")}})
	if got, _ := os.ReadFile(filepath.Join(dir, "draft.pdf")); err == nil || string(got) != "old" {
		t.Errorf("save = %v, left the PDF %q, want an error and the old one", err, got)
	}
}

// A study.json that names files which no study has written has none of them removed.
func TestStudyRemovesNothingElse(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	w, _, _ := feigned(dir, trial.Part{}, &calls)
	if err := w.study(t.Context(), asked(t, "sweep", 1, []string{"extension=4cm,8cm"})); err != nil {
		t.Fatal(err)
	}
	own := map[string]string{"thesis.txt": "mine", "styles/my-own.yaml": "mine", "pictures/09-holiday.jpg": "mine", "../thesis.txt": "mine"}
	a, _, err := readAsk(dir)
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range own {
		os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644)
		a.Written[name] = checksum([]byte(text))
	}
	a.Written["pictures/09-holiday.jpg"] = checksum([]byte("ours"))
	text, _ := jsonOf(a)
	if err := os.WriteFile(filepath.Join(dir, askFile), text, 0o644); err != nil {
		t.Fatal(err)
	}
	w, _, _ = feigned(dir, trial.Part{}, &calls)
	if err := w.study(t.Context(), asked(t, "sweep", 1, []string{"extension=4cm,6cm"})); err != nil {
		t.Fatal(err)
	}
	for name := range own {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Errorf("%s was removed", name)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "styles/02-8-cm.yaml")); err == nil {
		t.Error("the style file of the study of before is left")
	}
}
