package window

import (
	"runtime"
	"syscall"
)

// behind is by how much the walks stand back behind drawing (nice value).
const behind = 5

// giveWay makes the goroutine that calls it, a walk, give way to drawing where
// both want the same core. Its thread ends with it.
func giveWay() {
	runtime.LockOSThread()
	_ = syscall.Setpriority(syscall.PRIO_PROCESS, syscall.Gettid(), behind) // without it drawing is slower, no more
}
