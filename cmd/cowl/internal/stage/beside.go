package stage

import (
	"sync"

	"cowl/sim/fault"
)

// beside has something made on another goroutine, and returns what waits for it.
func beside[T any](work func() T) (wait func() T) {
	var made T
	var broken fault.Carrier
	var wg sync.WaitGroup
	wg.Go(func() {
		defer broken.Catch()
		made = work()
	})
	return func() T {
		wg.Wait()
		broken.Raise()
		return made
	}
}
