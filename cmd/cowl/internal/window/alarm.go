//go:build cgo

package window

import (
	"sync"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// alarm wakes the thread of the window, which sleeps while nothing happens. The zero
// alarm does nothing.
type alarm struct {
	mu sync.Mutex
	on bool // there is a window
}

// set says whether there is a window to be woken.
func (l *alarm) set(on bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.on = on
}

// ring may be called from any goroutine.
func (l *alarm) ring() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.on {
		glfw.PostEmptyEvent()
	}
}
