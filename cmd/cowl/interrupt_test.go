//go:build unix

package main

import (
	"context"
	"io"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

func init() {
	forever := func() int {
		os.Stdout.WriteString("ready\n")
		time.Sleep(time.Hour)
		return console.ExitOK
	}
	children["reads for ever"] = func(context.Context) int { return forever() }
	children["hangs and heeds"] = func(ctx context.Context) int {
		defer console.Heed()()
		os.Stdout.WriteString("ready\n")
		<-ctx.Done()
		return console.ExitNotSettled // as asked, and in its own time
	}
	children["hangs and is deaf"] = func(context.Context) int {
		defer console.Heed()()
		return forever()
	}
}

// A signal ends the program at once while it reads or plans; what hangs cloth sees
// it and ends by itself; a second one ends it in any state.
func TestSignals(t *testing.T) {
	for _, q := range []struct {
		child string
		times int
		code  int
		says  string
	}{
		{"reads for ever", 1, console.ExitCancelled, "cancelled, nothing written"},
		{"hangs and heeds", 1, console.ExitNotSettled, ""}, {"hangs and is deaf", 2, console.ExitCancelled,
			"cancelled at once"},
	} {
		for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
			c, errs := child(t, q.child)
			out, err := c.StdoutPipe()
			if err != nil {
				t.Fatal(err)
			}
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
			io.ReadFull(out, make([]byte, len("ready\n")))
			start := time.Now()
			for range q.times {
				c.Process.Signal(s)
				time.Sleep(50 * time.Millisecond) // or two would be one
			}
			if code := ended(t, c); code != q.code || !strings.Contains(errs.String(), q.says) {
				t.Errorf("%s, %v: exit %d, %q, want %d and %q", q.child, s, code, errs, q.code, q.says)
			}
			if took := time.Since(start); took > time.Second {
				t.Errorf("%s, %v: ended after %v, want at once", q.child, s, took)
			}
		}
	}
}

// A real drape is called off by one signal, and leaves nothing.
func TestSignalWhileHanging(t *testing.T) {
	dir := t.TempDir()
	c, errs := child(t, "cowl", "drape", "--spacing", "5mm", "--out", dir)
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	time.Sleep(2 * time.Second)
	c.Process.Signal(syscall.SIGTERM)
	if code := ended(t, c); code != console.ExitCancelled || !isEmpty(t, dir) {
		t.Errorf("a drape called off: exit %d, %q, empty %t, want %d and nothing written", code, errs, isEmpty(t, dir),
			console.ExitCancelled)
	}
}
