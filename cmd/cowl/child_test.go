package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
)

// children are what this test program does when it is started again as cowl, by
// the name in COWL_CHILD: what cannot be tried within the program of the tests.
var children = map[string]func(context.Context) int{
	"cowl": func(ctx context.Context) int {
		return run(ctx, os.Args[1:], console.Console{Out: os.Stdout, Err: os.Stderr}, nil)
	},
}

func TestMain(m *testing.M) {
	if work, ok := children[os.Getenv("COWL_CHILD")]; ok {
		os.Exit(console.Serve(work))
	}
	os.Exit(tried(m))
}

// tried runs the tests with a config folder of their own: what somebody has kept of cowl
// on this machine must not change them.
func tried(m *testing.M) int {
	dir, err := os.MkdirTemp("", "cowl-config")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	for _, name := range []string{"XDG_CONFIG_HOME", "AppData"} {
		os.Setenv(name, dir)
	}
	return m.Run()
}

// child starts this test program again as another.
func child(t *testing.T, name string, args ...string) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	var out bytes.Buffer
	c := exec.Command(os.Args[0], args...)
	c.Env = append(os.Environ(), "COWL_CHILD="+name)
	c.Stderr = &out
	return c, &out
}

// ended waits for a child, but not for long, and returns its exit status; -1 where
// it had to be killed or a signal ended it.
func ended(t *testing.T, c *exec.Cmd) int {
	t.Helper()
	timer := time.AfterFunc(20*time.Second, func() { c.Process.Kill() })
	defer timer.Stop()
	c.Wait()
	return c.ProcessState.ExitCode()
}
