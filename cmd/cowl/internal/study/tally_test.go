package study

import (
	"context"
	"errors"
	"regexp"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
)

var atMost = regexp.MustCompile(`takes at most (\d+) drapes of some \d+ points, about .* to .* with 2 at a time`)

// A search says before it starts how many drapes it may take, and takes no more; in each
// fabric the drop alone takes six of the first hand and no more than two cuts by all.
func TestSeekMost(t *testing.T) {
	n := 0
	for _, q := range []struct {
		want    string
		fabrics []string
		most    int // from six of the first hand, two cuts by three hands less the first hung already
	}{
		{"edge drop 14cm", []string{"polyester-twill"}, 6 + 5},
		{"edge drop 14cm", []string{"polyester-twill", "wool-tropical"}, 2 * (6 + 5)},
		{"edge drop 14cm, folds 4", []string{"polyester-twill"}, (1 + 3 + 3) * (6 + 5)},
		{"folds 2", []string{"polyester-twill"}, (1 + 3 + 3) * 6 * 3},
	} {
		if testing.Short() && q.most > 30 {
			continue
		}
		var calls atomic.Int32
		w, out, errs := faked(t.TempDir(), rows.Part{}, &calls)
		goal, err := ParseWant(q.want)
		if err != nil {
			t.Fatal(err)
		}
		var quiet console.Silent
		if err := w.seek(t.Context(), asked(t, "seek", 3, nil, q.fabrics...), goal); err != nil && !errors.As(err, &quiet) {
			t.Fatalf("%s: %v, %s", q.want, err, out)
		}
		said := atMost.FindStringSubmatch(errs.String())
		if said == nil {
			t.Errorf("%s: said %q, want how many drapes it takes", q.want, errs)
			continue
		}
		if most, _ := strconv.Atoi(said[1]); most != q.most || int(calls.Load()) > most ||
			len(w.tally.done) != int(calls.Load()) {
			t.Errorf("%s in %d fabrics: %d drapes hung, %d counted, at most %d said, want at most %d", q.want, len(q.fabrics),
				calls.Load(), len(w.tally.done), most, q.most)
		}
		n++
	}
	if n < 2 {
		t.Errorf("%d searches, want 2 or more", n)
	}
}

// Called off amid a search, it says of all its drapes how many are kept, not of a round.
func TestSeekCancelled(t *testing.T) {
	var calls atomic.Int32
	w, _, errs := faked(t.TempDir(), rows.Part{}, &calls)
	ctx, cancel := context.WithCancel(t.Context())
	hang := w.hang
	w.hang = func(c context.Context, one oneCase, k int) (rows.Made[Row], error) {
		made, err := hang(c, one, k)
		if calls.Load() > 7 {
			cancel()
		}
		return made, err
	}
	goal, err := ParseWant("folds 2")
	if err != nil {
		t.Fatal(err)
	}
	w.Jobs = 1
	var code console.Silent
	err = w.seek(ctx, asked(t, "seek", 3, nil), goal)
	if !errors.As(err, &code) || code.Code != console.ExitCancelled || !strings.Contains(errs.String(),
		"cancelled; 7 of at most 126 drapes are kept") {
		t.Errorf("called off at the 8th drape: %v, said %q, want 7 of at most 126 kept", err, errs)
	}
}

// Wants that cannot be met together are refused before anything is hung, both named.
func TestWantsContradict(t *testing.T) {
	for _, q := range []struct {
		want  string
		folds int // the style lays; -1: auto
		edge  float64
		says  []string
	}{
		{"folds 0, depth 25mm", -1, 0, []string{"0 folds above the bust", "25 mm", "contradict"}},
		{"folds 3", 2, 0, []string{"3 folds above the bust", "folds 2 ", "contradict"}},
		{"edge drop 12cm", -1, 0.08, []string{"edge drop 12.0 cm", "edge depth 8.0 cm"}},
		{"folds 2, depth 25mm", 2, 0, nil},
		{"folds 0", 0, 0, nil},
	} {
		goal, err := ParseWant(q.want)
		if err != nil {
			t.Fatal(err)
		}
		s := demoStyle(t)
		if q.folds >= 0 {
			s.Hang.Folds = q.folds
		}
		if q.edge != 0 {
			s.Hang.EdgeDepth = q.edge
		}
		err = goal.against(s)
		if (err != nil) != (q.says != nil) {
			t.Errorf("%s with folds %d, edge %g: %v", q.want, q.folds, q.edge, err)
		}
		for _, part := range q.says {
			if err != nil && !strings.Contains(err.Error(), part) {
				t.Errorf("%s with folds %d, edge %g: %v, want %q in it", q.want, q.folds, q.edge, err, part)
			}
		}
	}
	if _, err := ParseWant("edge drop 12cm, folds 2, drop 15cm"); err == nil ||
		!strings.Contains(err.Error(), "edge drop 12.0 cm and edge drop 15.0 cm") {
		t.Errorf("two drops: %v, want both named", err)
	}
}
