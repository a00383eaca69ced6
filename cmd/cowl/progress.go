package main

import (
	"fmt"
	"io"
	"sync"
	"time"

	"cowl/sim/drape"
)

// progress is a line that is written over again and again on a terminal.
type progress struct {
	w    io.Writer // nil: nobody watches
	mu   sync.Mutex
	last time.Time
}

// newProgress returns a line on w, which stays empty where w is no terminal.
func newProgress(w io.Writer, quiet bool) *progress {
	if quiet {
		return &progress{}
	}
	return &progress{w: terminal(w)}
}

// show writes p, at most ten times a second.
func (l *progress) show(p drape.Progress) {
	if l.w == nil {
		return
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if time.Since(l.last) < 100*time.Millisecond {
		return
	}
	l.last = time.Now()
	text := fmt.Sprintf("%s, %.0f %%", p.Stage, p.Share*100)
	if p.Residual > 0 {
		text = fmt.Sprintf("%s: unbalanced force %.4f of the weight, %.0f %% of the step limit", p.Stage, p.Residual, p.Share*100)
	}
	fmt.Fprintf(l.w, "\r\x1b[K%s", text)
}

// clear wipes the line.
func (l *progress) clear() {
	if l.w != nil {
		fmt.Fprint(l.w, "\r\x1b[K")
	}
}
