package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/outfile"
	"cowl/sim/fault"
)

// crashes is the folder with the reports of crashes; its parts below are names in it.
type crashes string

const (
	runningFile = "running-%d.txt" // of a process that runs; Go writes into it what nobody can recover
	crashFile   = "crash-%s-%d.txt"
)

// crashFolder returns the folder of the reports, made if need be.
func crashFolder() (crashes, error) {
	dir, err := os.UserCacheDir()
	if err != nil {
		dir = os.TempDir()
	}
	dir = filepath.Join(dir, "cowl", "crashes")
	return crashes(dir), os.MkdirAll(dir, 0o700)
}

// watchCrashes has what Go itself ends the program for, memory that is not to be had
// or a stack without end, written into a file; what it returns takes the file away
// again. Reports of earlier runs are told once. Without a folder Go only prints.
func watchCrashes(stderr io.Writer) (done func()) {
	dir, err := crashFolder()
	if err != nil {
		return func() {}
	}
	dir.tellEarlier(stderr)
	f, err := os.Create(dir.path(runningFile, os.Getpid()))
	if err != nil {
		return func() {}
	}
	fmt.Fprint(f, head())
	if err := debug.SetCrashOutput(f, debug.CrashOptions{}); err != nil {
		fmt.Fprintln(f, err)
	}
	return func() {
		debug.SetCrashOutput(nil, debug.CrashOptions{})
		f.Close()
		os.Remove(f.Name())
	}
}

func (d crashes) path(format string, args ...any) string {
	return filepath.Join(string(d), fmt.Sprintf(format, args...))
}

// tellEarlier tells of reports of runs that are no more, and takes away the files of
// those that were killed.
func (d crashes) tellEarlier(stderr io.Writer) {
	names, _ := filepath.Glob(d.path("running-*.txt"))
	for _, name := range names {
		var pid int
		if _, err := fmt.Sscanf(filepath.Base(name), runningFile, &pid); err != nil || outfile.Alive(pid) {
			continue
		}
		data, err := os.ReadFile(name)
		if err != nil || !strings.Contains(string(data), "\ngoroutine ") {
			os.Remove(name)
			continue
		}
		to := d.path(crashFile, time.Now().Format("20060102-150405"), pid)
		if os.Rename(name, to) == nil {
			fmt.Fprintf(stderr, "cowl: an earlier run crashed; its report lies in %s\n", to)
		}
	}
}

// head says what ran.
func head() string { return fmt.Sprintf("%s\n%q\n\n", version(), os.Args) }

// crashed writes the report of a fault, says where it lies and returns the exit
// status.
func crashed(f *fault.Fault, stderr io.Writer) int {
	where := "no report could be written"
	if dir, err := crashFolder(); err == nil {
		name := dir.path(crashFile, time.Now().Format("20060102-150405"), os.Getpid())
		if os.WriteFile(name, []byte(fmt.Sprintf("%s%v\n\n%s", head(), f, f.Stack)), 0o600) == nil {
			where = "the report lies in " + name
		}
	}
	first, _, _ := strings.Cut(f.Error(), "\n")
	fmt.Fprintf(stderr, "cowl: a fault of the program, not of yours: %.300s (%s); %s\n", first, version(), where)
	return console.ExitFault
}
