package study

import (
	"fmt"
	"io"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
)

// paceLine tells how far a study has come: over and over on a terminal, a line
// a minute in the log of a batch job.
type paceLine struct {
	w    io.Writer // nil: nobody is told
	live bool
	last time.Time
	says string // what is done of so many
}

func newPaceLine(w io.Writer, quiet bool, says string) *paceLine {
	if quiet {
		return &paceLine{}
	}
	if t := console.Terminal(w); t != nil {
		return &paceLine{w: t, live: true, last: time.Now(), says: says}
	}
	return &paceLine{w: w, last: time.Now(), says: says}
}

// idle reports whether nothing is to be written now.
func (l *paceLine) idle() bool {
	return l.w == nil || !l.live && time.Since(l.last) < time.Minute
}

// show writes p.
func (l *paceLine) show(p rows.Pace) {
	if p.Mine == 0 || l.idle() {
		return
	}
	text := fmt.Sprintf("%d of %d %s", p.Done, p.Mine, l.says)
	if kept := p.Rows - p.Mine; kept > 0 {
		text += fmt.Sprintf(", %d kept", kept)
	}
	if p.Failed > 0 {
		text += fmt.Sprintf(", %d failed", p.Failed)
	}
	if p.Left > 0 {
		text += ", about " + spoken(p.Left) + " left"
	}
	l.write(text)
}

// write writes the line.
func (l *paceLine) write(text string) {
	l.last = time.Now()
	if l.live {
		fmt.Fprintf(l.w, "\r\x1b[K%s", text)
		return
	}
	fmt.Fprintln(l.w, text)
}

// clear wipes the line.
func (l *paceLine) clear() {
	if l.w != nil && l.live {
		fmt.Fprint(l.w, "\r\x1b[K")
	}
}

// spoken says a time as people would.
func spoken(d time.Duration) string {
	switch {
	case d < 90*time.Second:
		return fmt.Sprintf("%.0f s", d.Seconds())
	case d < 90*time.Minute:
		return fmt.Sprintf("%.0f min", d.Minutes())
	}
	return fmt.Sprintf("%.1f h", d.Hours())
}
