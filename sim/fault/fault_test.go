package fault

import (
	"strings"
	"sync"
	"testing"
)

func breaks() { panic("broken") }

// The panic of a goroutine comes to who waits for it, with its own stack, through
// several hands.
func TestCarrier(t *testing.T) {
	var got any
	func() {
		defer func() { got = recover() }()
		var outer Carrier
		var wg sync.WaitGroup
		wg.Go(func() {
			defer outer.Catch()
			var inner Carrier
			var wg sync.WaitGroup
			for range 3 {
				wg.Go(func() {
					defer inner.Catch()
					breaks()
				})
			}
			wg.Wait()
			inner.Raise()
		})
		wg.Wait()
		outer.Raise()
	}()
	if f := Of(got); f.Error() != "broken" || !strings.Contains(string(f.Stack), "fault.breaks") {
		t.Errorf("carried %v from\n%s, want broken, from breaks", f, f.Stack)
	}
	var none Carrier
	func() { defer none.Catch() }()
	none.Raise()
}

// A goroutine that nobody waits for tells the teller.
func TestTell(t *testing.T) {
	told := make(chan *Fault, 1)
	Teller = func(f *Fault) { told <- f }
	defer func() { Teller = nil }()
	go func() {
		defer Tell()
		breaks()
	}()
	if f := <-told; f.Value != "broken" || !strings.Contains(string(f.Stack), "fault.breaks") {
		t.Errorf("told %v from\n%s, want broken, from breaks", f, f.Stack)
	}
}
