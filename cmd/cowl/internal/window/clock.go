package window

import "time"

// clock takes the time of pictures; the first few, in which shaders and letters
// are made, do not count.
type clock struct {
	want, drawn  int
	start, ready time.Time
	from         time.Time // of the first picture that counts
	work         time.Duration
	worst        time.Duration
	waiting      bool // what is drawn is not yet what is to be timed
}

// warmUp pictures are drawn before the clock starts.
const warmUp = 20

func newClock(pictures int) *clock { return &clock{want: pictures} }

func (c *clock) done() bool { return c.want > 0 && c.drawn >= c.want+warmUp }

func (c *clock) begin() {
	c.start = time.Now()
	if c.drawn == warmUp {
		c.from = c.start
	}
}

// busy marks the end of the work of this thread.
func (c *clock) busy() { c.ready = time.Now() }

func (c *clock) end() {
	if c.drawn >= warmUp {
		c.work += c.ready.Sub(c.start)
		c.worst = max(c.worst, time.Since(c.start))
	}
	if !c.waiting {
		c.drawn++
	}
}

func (c *clock) timing() Timing {
	n := float64(max(c.drawn-warmUp, 1))
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	return Timing{Pictures: c.drawn - warmUp, Mean: ms(time.Since(c.from)) / n, Worst: ms(c.worst), Busy: ms(c.work) / n}
}
