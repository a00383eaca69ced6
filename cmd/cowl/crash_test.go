//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/memory"
	"cowl/sim/fault"
	"cowl/sim/forkjoin"
)

func init() {
	crashing := func(breaks func()) func(context.Context) int {
		return func(ctx context.Context) int {
			defer watchCrashes(os.Stderr)()
			fault.Teller = func(f *fault.Fault) { os.Exit(crashed(f, os.Stderr)) }
			return func() (code int) {
				defer func() {
					if r := recover(); r != nil {
						code = crashed(fault.Of(r), os.Stderr)
					}
				}()
				breaks()
				return console.ExitOK
			}()
		}
	}
	children["panics"] = crashing(func() { panic("the needle broke\nin two") })
	children["panics in a helper"] = crashing(func() {
		for range 1000 {
			forkjoin.New(true).Both(func(half int) {
				if half == 1 {
					panic("the needle broke\nin two")
				}
			})
		}
	})
	children["panics alone"] = crashing(func() {
		go func() {
			defer fault.Tell()
			panic("the needle broke\nin two")
		}()
		select {}
	})
	children["panics where nobody sees"] = crashing(func() {
		go panic("the needle broke")
		select {}
	})
}

var reported = regexp.MustCompile(`(?m)^cowl: a fault of the program, not of yours: the needle broke \(cowl .*\); the report lies in (\S+)$`)

// A crash is told as one in a line, with the version and where the report lies, and
// ends with 70, in whatever goroutine it is. What Go itself ends is told by the next run.
func TestCrashes(t *testing.T) {
	cache := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", cache)
	for _, name := range []string{"panics", "panics in a helper", "panics alone"} {
		c, errs := child(t, name)
		c.Start()
		code := ended(t, c)
		found := reported.FindStringSubmatch(errs.String())
		if code != console.ExitFault || found == nil || strings.Count(errs.String(), "\n") != 1 {
			t.Errorf("%s: exit %d, says %q, want %d and a line", name, code, errs, console.ExitFault)
			continue
		}
		if data, err := os.ReadFile(found[1]); err != nil || !strings.Contains(string(data), "in two") ||
			!strings.Contains(string(data), "crash_test.go") {
			t.Errorf("%s: report %v\n%s", name, err, data)
		}
	}
	c, _ := child(t, "panics where nobody sees")
	c.Start()
	if code := ended(t, c); code == console.ExitOK {
		t.Errorf("panics where nobody sees: exit %d, want a crash", code)
	}
	for k, want := range []int{1, 0} {
		c, errs := child(t, "panics")
		c.Start()
		ended(t, c)
		if n := strings.Count(errs.String(), "an earlier run crashed; its report lies in "+cache); n != want {
			t.Errorf("run %d after: told %d times in %q, want %d", k+1, n, errs, want)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(cache, "cowl", "crashes", "running-*")); len(left) > 0 {
		t.Errorf("left %v, want reports alone", left)
	}
}

// Within the program a panic of a verb is exit 70 too, and nothing is half said.
func TestPanicOfVerb(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	real := memory.Free
	defer func() { memory.Free = real }()
	memory.Free = func() float64 { panic("no needle") }
	got := call(t.Context(), "drape", "--out", t.TempDir())
	if got.code != console.ExitFault || got.out != "" || !strings.Contains(got.err, "no needle") ||
		strings.Contains(got.err, "goroutine") {
		t.Errorf("a verb that panics = %d, %q, %q, want %d and a line", got.code, got.out, got.err, console.ExitFault)
	}
}

// What cannot be said is exit 3.
func TestOutputFull(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer full.Close()
	for _, args := range [][]string{{"fabrics"}, {"--help"}, {"version"}, {"draft", "--json", "--out", t.TempDir()},
		{"draft", "--out", t.TempDir()}, {"swatch", "--weight", "100gsm", "--fast-b-warp", "5", "--fast-b-weft", "5"}} {
		c, errs := child(t, "cowl", args...)
		c.Stdout = full
		c.Start()
		if code := ended(t, c); code != console.ExitCannotSave || !strings.Contains(errs.String(), "standard output: ") ||
			!strings.Contains(errs.String(), "no space left") {
			t.Errorf("cowl %v > /dev/full: exit %d, %q, want %d", args, code, errs, console.ExitCannotSave)
		}
	}
}

// Help and README have the table of the statuses.
func TestExitTable(t *testing.T) {
	help := strings.Join(strings.Fields(call(t.Context(), "--help").out), " ")
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range console.Exits {
		if line := fmt.Sprintf("| %d | %s |", e.Code, e.Means); !strings.Contains(string(readme), line) {
			t.Errorf("README lacks %q", line)
		}
		if words := fmt.Sprintf("%d %s", e.Code, e.Means); !strings.Contains(help, words) {
			t.Errorf("cowl --help lacks %q", words)
		}
	}
}

// A window that cannot be opened is no trouble with saving.
func TestNoWindow(t *testing.T) {
	t.Setenv("DISPLAY", ":999")
	t.Setenv("WAYLAND_DISPLAY", "")
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	if got := call(t.Context(), "view"); got.code != console.ExitNoWindow ||
		!strings.Contains(got.err, "no window can be opened") {
		t.Errorf("cowl view without a display = %d, %q, want %d", got.code, got.err, console.ExitNoWindow)
	}
}
