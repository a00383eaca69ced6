package study

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
)

// Three parts in folders of their own, gathered, give the sheet of the whole,
// byte for byte; with one part missing, the sheet says so and the exit status
// is 1.
func TestGather(t *testing.T) {
	spec := asked(t, "sweep", 3, []string{"extension=0cm:10cm:2cm"})
	whole := t.TempDir()
	var calls atomic.Int32
	w, _, _ := faked(whole, rows.Part{}, &calls)
	if err := w.study(t.Context(), spec); err != nil {
		t.Fatal(err)
	}
	var dirs []string
	calls.Store(0)
	for i := 1; i <= 3; i++ {
		dirs = append(dirs, t.TempDir())
		w, out, _ := faked(dirs[i-1], rows.Part{Number: i, Of: 3}, &calls)
		if err := w.study(t.Context(), spec); err != nil || !strings.Contains(out.String(), "cowl gather") {
			t.Fatalf("part %d: %v, said %q", i, err, out)
		}
		if _, err := os.Stat(filepath.Join(dirs[i-1], "index.html")); err == nil {
			t.Errorf("part %d made a sheet", i)
		}
	}
	if calls.Load() != 18 {
		t.Errorf("three parts hung %d drapes, want 18", calls.Load())
	}
	calls.Store(0)
	short, all := t.TempDir(), t.TempDir()
	w, _, errs := faked(short, rows.Part{}, &calls)
	var code console.Silent
	if err := w.gather(dirs[:2]); !errors.As(err, &code) || code.Code != console.ExitNotSettled ||
		!strings.Contains(errs.String(), "6 drapes gave no result") {
		t.Errorf("two of three parts gathered: %v, %s", err, errs)
	}
	w, _, _ = faked(all, rows.Part{}, &calls)
	if err := w.gather(dirs); err != nil || calls.Load() != 0 {
		t.Fatalf("gather: %v after %d drapes", err, calls.Load())
	}
	same := 0
	for _, name := range []string{"index.html", "table.csv", "placings.csv", "result.json", "pictures/01-0-cm.jpg",
		"styles/06-10-cm.yaml"} {
		a, err := os.ReadFile(filepath.Join(whole, name))
		b, err2 := os.ReadFile(filepath.Join(all, name))
		if err != nil || err2 != nil || !bytes.Equal(a, b) {
			t.Errorf("%s of the parts is not that of the whole: %v, %v", name, err, err2)
		}
		same++
	}
	if same != 6 {
		t.Errorf("compared %d files", same)
	}
	gatheredWrong(t, dirs[0])
}

// gatheredWrong gathers a part with one of another study, and an empty folder.
func gatheredWrong(t *testing.T, part string) {
	t.Helper()
	var calls atomic.Int32
	other := asked(t, "compare", 3, nil, "polyester-twill", "wool-tropical")
	elsewhere := t.TempDir()
	w, _, _ := faked(elsewhere, rows.Part{}, &calls)
	if err := errors.Join(w.study(t.Context(), other)); err != nil {
		t.Fatal(err)
	}
	if err := w.gather([]string{part, elsewhere}); err == nil || !strings.Contains(err.Error(), "asks something else") {
		t.Errorf("parts of two studies gathered: %v", err)
	}
	if err := w.gather([]string{t.TempDir()}); err == nil || !strings.Contains(err.Error(), "study.json") {
		t.Errorf("an empty folder gathered: %v", err)
	}
}
