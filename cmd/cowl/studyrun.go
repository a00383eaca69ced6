package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"cowl/cmd/cowl/internal/trial"

	"golang.org/x/term"
)

// workshop computes the cases of one study folder.
type workshop struct {
	dir    string
	flags  benchFlags
	part   trial.Part
	c      console
	hanger *hanger
	hang   func(context.Context, studyCase, int) (trial.Made[hungRow], error) // one placing of a case
}

func newWorkshop(dir string, f benchFlags, p trial.Part, c console) *workshop {
	h := newHanger(c)
	return &workshop{dir: dir, flags: f, part: p, c: c, hanger: h, hang: h.hang}
}

// store is where finished rows are kept.
func (w *workshop) store() trial.Store { return trial.Store(filepath.Join(w.dir, "rows")) }

// hangAll hangs what is not yet kept of the cases and returns what is known of
// each. Called off, it says what is kept and returns the exit status.
func (w *workshop) hangAll(ctx context.Context, cases []studyCase) ([]caseResult, error) {
	rows, at := rowsOf(cases)
	line := newPaceLine(w.c.err, w.flags.Quiet || w.flags.JSON)
	results, err := trial.Run(ctx, w.store(), rows, trial.Options{
		Jobs: w.flags.jobs(), Part: w.part, Retry: w.flags.Retry, Tell: line.show,
	}, func(ctx context.Context, i int) (trial.Made[hungRow], error) {
		return w.hang(ctx, cases[at[i].of], at[i].placing)
	})
	line.clear()
	if errors.Is(err, context.Canceled) {
		done := 0
		for _, r := range results {
			if r.Done {
				done++
			}
		}
		fmt.Fprintf(w.c.err, "cowl: cancelled; %d of %d drapes are kept in %s, the same command goes on from there\n", done, len(rows), w.dir)
		return nil, silent{exitCancelled}
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", errCannotSave, err)
	}
	return collect(cases, results, at, w.store()), nil
}

// paceLine tells how far a study has come: over and over on a terminal, a line
// a minute in the log of a batch job.
type paceLine struct {
	w    io.Writer // nil: nobody is told
	live bool
	last time.Time
}

func newPaceLine(w io.Writer, quiet bool) *paceLine {
	l := &paceLine{w: w, last: time.Now()}
	if quiet {
		l.w = nil
	}
	f, ok := w.(*os.File)
	l.live = ok && term.IsTerminal(int(f.Fd()))
	return l
}

// show writes p.
func (l *paceLine) show(p trial.Pace) {
	if l.w == nil || p.Mine == 0 || !l.live && time.Since(l.last) < time.Minute {
		return
	}
	l.last = time.Now()
	text := fmt.Sprintf("%d of %d drapes hung", p.Done, p.Mine)
	if kept := p.Rows - p.Mine; kept > 0 {
		text += fmt.Sprintf(", %d kept or left to other parts", kept)
	}
	if p.Failed > 0 {
		text += fmt.Sprintf(", %d failed", p.Failed)
	}
	if p.Left > 0 {
		text += ", about " + spoken(p.Left) + " left"
	}
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
