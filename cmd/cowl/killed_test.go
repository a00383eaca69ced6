//go:build unix

package main

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

func init() {
	children["saves for ever"] = func(context.Context) int {
		for k := 0; ; k++ {
			data := bytes.Repeat(fmt.Appendf(nil, "%d ", k), 20000)
			if err := console.Save(os.Args[1], []console.File{{Name: "draft.pdf", Data: data}, {Name: "draft.dxf", Data: data},
				{Name: "deep/draft.svg", Data: data}}); err != nil {
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
	mixed, amid := 0, 0
	for range kills {
		c, errs := child(t, "saves for ever", dir)
		before, _ := os.Stat(filepath.Join(dir, "draft.pdf"))
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		savedOver(t, filepath.Join(dir, "draft.pdf"), before)
		time.Sleep(time.Duration(r.IntN(60_000)) * time.Microsecond)
		c.Process.Kill()
		c.Wait()
		if errs.Len() > 0 {
			t.Fatal(errs)
		}
		if begun, _ := filepath.Glob(filepath.Join(dir, ".cowl*")); len(begun) > 0 {
			amid++
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
		if left, _ := filepath.Glob(filepath.Join(dir, ".cowl*")); len(left) > 0 {
			t.Errorf("left %v", left)
		}
	}
	if mixed > 0 || amid < 5 {
		t.Errorf("%d of %d kills left a mixed set, %d came amid a save, want none and 5 or more", mixed, kills, amid)
	}
}

// savedOver waits until a file is another than before, which a busy machine may put off.
func savedOver(t *testing.T, path string, before os.FileInfo) {
	for range 60_000 {
		now, err := os.Stat(path)
		if err == nil && (before == nil || !os.SameFile(before, now) || !before.ModTime().Equal(now.ModTime())) {
			return
		}
		time.Sleep(time.Millisecond)
	}
	t.Fatalf("%s is not saved within a minute", path)
}
