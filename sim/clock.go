package sim

import "time"

// Work is a part of the work of a step.
type Work int

// The parts of a step, in their order.
const (
	Listing Work = iota // layers that may touch are looked for and woken
	Yarns               // pull, shear, bending and friction of the cloth, pins and tapes
	Layers              // cloth on cloth
	Balance             // the form, masses and the coarse level
	Moving
	works
)

// Clock tells where the time of walks goes. The two halves of a step do alike, so it
// times the first; what that waits for the other counts with what comes next. One walk
// at a time.
type Clock struct {
	Spent [works]time.Duration
	last  time.Time
}

// start begins a step; nil times nothing.
func (c *Clock) start() {
	if c != nil {
		c.last = time.Now()
	}
}

// lap adds what has passed since the last lap to a part.
func (c *Clock) lap(w Work) {
	if c == nil {
		return
	}
	now := time.Now()
	c.Spent[w] += now.Sub(c.last)
	c.last = now
}
