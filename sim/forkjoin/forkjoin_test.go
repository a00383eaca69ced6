package forkjoin

import (
	"sync/atomic"
	"testing"
)

// Both does each half once a call, alone and helped, and returns only when both
// are done.
func TestBoth(t *testing.T) {
	for name, c := range map[string]*Pair{"nil": nil, "zero": {}, "alone": New(false), "helped": New(true)} {
		var sum [2]int // unguarded: the race detector sees a half done twice at a time
		var calls atomic.Int64
		work := func(half int) { sum[half]++; calls.Add(1) }
		for n := 1; n <= 5000; n++ {
			c.Both(work)
			if sum[0] != n || sum[1] != n || calls.Load() != int64(2*n) {
				t.Fatalf("%s: after %d calls halves were done %v times, %d in all", name, n, sum, calls.Load())
			}
		}
	}
}
