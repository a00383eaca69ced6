package rows

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// rows makes n rows named r0, r1, …
func rows(n int) []Row {
	var out []Row
	for i := range n {
		name := fmt.Sprintf("r%d", i)
		out = append(out, Row{Key: KeyOf(name), Name: name})
	}
	return out
}

// squares is a work that squares the number of its row and counts its calls.
func squares(calls *atomic.Int32) func(context.Context, int) (Made[int], error) {
	return func(_ context.Context, i int) (Made[int], error) {
		calls.Add(1)
		return Made[int]{Value: i * i, Files: map[string][]byte{"txt": fmt.Appendf(nil, "file of %d", i)}}, nil
	}
}

// A second run computes nothing and gives the same; a row more computes one.
func TestResume(t *testing.T) {
	s := Store(filepath.Join(t.TempDir(), "rows"))
	var calls atomic.Int32
	for _, q := range []struct{ rows, calls int }{{9, 9}, {9, 0}, {10, 1}} {
		calls.Store(0)
		got, err := Run(t.Context(), s, rows(q.rows), Options{Jobs: 3}, squares(&calls))
		if err != nil || int(calls.Load()) != q.calls {
			t.Fatalf("Run of %d rows: %d computed, %v, want %d", q.rows, calls.Load(), err, q.calls)
		}
		for i, r := range got {
			if !r.Done || r.Value != i*i || r.Failed != "" {
				t.Errorf("row %d = %+v, want %d", i, r, i*i)
			}
			if data, err := os.ReadFile(s.File(rows(q.rows)[i].Key, "txt")); err != nil ||
				string(data) != fmt.Sprintf("file of %d", i) {
				t.Errorf("file of row %d = %q, %v", i, data, err)
			}
		}
	}
}

// Rows of equal input are computed once and all get the result.
func TestSameKey(t *testing.T) {
	var calls atomic.Int32
	list := append(rows(2), rows(2)...)
	got, err := Run(t.Context(), Store(t.TempDir()), list, Options{Jobs: 2}, squares(&calls))
	if err != nil || calls.Load() != 2 || got[3].Value != 1 || !got[3].Done {
		t.Errorf("four rows of two keys: %d computed, last %+v, %v, want 2 and the value 1", calls.Load(), got[3], err)
	}
}

// Errors and panics mark their row, the rest goes on; failed rows are kept, and
// computed again only when asked.
func TestFailures(t *testing.T) {
	s := Store(t.TempDir())
	calls := 0
	work := func(_ context.Context, i int) (Made[int], error) {
		calls++
		switch i {
		case 1:
			return Made[int]{}, errors.New("cloth tore")
		case 2:
			panic("broken")
		}
		return Made[int]{Value: 7}, nil
	}
	var last Pace
	for _, q := range []struct {
		retry bool
		calls int
	}{{false, 4}, {false, 0}, {true, 2}} {
		calls = 0
		got, err := Run(t.Context(), s, rows(4), Options{Retry: q.retry, Tell: func(p Pace) { last = p }}, work)
		if err != nil || calls != q.calls {
			t.Fatalf("retry %t: %d computed, %v, want %d", q.retry, calls, err, q.calls)
		}
		if got[1].Failed != "cloth tore" || !strings.Contains(got[2].Failed, "broken") || got[3].Value != 7 ||
			got[3].Failed != "" {
			t.Errorf("retry %t: results %+v", q.retry, got)
		}
	}
	if last.Failed != 2 || last.Done != 2 || last.Rows != 4 {
		t.Errorf("pace at the end = %+v, want 2 of 2 failed", last)
	}
}

// The rows of all parts are the rows of the whole, each in one part; what two
// folders hold is gathered into one.
func TestPartsGather(t *testing.T) {
	whole := Store(filepath.Join(t.TempDir(), "rows"))
	seen := 0
	for i := 1; i <= 3; i++ {
		part := Store(filepath.Join(t.TempDir(), "rows"))
		var calls atomic.Int32
		got, err := Run(t.Context(), part, rows(8), Options{Part: Part{i, 3}}, squares(&calls))
		if err != nil {
			t.Fatal(err)
		}
		done := 0
		for _, r := range got {
			if r.Done {
				done++
			}
		}
		if done != int(calls.Load()) || done < 2 {
			t.Errorf("part %d: %d done, %d computed, want 2 or 3 of both", i, done, calls.Load())
		}
		n, err := Gather[int](whole, part, nil)
		if err != nil || n != done {
			t.Errorf("gathered %d, %v, want %d", n, err, done)
		}
		if again, err := Gather[int](whole, part, nil); again != 0 || err != nil {
			t.Errorf("gathered %d, %v the second time, want none", again, err)
		}
		seen += done
	}
	var calls atomic.Int32
	got, err := Run(t.Context(), whole, rows(8), Options{}, squares(&calls))
	if err != nil || seen != 8 || calls.Load() != 0 || got[7].Value != 49 {
		t.Errorf("parts hold %d rows, %d computed after gathering, %v, want 8 and none", seen, calls.Load(), err)
	}
	if _, err := os.ReadFile(whole.File(rows(8)[7].Key, "txt")); err != nil {
		t.Error(err)
	}
	if n, err := Gather[int](whole, Store("/nowhere/rows"), nil); n != 0 || err != nil {
		t.Errorf("gathered %d, %v from a folder that is not there, want none", n, err)
	}
}

// Called off, finished rows are kept and the one on the bench is not.
func TestCancel(t *testing.T) {
	s := Store(t.TempDir())
	ctx, cancel := context.WithCancel(t.Context())
	_, err := Run(ctx, s, rows(6), Options{}, func(ctx context.Context, i int) (Made[int], error) {
		if i == 3 {
			cancel()
			return Made[int]{}, errors.New("half done")
		}
		return Made[int]{Value: i}, nil
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("Run called off = %v, want %v", err, context.Canceled)
	}
	var calls atomic.Int32
	if _, err := Run(t.Context(), s, rows(6), Options{}, squares(&calls)); err != nil || calls.Load() != 3 {
		t.Errorf("%d rows left after calling off at the fourth of six, %v, want 3", calls.Load(), err)
	}
}

// A store that cannot be written ends the run.
func TestStoreFails(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	var calls atomic.Int32
	if _, err := Run(t.Context(), Store(filepath.Join(file, "rows")), rows(3), Options{}, squares(&calls)); err == nil {
		t.Error("Run in a folder that is a file = nil, want an error")
	}
}

// Time left is rows left at the mean pace: after 2 of 5 rows in 20 s, 30 s.
func TestTimeLeft(t *testing.T) {
	now := time.Unix(0, 0)
	var told []Pace
	_, err := Run(t.Context(), Store(t.TempDir()), rows(5), Options{
		Tell: func(p Pace) { told = append(told, p) }, Clock: func() time.Time { return now },
	}, func(context.Context, int) (Made[int], error) {
		now = now.Add(10 * time.Second)
		return Made[int]{}, nil
	})
	if err != nil || len(told) != 6 || told[0].Left != 0 || told[2].Left != 30*time.Second || told[5].Left != 0 {
		t.Errorf("told %+v, %v, want 30 s left after the second", told, err)
	}
}

func TestKey(t *testing.T) {
	seen := map[string][]string{}
	for _, in := range [][]string{{"ab", "c"}, {"a", "bc"}, {"abc"}, {"abc", ""}, {"3:abc,"}, {}} {
		k := KeyOf(in...)
		if other, ok := seen[k]; ok || len(k) != keyLength {
			t.Errorf("KeyOf(%q) = %q, as of %q", in, k, other)
		}
		seen[k] = in
	}
	again := []string{"a", "b"}
	if k := KeyOf("a", "b"); KeyOf(again...) != k {
		t.Errorf("KeyOf(%q) = %q, want %q again", again, KeyOf(again...), k)
	}
}

func TestPart(t *testing.T) {
	var p Part
	if err := p.UnmarshalText([]byte("3/8")); err != nil || p != (Part{3, 8}) || p.String() != "3/8" {
		t.Errorf("3/8 = %v, %v", p, err)
	}
	for _, bad := range []string{"", "3", "0/8", "9/8", "a/b", "3/8/2", "-1/2"} {
		if err := p.UnmarshalText([]byte(bad)); err == nil || !strings.Contains(err.Error(), "3/8") {
			t.Errorf("part %q = %v, want an error with an example", bad, err)
		}
	}
}

// A run of some rows computes these alone, and returns what is kept of the others.
func TestHere(t *testing.T) {
	s := Store(t.TempDir())
	var calls atomic.Int32
	var last Pace
	even := func(i int) bool { return i%2 == 0 }
	for _, q := range []struct {
		here        func(int) bool
		calls, done int
	}{{even, 4, 4}, {even, 0, 4}, {func(i int) bool { return !even(i) }, 3, 7}} {
		calls.Store(0)
		got, err := Run(t.Context(), s, rows(7), Options{Here: q.here, Part: Part{2, 3}, Tell: func(p Pace) { last = p }},
			squares(&calls))
		done := 0
		for i, r := range got {
			if r.Done && r.Value == i*i {
				done++
			}
		}
		if err != nil || int(calls.Load()) != q.calls || done != q.done || last.Rows > 4 {
			t.Errorf("%d computed, %d known, %d rows asked, %v, want %d, %d and 4 at most", calls.Load(), done, last.Rows, err,
				q.calls, q.done)
		}
	}
}
