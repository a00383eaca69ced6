package study

import (
	"os"
	"path/filepath"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
)

// A study.json that names files which no study has written has none of them removed.
func TestStudyRemovesNothingElse(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	w, _, _ := faked(dir, rows.Part{}, &calls)
	if err := w.study(t.Context(), asked(t, "sweep", 1, []string{"extension=4cm,8cm"})); err != nil {
		t.Fatal(err)
	}
	own := map[string]string{"thesis.txt": "mine", "styles/my-own.yaml": "mine", "pictures/09-holiday.jpg": "mine",
		"../thesis.txt": "mine"}
	a, _, err := readSpec(dir)
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range own {
		os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644)
		a.Written[name] = checksum([]byte(text))
	}
	a.Written["pictures/09-holiday.jpg"] = checksum([]byte("ours"))
	text, _ := console.JSON(a)
	if err := os.WriteFile(filepath.Join(dir, specFile), text, 0o644); err != nil {
		t.Fatal(err)
	}
	w, _, _ = faked(dir, rows.Part{}, &calls)
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
