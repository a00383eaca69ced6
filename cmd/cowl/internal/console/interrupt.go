package console

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"sync/atomic"
	"syscall"

	"cowl/sim/fault"
)

// heeding counts the sections that see a context end by themselves: what hangs
// cloth, so that finished rows are kept, and what puts files in place.
var heeding atomic.Int32

// Heed begins such a section; what it returns ends it.
func Heed() (done func()) {
	heeding.Add(1)
	return func() { heeding.Add(-1) }
}

// Serve does work until it ends or is called off. The first Ctrl-C or SIGTERM ends
// the program at once, but within a section that heeds its context only that; the
// second ends it in any state.
func Serve(work func(context.Context) int) int {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	asked := make(chan os.Signal, 2)
	signal.Notify(asked, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(asked)
	go watch(asked, cancel, os.Stderr, os.Exit)
	return work(ctx)
}

// watch ends the program as asked for.
func watch(asked <-chan os.Signal, cancel func(), stderr io.Writer, exit func(int)) {
	defer fault.Tell()
	again := false
	for range asked {
		heeded := heeding.Load() > 0 // before the section hears of it, and ends
		cancel()
		switch {
		case again:
			fmt.Fprintln(stderr, "\ncowl: cancelled at once")
			exit(ExitCancelled)
		case !heeded:
			fmt.Fprintln(stderr, "\ncowl: cancelled, nothing written")
			exit(ExitCancelled)
		}
		again = true
	}
}
