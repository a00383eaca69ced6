//go:build unix

// Package worked tells tests how much a function takes, whatever else the machine does.
// Start at Watched.
package worked

import (
	"runtime"
	"syscall"
	"testing"
	"time"
)

// Time is how long the processor has worked for this program so far.
func Time(t testing.TB) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// Watched runs f and returns the time of the processor, and by how many bytes the heap in
// use grew at most, looked at every millisecond.
func Watched(t testing.TB, f func()) (time.Duration, uint64) {
	t.Helper()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	before, most, done := m.HeapAlloc, m.HeapAlloc, make(chan bool)
	start := Time(t)
	go func() {
		defer close(done)
		f()
	}()
	for {
		select {
		case <-done:
			return Time(t) - start, most - before
		case <-time.After(time.Millisecond):
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapAlloc)
		}
	}
}
