package console

import (
	"fmt"
	"io"
	"sync"
	"time"
)

// Progress is how far something has come.
type Progress struct {
	Stage    string  // what is being done
	Share    float64 // 0..1 of the stage
	Residual float64 // unbalanced force over the weight; 0: not known yet
}

// Line is a line that is written over again and again on a terminal.
type Line struct {
	w    io.Writer // nil: nobody watches
	mu   sync.Mutex
	last time.Time
}

// NewLine returns a line on w, which stays empty where w is no terminal.
func NewLine(w io.Writer, quiet bool) *Line {
	if quiet {
		return &Line{}
	}
	return &Line{w: Terminal(w)}
}

// Show writes p, at most ten times a second.
func (l *Line) Show(p Progress) {
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
		text = fmt.Sprintf("%s: unbalanced force %.4f of the weight, %.0f %% of the step limit", p.Stage, p.Residual,
			p.Share*100)
	}
	fmt.Fprintf(l.w, "\r\x1b[K%s", text)
}

// Clear wipes the line.
func (l *Line) Clear() {
	if l.w != nil {
		fmt.Fprint(l.w, "\r\x1b[K")
	}
}
