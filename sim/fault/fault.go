// Package fault takes the panic of a goroutine to where it can be told. A panic that
// nobody recovers ends the program in the middle of a word, and a night's work with
// it. Whoever waits for goroutines gives them a Carrier; a goroutine that nobody
// waits for defers Tell. Start at Carrier.
package fault

import (
	"fmt"
	"runtime/debug"
	"sync"
)

// Fault is a panic and where it came from.
type Fault struct {
	Value any
	Stack []byte
}

// Error says what the panic said.
func (f *Fault) Error() string { return fmt.Sprint(f.Value) }

// Of makes a Fault of what recover has returned, with the stack of the panic; one
// that was carried here keeps its own.
func Of(recovered any) *Fault {
	if f, ok := recovered.(*Fault); ok {
		return f
	}
	return &Fault{recovered, debug.Stack()}
}

// Carrier takes the first panic of some goroutines to who waits for them. The zero
// Carrier is ready.
type Carrier struct {
	mu    sync.Mutex
	first *Fault
}

// Catch is deferred in each of the goroutines.
func (c *Carrier) Catch() {
	if r := recover(); r != nil {
		c.mu.Lock()
		defer c.mu.Unlock()
		if c.first == nil {
			c.first = Of(r)
		}
	}
}

// Raise panics with what was caught, once the goroutines have ended.
func (c *Carrier) Raise() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.first != nil {
		panic(c.first)
	}
}

// Teller is told the panics of goroutines that nobody waits for, and is to end the
// program. Nil: they panic on. It is set before any is started.
var Teller func(*Fault)

// Tell is deferred in a goroutine that nobody waits for.
func Tell() {
	if r := recover(); r != nil {
		if Teller == nil {
			panic(r)
		}
		Teller(Of(r))
	}
}
