//go:build unix

package main

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

func init() {
	children["saves for ever"] = func(context.Context) int {
		for k := 0; ; k++ {
			data := bytes.Repeat(fmt.Appendf(nil, "%d ", k), 20000)
			if err := console.Save(os.Args[1], []console.File{{Name: "draft.pdf", Data: data}, {Name: "draft.dxf", Data: data}, {Name: "deep/draft.svg", Data: data}}); err != nil {
				fmt.Fprintln(os.Stderr, err)
				return console.ExitCannotSave
			}
		}
	}
}

// Killed with -9 at any moment of its saving, the program leaves one set from the next
// start on, and nothing of its own beside.
func TestKilledWhileSaving(t *testing.T) {
	const kills = 40
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "thesis.txt"), []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 1))
	mixed, seen := 0, map[string]bool{}
	for range kills {
		c, errs := child(t, "saves for ever", dir)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(100*time.Millisecond + time.Duration(r.IntN(60_000))*time.Microsecond)
		c.Process.Kill()
		c.Wait()
		if errs.Len() > 0 {
			t.Fatal(errs)
		}
		if err := console.Writable(dir); err != nil {
			t.Fatal(err)
		}
		var set [3]string
		for k, name := range []string{"draft.pdf", "draft.dxf", "deep/draft.svg"} {
			data, _ := os.ReadFile(filepath.Join(dir, name))
			set[k] = string(data)
		}
		if set[0] != set[1] || set[1] != set[2] {
			mixed++
		}
		first, _, _ := strings.Cut(set[0], " ")
		seen[first] = true
		if left, _ := filepath.Glob(filepath.Join(dir, ".cowl*")); len(left) > 0 {
			t.Errorf("left %v", left)
		}
	}
	if mixed > 0 || len(seen) < 5 {
		t.Errorf("%d of %d kills left a mixed set, %d different sets seen, want none and 5 or more", mixed, kills, len(seen))
	}
}
