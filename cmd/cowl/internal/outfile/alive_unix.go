//go:build unix

package outfile

import (
	"errors"
	"os"
	"syscall"
	"time"
)

// Alive reports whether there is a process of that number.
func Alive(pid int) bool { return !errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }

// lock keeps other runs of cowl from writing to a folder at the same time, and returns
// what lets them again. Where that cannot be, or another takes long, it goes without.
func lock(dir string) (unlock func()) {
	f, err := os.Open(dir)
	if err != nil {
		return func() {}
	}
	for range 500 {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		if !errors.Is(err, syscall.EWOULDBLOCK) {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	return func() { f.Close() }
}
