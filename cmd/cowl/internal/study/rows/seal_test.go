package rows

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
)

// small is a value that can be at most 1000.
type small struct{ N int }

func (s *small) Check() error {
	if s.N > 1000 {
		return errors.New("too large")
	}
	return nil
}

// numbered gives the number of a row, and a file.
func numbered(calls *atomic.Int32) func(context.Context, int) (Made[small], error) {
	return func(_ context.Context, i int) (Made[small], error) {
		calls.Add(1)
		return Made[small]{Value: small{i}, Files: map[string][]byte{"txt": fmt.Appendf(nil, "file of %d", i)}}, nil
	}
}

// Whatever is done to a row that is kept, it is told, set aside and computed again,
// and the others are not.
func TestDamagedRows(t *testing.T) {
	list := rows(3)
	for what, damage := range map[string]func(t *testing.T, s Store) error{
		"cut off": func(_ *testing.T, s Store) error { return os.Truncate(s.File(list[1].Key, "json"), 40) },
		"emptied": func(_ *testing.T, s Store) error { return os.Truncate(s.File(list[1].Key, "json"), 0) },
		"a folder": func(_ *testing.T, s Store) error {
			return errors.Join(os.Remove(s.File(list[1].Key, "json")), os.Mkdir(s.File(list[1].Key, "json"), 0o700))
		},
		"another row": func(_ *testing.T, s Store) error {
			data, err := os.ReadFile(s.File(list[2].Key, "json"))
			return errors.Join(err, os.WriteFile(s.File(list[1].Key, "json"), data, 0o600))
		},
		"a figure": func(_ *testing.T, s Store) error {
			data, err := os.ReadFile(s.File(list[1].Key, "json"))
			return errors.Join(err, os.WriteFile(s.File(list[1].Key, "json"), bytes.Replace(data, []byte(`"N": 1`),
				[]byte(`"N": 7`), 1), 0o600))
		},
		"its file": func(_ *testing.T, s Store) error {
			return os.WriteFile(s.File(list[1].Key, "txt"), []byte("file of 7"), 0o600)
		},
		"no row": func(_ *testing.T, s Store) error {
			return os.WriteFile(s.File(list[1].Key, "json"), []byte("{}"), 0o600)
		},
		"sealed, of other physics": func(_ *testing.T, s Store) error {
			return reseal(s, list[1].Key, func(r *record[small]) { r.Physics = "0123" })
		},
		"sealed, of another form": func(_ *testing.T, s Store) error {
			return reseal(s, list[1].Key, func(r *record[small]) { r.Version = 1 })
		},
		"sealed, out of range": func(_ *testing.T, s Store) error {
			return reseal(s, list[1].Key, func(r *record[small]) { r.Value.N = 1001 })
		},
	} {
		s := Store(t.TempDir())
		var calls atomic.Int32
		if _, err := Run(t.Context(), s, list, Options{}, numbered(&calls)); err != nil || calls.Load() != 3 {
			t.Fatalf("%d rows, %v", calls.Load(), err)
		}
		if err := damage(t, s); err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		for _, again := range []int32{1, 0} {
			calls.Store(0)
			var told []string
			got, err := Run(t.Context(), s, list, Options{Warn: func(text string) { told = append(told, text) }},
				numbered(&calls))
			if err != nil || calls.Load() != again || len(told) != int(again) || got[1].Value.N != 1 || got[1].Failed != "" {
				t.Errorf("%s: %d computed, told %q, %+v, %v, want %d, told once and the row", what, calls.Load(), told, got[1],
					err, again)
			}
			if again > 0 && !strings.Contains(strings.Join(told, ""), "row of r1 is no good: ") {
				t.Errorf("%s: told %q, want which row", what, told)
			}
		}
		if _, err := os.Lstat(filepath.Join(string(s), asideFolder, list[1].Key+".json")); err != nil {
			t.Errorf("%s: the row is not kept aside: %v", what, err)
		}
	}
}

// reseal changes a row and puts a good checksum under it.
func reseal(s Store, key string, change func(*record[small])) error {
	r, _, err := lookAt[small](s, key)
	if err != nil {
		return err
	}
	change(&r)
	data, err := seal(r)
	return errors.Join(err, os.WriteFile(s.File(key, "json"), data, 0o600))
}

// A bit that flips anywhere in a row or its file is seen: 500 of them.
func TestFlippedBits(t *testing.T) {
	list := rows(1)
	s := Store(t.TempDir())
	var calls atomic.Int32
	if _, err := Run(t.Context(), s, list, Options{}, numbered(&calls)); err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 2))
	silent, flips := 0, 500
	for k := range flips {
		name := s.File(list[0].Key, []string{"json", "txt"}[k%5/4])
		good, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		bad := bytes.Clone(good)
		bad[r.IntN(len(bad))] ^= 1 << r.IntN(8)
		if err := os.WriteFile(name, bad, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, _, err := lookAt[small](s, list[0].Key); err == nil {
			silent++
		}
		if err := os.WriteFile(name, good, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if silent > 0 {
		t.Errorf("%d of %d flipped bits pass, want none", silent, flips)
	}
}

// A value out of range is never kept as one.
func TestValueOutOfRange(t *testing.T) {
	s := Store(t.TempDir())
	for range 2 {
		got, err := Run(t.Context(), s, rows(1), Options{}, func(context.Context, int) (Made[small], error) {
			return Made[small]{Value: small{2000}}, nil
		})
		if err != nil || got[0].Failed != "too large" || got[0].Value.N != 0 {
			t.Errorf("a value of 2000 = %+v, %v, want it failed", got[0], err)
		}
	}
}

// Gathering leaves what is no good where it is, and tells.
func TestGatherDamaged(t *testing.T) {
	from, to := Store(t.TempDir()), Store(filepath.Join(t.TempDir(), "rows"))
	var calls atomic.Int32
	if _, err := Run(t.Context(), from, rows(3), Options{}, numbered(&calls)); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(from.File(rows(3)[1].Key, "json"), 50); err != nil {
		t.Fatal(err)
	}
	told := 0
	n, err := Gather[small](to, from, func(string) { told++ })
	if err != nil || n != 2 || told != 1 {
		t.Errorf("Gather = %d, %v, told %d times, want 2 of 3 rows and one told", n, err, told)
	}
	kept, err := Kept[small](to, rows(3), nil)
	if err != nil || !kept[0].Done || kept[1].Done || !kept[2].Done {
		t.Errorf("Kept = %+v, %v, want the first and the third", kept, err)
	}
}
