package drape

import (
	"context"
	"sync"
	"sync/atomic"

	"cowl/mesh"
	"cowl/mesh/draft"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Live is a drape that one watches and changes while it falls. It walks on a
// goroutine of its own, which sleeps while the cloth is at rest. All methods
// may be called from any goroutine; all but Close return at once. Nobody having
// touched it, the cloth comes to rest in the same bits as that of Hang.
type Live struct {
	ctx    context.Context
	cancel context.CancelFunc
	done   chan struct{} // closed when the walking goroutine has ended
	wake   chan struct{} // holds one token while there are orders

	mu     sync.Mutex
	orders []func(*walker) // guarded by mu; what the walking goroutine is to do next
	job    *Job            // guarded by mu; the last Change not yet looked at

	newest  atomic.Pointer[snapshot]
	readers sync.WaitGroup // readings beside the walk
	wanted  atomic.Bool    // the newest snapshot has been fetched
}

// Stages of a Live.
const (
	StagePlacing  = "placing"
	StageLetting  = "letting go"
	StageSettling = "settling"
	StageRest     = "at rest"
	StageStopped  = "stopped" // not at rest, and no longer on the way
)

// Frame is one snapshot of a Live. Sheet.Pos and the three fields belong to the
// caller; everything else is shared and must not be written to.
type Frame struct {
	Serial   uint64     // grows with every snapshot of any Live; 0 is none
	Job      Job        // what is hanging, with the seed of the hand that placed it
	Hung     draft.Cowl // the piece as it hangs: of Job, taken up or let down to set its edge
	Stage    string     // one of the stages above
	Carried  bool       // over from another cut or cloth, not placed from the flat
	Refining bool       // at rest, and carried on to finer lattices beside what is shown
	Residual float64
	Sheet    mesh.Sheet // cut cloth; empty until it has been laid
	Strain   []float64  // len = vertices; the yarn strain of largest size, > 0 stretched
	Shear    []float64  // rad, len = vertices; > 0 where warp and weft have closed
	Clear    []float64  // m, len = vertices; distance from the form, 0 on a free hang
	Outcome  Outcome    // figures of one placing, valid if Read is true
	Reading  fold.Reading
	Pulls    map[string]float64 // N, of all pins of one name together, as the outcome
	Read     bool
	Err      error // why the last Change could not be done; the drape before it goes on hanging
}

// LivePin is a pin of a Live.
type LivePin struct {
	Name string
	Flat r2.Vec // m, place on the flat piece
	At   r3.Vec // m, where it holds the cloth
	Own  bool   // set by Pin, not by the draft
}

// NewLive begins to hang j.
func NewLive(j Job) *Live {
	ctx, cancel := context.WithCancel(context.Background())
	l := &Live{ctx: ctx, cancel: cancel, done: make(chan struct{}), wake: make(chan struct{}, 1)}
	l.newest.Store(&snapshot{Frame: Frame{Serial: serials.Add(1), Job: j, Stage: StagePlacing}})
	l.wanted.Store(true)
	w := newWalker(l)
	l.Change(j)
	go w.run()
	return l
}

// Change goes over to j: from the present drape where that is possible, else
// by placing anew. Of several changes in a row only the last counts.
func (l *Live) Change(j Job) {
	l.mu.Lock()
	l.job = &j
	l.mu.Unlock()
	l.call()
}

// Grab takes hold of the cloth at a place of the flat piece (m) and draws it
// softly to at (m). Grab again moves the hand. A place off the cloth is no hold.
func (l *Live) Grab(flat r2.Vec, at r3.Vec) { l.order(func(w *walker) { w.grab(flat, at) }) }

// Drop lets go what was grabbed.
func (l *Live) Drop() { l.order((*walker).drop) }

// Pin sets a pin of one's own at a place of the flat piece (m), which is drawn
// to at (m) and held. A pin of one's own within a few millimetres is moved; a
// pin of the draft that was taken out is put back.
func (l *Live) Pin(flat r2.Vec, at r3.Vec) { l.order(func(w *walker) { w.pin(flat, at) }) }

// Unpin takes out the pin nearest to a place of the flat piece (m), one's own
// or the draft's.
func (l *Live) Unpin(flat r2.Vec) { l.order(func(w *walker) { w.unpin(flat) }) }

// Pins returns all pins of the newest snapshot. The slice must not be written to.
func (l *Live) Pins() []LivePin { return l.newest.Load().pins }

// Close stops the walk and waits for its goroutines. Calls after Close do nothing.
func (l *Live) Close() {
	l.cancel()
	<-l.done
}

// order hands something to do to the walking goroutine.
func (l *Live) order(do func(*walker)) {
	if l.ctx.Err() != nil {
		return
	}
	l.mu.Lock()
	l.orders = append(l.orders, do)
	l.mu.Unlock()
	l.call()
}

// call wakes the walking goroutine.
func (l *Live) call() {
	select {
	case l.wake <- struct{}{}:
	default:
	}
}
