package rows

import (
	"sync"
	"time"
)

// bench counts rows as they come off it.
type bench struct {
	mu    sync.Mutex
	pace  Pace
	clock func() time.Time
	start time.Time
	tell  func(Pace)
}

func newBench(o Options, rows, mine int) *bench {
	b := &bench{pace: Pace{Rows: rows, Mine: mine}, clock: o.Clock, tell: o.Tell}
	if b.clock == nil {
		b.clock = time.Now
	}
	b.start = b.clock()
	if b.tell != nil {
		b.tell(b.pace)
	}
	return b
}

// done counts one row and tells the pace.
func (b *bench) done(failed bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.pace.Done++
	if failed {
		b.pace.Failed++
	}
	each := b.clock().Sub(b.start) / time.Duration(b.pace.Done)
	b.pace.Left = each * time.Duration(b.pace.Mine-b.pace.Done)
	if b.tell != nil {
		b.tell(b.pace)
	}
}
