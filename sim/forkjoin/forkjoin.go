// Package forkjoin shares the two halves of a short task between the caller and one
// helper, for tasks of some ten microseconds, where waking a goroutine costs
// more than the work. The split is always in two, so what is computed does not
// depend on whether the helper came in time.
package forkjoin

import (
	"runtime"
	"sync/atomic"

	"cowl/sim/fault"
)

// Pair is the caller and perhaps a helper. The zero value works alone; so does
// nil. One goroutine calls Both at a time.
type Pair struct {
	helped bool
	work   func(half int)
	ticket atomic.Uint64 // number of the task × 4 + a bit for each half that is given out
	done   atomic.Int32  // halves finished
	alive  atomic.Bool   // a helper is watching for tickets
	broken fault.Carrier // a panic of either half
}

// New returns a pair with a helper if helped is set and there is a second core.
func New(helped bool) *Pair { return &Pair{helped: helped && runtime.GOMAXPROCS(0) > 1} }

// patience is how often an idle helper looks for work before it goes home:
// about half a millisecond.
const patience = 200_000

// Both does work(0) and work(1), perhaps at the same time, and returns when both are done.
func (c *Pair) Both(work func(half int)) {
	if c == nil || !c.helped {
		work(0)
		work(1)
		return
	}
	c.work = work
	c.done.Store(0)
	c.ticket.Store((c.ticket.Load()>>2 + 1) << 2)
	if !c.alive.Load() {
		c.alive.Store(true)
		go c.help()
	}
	for c.one(0) {
	}
	for spins := 0; c.done.Load() < 2; spins++ {
		if spins > 10_000 {
			runtime.Gosched()
		}
	}
	c.broken.Raise()
}

// one takes a half that nobody has begun and does it, its own if that is free: what a half
// works on lies near the core that did it last. It returns false if there is none.
func (c *Pair) one(own int) bool {
	t := c.ticket.Load()
	half := own
	if t>>half&1 != 0 {
		half = 1 - own
	}
	switch {
	case t>>half&1 != 0 || t>>2 == 0:
		return false
	case !c.ticket.CompareAndSwap(t, t|1<<half):
		return c.one(own)
	}
	c.half(half)
	c.done.Add(1)
	return true
}

// half does one half; a panic of it waits for Both to end.
func (c *Pair) half(which int) {
	defer c.broken.Catch()
	c.work(which)
}

// help takes halves until there has been none for a while.
func (c *Pair) help() {
	for idle := 0; idle < patience; idle++ {
		if c.one(1) {
			idle = 0
		}
	}
	c.alive.Store(false)
}

// Half returns the range of n things that belong to a half, 0 or 1.
func Half(n, half int) (lo, hi int) {
	if half == 0 {
		return 0, n / 2
	}
	return n / 2, n
}
