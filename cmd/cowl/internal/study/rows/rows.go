// Package rows computes the rows of a study: many independent pieces of work
// that take seconds each, on a few cores or on many machines. A row that is
// done is kept in a folder under a hash of its input and is never computed
// again; a row that fails is marked and the rest goes on; Ctrl-C loses only
// what is on the bench. The package knows nothing of cloth. Start at Run.
package rows

import (
	"context"
	"fmt"
	"sync"
	"time"

	"cowl/cmd/cowl/internal/outfile"
	"cowl/sim/fault"
)

// Row is one piece of work.
type Row struct {
	Key  string // from KeyOf: equal input, equal key
	Name string // for messages
}

// Made is what the work on a row gives.
type Made[T any] struct {
	Value T
	Files map[string][]byte // kept beside the value, by their ending: "jpg"
}

// Result is what is known of a row.
type Result[T any] struct {
	Value  T
	Failed string // why there is no value; empty: there is one
	Kept   bool   // found in the store, not computed now
	Done   bool   // false: not reached, or left to another part
}

// Options say how rows are computed. The zero Options compute all on one core.
type Options struct {
	Jobs  int // rows at a time; below 1: 1
	Part  Part
	Here  func(int) bool   // whether a row is computed in this run; nil: as Part deals them
	Retry bool             // compute failed rows of this run again
	Tell  func(Pace)       // after every row, one call at a time; may be nil
	Warn  func(string)     // of a row that is kept but no good; may be nil
	Clock func() time.Time // nil: time.Now
}

// Run returns one result a row, in their order: from the store what is kept
// there, computed by work what is not. Rows of the same key are computed once.
// An error of work and a panic mark the row as failed. The error of Run is that
// of the store, or of ctx; results that were finished by then are in the store
// and in what it returns.
func Run[T any](ctx context.Context, s Store, rows []Row, o Options, work func(context.Context, int) (Made[T],
	error)) ([]Result[T], error) {
	results := make([]Result[T], len(rows))
	if err := outfile.Recover(string(s)); err != nil {
		return results, err
	}
	todo, err := look(s, rows, o, results)
	if err != nil {
		return results, err
	}
	b := newBench(o, o.asked(rows), len(todo))
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	var wg sync.WaitGroup
	next := make(chan int)
	for range max(o.Jobs, 1) {
		wg.Go(func() {
			defer fault.Tell()
			for i := range next {
				r, err := one(ctx, s, rows[i], i, work)
				if err != nil {
					stop(err)
					return
				}
				results[i] = r
				b.done(r.Failed != "")
			}
		})
	}
	hand(ctx, next, todo)
	wg.Wait()
	share(rows, results)
	return results, context.Cause(ctx)
}

// asked counts the rows that the run is about.
func (o Options) asked(rows []Row) int {
	if o.Here == nil {
		return len(rows)
	}
	n := 0
	for i := range rows {
		if o.Here(i) {
			n++
		}
	}
	return n
}

// Kept returns what the store holds of rows, computing nothing; what is no good is
// told to warn.
func Kept[T any](s Store, rows []Row, warn func(string)) ([]Result[T], error) {
	results := make([]Result[T], len(rows))
	_, err := look(s, rows, Options{Warn: warn}, results)
	return results, err
}

// hand gives the rows out until all are, or ctx ends.
func hand(ctx context.Context, next chan<- int, todo []int) {
	defer close(next)
	for _, i := range todo {
		select {
		case next <- i:
		case <-ctx.Done():
			return
		}
	}
}

// look fills in what is kept and lists what is to be computed here: the first
// of the rows of one key, if it belongs to this part or run.
func look[T any](s Store, rows []Row, o Options, results []Result[T]) (todo []int, err error) {
	first := map[string]bool{}
	n := 0
	for i, row := range rows {
		if first[row.Key] {
			continue
		}
		first[row.Key] = true
		mine := o.Part.Has(n)
		if o.Here != nil {
			mine = o.Here(i)
		}
		n++
		r, kept, err := load[T](s, row, o.Warn)
		switch {
		case err != nil:
			return nil, err
		case kept && !(mine && o.Retry && r.Failed != ""):
			results[i] = Result[T]{Value: r.Value, Failed: r.Failed, Kept: true, Done: true}
		case mine:
			todo = append(todo, i)
		}
	}
	share(rows, results)
	return todo, nil
}

// share gives rows of the same key the same result.
func share[T any](rows []Row, results []Result[T]) {
	by := map[string]Result[T]{}
	for i, row := range rows {
		if results[i].Done {
			by[row.Key] = results[i]
		}
	}
	for i, row := range rows {
		if r, ok := by[row.Key]; ok {
			results[i] = r
		}
	}
}

// one computes a row and keeps it. A row cut short by ctx is not kept.
func one[T any](ctx context.Context, s Store, row Row, i int, work func(context.Context, int) (Made[T],
	error)) (Result[T], error) {
	made, err := guarded(ctx, i, work)
	if cause := context.Cause(ctx); cause != nil {
		return Result[T]{}, cause
	}
	r := record[T]{Key: row.Key, Name: row.Name, Value: made.Value}
	if err == nil {
		err = check(&made.Value)
	}
	if err != nil {
		r.Failed, r.Value = err.Error(), *new(T)
	}
	if err := keep(s, r, made.Files); err != nil {
		return Result[T]{}, err
	}
	return Result[T]{Value: r.Value, Failed: r.Failed, Done: true}, nil
}

// guarded turns a panic of work into an error, so that one bad row does not
// take the night's other rows with it.
func guarded[T any](ctx context.Context, i int, work func(context.Context, int) (Made[T], error)) (made Made[T],
	err error) {
	defer func() {
		if p := recover(); p != nil {
			f := fault.Of(p)
			made, err = Made[T]{}, fmt.Errorf("fault of the program: %v\n%s", f, f.Stack)
		}
	}()
	return work(ctx, i)
}

// Pace says how far a study has come.
type Pace struct {
	Rows   int           // of the study
	Mine   int           // to be computed in this run
	Done   int           // of those
	Failed int           // of those that are done
	Left   time.Duration // at the mean pace so far; 0 until a row is done
}
