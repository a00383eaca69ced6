package study

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/mesh/draft"
)

// A figure or a bit of a row that is changed is told, and the study comes out as it
// was: of 100 studies in whose rows one is changed no sheet differs.
func TestChangedRows(t *testing.T) {
	dir := t.TempDir()
	spec := asked(t, "sweep", 2, []string{"extension=4cm,8cm"})
	var calls atomic.Int32
	study := func() (told string) {
		w, _, errs := faked(dir, rows.Part{}, &calls)
		if err := w.study(t.Context(), spec); err != nil {
			return errs.String() + err.Error()
		}
		return errs.String()
	}
	study()
	sheet := func() []byte {
		data, err := os.ReadFile(filepath.Join(dir, "placings.csv"))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	good, before := sheet(), calls.Load()
	figure := regexp.MustCompile(`[1-9][0-9.]+`)
	r := rand.New(rand.NewPCG(5, 5))
	names, err := filepath.Glob(filepath.Join(dir, "rows", "*.json"))
	if err != nil || len(names) != 4 {
		t.Fatalf("%d rows, %v, want 4", len(names), err)
	}
	silent := 0
	changes := 100
	if testing.Short() {
		changes = 20
	}
	for k := range changes {
		name := names[r.IntN(len(names))]
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if k%2 == 0 {
			data[r.IntN(len(data))] ^= 1 << r.IntN(8)
		} else {
			all := figure.FindAllIndex(data, -1)
			at := all[r.IntN(len(all))]
			data[at[0]] = '1' + (data[at[0]]-'1'+1)%9
		}
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
		told := study()
		if !strings.Contains(told, "is no good") || !bytes.Equal(sheet(), good) {
			silent++
		}
	}
	if silent > 0 {
		t.Errorf("%d of %d changed rows passed or ended the study, want none", silent, changes)
	}
	if n := calls.Load() - before; int(n) != changes {
		t.Errorf("%d drapes hung again, want %d, one for every change", n, changes)
	}
}

// A gathered study tells of a damaged row and marks it; figures that no drape has are
// refused whatever their checksum.
func TestGatherTellsDamage(t *testing.T) {
	dir := t.TempDir()
	var calls atomic.Int32
	w, _, _ := faked(dir, rows.Part{}, &calls)
	if err := w.study(t.Context(), asked(t, "sweep", 2, []string{"extension=4cm,8cm"})); err != nil {
		t.Fatal(err)
	}
	names, _ := filepath.Glob(filepath.Join(dir, "rows", "*.json"))
	if err := os.Truncate(names[0], 100); err != nil {
		t.Fatal(err)
	}
	w, _, errs := faked(dir, rows.Part{}, &calls)
	var code console.Silent
	err := w.gather([]string{dir})
	if !errors.As(err, &code) || code.Code != console.ExitNotSettled || !strings.Contains(errs.String(), "is no good") ||
		!strings.Contains(errs.String(), "set-aside") {
		t.Errorf("gather over a damaged row = %v, %q, want %d and told", err, errs, console.ExitNotSettled)
	}
}

func TestFiguresOutOfRange(t *testing.T) {
	for _, q := range []struct {
		change func(*Row)
		want   string
	}{
		{func(*Row) {}, ""}, {func(r *Row) { r.Outcome.EdgeDrop = 1e308 }, "EdgeDrop"},
		{func(r *Row) { r.Outcome.Energy = -1e300 }, "Energy"},
		{func(r *Row) { r.Outcome.Folds[0].Depth = 11 }, "Depth"}, {func(r *Row) { r.Outcome.EdgeDrops = []float64{0, 1e9} },
			"EdgeDrops"},
		{func(r *Row) { r.Section[1][0] = 1e5 }, "section"}, {func(r *Row) { r.Outcome.Status = "fine" }, "status"},
		{func(r *Row) { r.Outcome.Nodes = 1 << 60 }, "Nodes"},
	} {
		made, err := fake(new(atomic.Int32))(t.Context(), newCase("", demoStyle(t)), 0)
		if err != nil {
			t.Fatal(err)
		}
		q.change(&made.Value)
		if err := made.Value.Check(); (err == nil) != (q.want == "") || err != nil && !strings.Contains(err.Error(), q.want) {
			t.Errorf("Check() = %v, want %q", err, q.want)
		}
	}
}

// The opening of a style is closed when the cloth hangs: rows with and without it are one.
func TestKeyClosure(t *testing.T) {
	s := demoStyle(t)
	open := s.Clone()
	open.Closure = draft.SideZip
	if a, b := newCase("a", s).key(0), newCase("b", open).key(0); a != b {
		t.Errorf("key %s with a zip, %s without, want one", b, a)
	}
	if other := newCase("c", open); other.style.Closure != draft.SideZip {
		t.Errorf("the case has lost its closure: %v", other.style.Closure)
	}
}
