package study

import (
	"context"
	"errors"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/study/rows"
	"cowl/mesh/draft"
)

// hangings notes which placings of which cases were hung, and by which first hand.
type hangings struct {
	mu   sync.Mutex
	seen []string // "4 cm 0"
	led  int      // that had a first hand
}

// watch lets w note what it hangs; a first hand in the case named fails.
func (h *hangings) watch(w *runner, fails string) {
	good := w.hang
	w.hang = func(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
		h.mu.Lock()
		h.seen = append(h.seen, c.Name)
		if c.first != nil {
			h.led++
		}
		h.mu.Unlock()
		if c.Name == fails && k == 0 {
			return rows.Made[Row]{}, errors.New("the cloth tore")
		}
		return good(ctx, c, k)
	}
}

// The first hand of a cut finds out how many folds are laid and the others do alike, in
// one part; cuts whose number is asked for are dealt hand by hand.
func TestFirstHandsFind(t *testing.T) {
	for _, q := range []struct {
		hang        string // added to the style
		led         int    // of 6 hangings
		first, last int    // hangings of the two parts
	}{
		{"", 4, 3, 3},
		{"  folds: 2\n", 0, 3, 3},
		{"  folds: 2\n  edge_depth_cm: 4\n", 4, 3, 3},
	} {
		spec := asked(t, "sweep", 3, []string{"extension=6cm,8cm"})
		if q.hang != "" {
			spec.Style = strings.Replace(strings.Replace(spec.Style, "  folds: auto\n", "", 1), "  edge_depth_cm: auto\n", "",
				1) + q.hang
			if !strings.Contains(q.hang, "edge") {
				spec.Style += "  edge_depth_cm: auto\n"
			}
		}
		var calls atomic.Int32
		var all hangings
		w, _, errs := faked(t.TempDir(), rows.Part{}, &calls)
		all.watch(w, "")
		if err := w.study(t.Context(), spec); err != nil {
			t.Fatalf("%q: %v, %s", q.hang, err, errs)
		}
		if len(all.seen) != 6 || all.led != q.led {
			t.Errorf("%q: %d hung, %d of them after a first hand, want 6 and %d", q.hang, len(all.seen), all.led, q.led)
		}
		if q.led > 0 && all.seen[0] == all.seen[1] {
			t.Errorf("%q: hung in the order %v, want both first hands first", q.hang, all.seen)
		}
		for i, want := range []int{q.first, q.last} {
			var part hangings
			w, _, _ := faked(t.TempDir(), rows.Part{Number: i + 1, Of: 2}, &calls)
			part.watch(w, "")
			if err := w.study(t.Context(), spec); err != nil {
				t.Fatal(err)
			}
			alone := true
			for _, name := range part.seen {
				alone = alone && name == part.seen[0]
			}
			if len(part.seen) != want || alone != (q.led > 0) {
				t.Errorf("%q, part %d: hung %v, want %d, of one cut: %t", q.hang, i+1, part.seen, want, q.led > 0)
			}
		}
	}
}

// A first hand without a result fails those that follow it; --retry hangs them all.
func TestFirstHandFails(t *testing.T) {
	dir := t.TempDir()
	spec := asked(t, "sweep", 3, []string{"extension=6cm,8cm"})
	for _, q := range []struct {
		fails string
		retry bool
		hung  int
		says  string
	}{{"6 cm", false, 4, "3 drapes gave no result"}, {"", false, 0, "3 drapes gave no result"}, {"", true, 3, ""}} {
		var calls atomic.Int32
		var h hangings
		w, _, errs := faked(dir, rows.Part{}, &calls)
		w.Retry = q.retry
		h.watch(w, q.fails)
		err := w.study(t.Context(), spec)
		if len(h.seen) != q.hung || (err != nil) != (q.says != "") || !strings.Contains(errs.String(), q.says) {
			t.Errorf("%+v: %d hung, %v, said %q", q, len(h.seen), err, errs)
		}
	}
}

// What another first hand may find differently is another row; a number that is asked
// for makes hands independent.
func TestKeyOfFirstHand(t *testing.T) {
	p, err := asked(t, "sweep", 3, []string{"extension=6cm,8cm"}).plan()
	if err != nil {
		t.Fatal(err)
	}
	c := p.cases[0]
	d := c
	d.style.Hang.Seed++
	if c.key(1) == d.key(0) || c.key(2) == d.key(1) {
		t.Error("hand 2 as a first hand has the key of hand 2 that follows hand 1")
	}
	c.style.Hang.Folds, d.style.Hang.Folds = 2, 2
	c.hide, d.hide = true, true
	if c.style.Hang.EdgeDepth != draft.Auto || c.key(1) != d.key(0) {
		t.Error("hand 2 that lays two folds has one key as the first and another as the second")
	}
}
