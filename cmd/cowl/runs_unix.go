//go:build unix

package main

import (
	"errors"
	"syscall"
)

// runs reports whether there is a process of that number.
func runs(pid int) bool { return !errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }
