package drape

import (
	"context"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// coarse is a job on the coarsest lattice: a second or two to rest.
func coarse(t testing.TB, fabric string) Job { return job(t, 0.11, 0.020, fabric) }

// until fetches frames until one pleases, and fails the test after a while.
func until(t *testing.T, l *Live, what string, pleases func(*Frame) bool) Frame {
	t.Helper()
	var f Frame
	for end := time.Now().Add(15 * time.Minute); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if l.Frame(&f); pleases(&f) {
			return f
		}
	}
	t.Fatalf("no frame with %s; stage %q, residual %.2g, error %v", what, f.Stage, f.Residual, f.Err)
	return f
}

// resting returns the first frame at rest after the given serial.
func resting(t *testing.T, l *Live, after uint64) Frame {
	t.Helper()
	f := until(t, l, "rest", func(f *Frame) bool {
		return f.Serial > after && (f.Stage == StageRest || f.Stage == StageStopped)
	})
	if f.Stage != StageRest || f.Outcome.Status != sim.Settled || !f.Read {
		t.Fatalf("ended %q, %s, read %t (%s), want at rest and settled", f.Stage, f.Outcome.Status, f.Read, f.Outcome.Warning)
	}
	return f
}

// sameBits fails the test unless two sheets lie at the same bits.
func sameBits(t *testing.T, got, want []r3.Vec) {
	t.Helper()
	if len(got) == 0 || len(got) != len(want) {
		t.Fatalf("%d vertices, want %d", len(got), len(want))
	}
	for i, p := range got {
		q := want[i]
		if math.Float64bits(p.X) != math.Float64bits(q.X) || math.Float64bits(p.Y) != math.Float64bits(q.Y) ||
			math.Float64bits(p.Z) != math.Float64bits(q.Z) {
			t.Fatalf("vertex %d lies at %v, want %v", i, p, q)
		}
	}
}

// Watched but not touched, the cloth comes to rest in the bits of Hang, whether it
// falls by itself or a hand lays folds.
func TestLiveSameBits(t *testing.T) {
	for _, c := range []struct{ folds, laid int }{{0, 0}, {Auto, 2}} {
		if c.laid > 0 && testing.Short() {
			continue // minutes under the race detector
		}
		j := coarse(t, limp)
		j.Folds = c.folds
		l := NewLive(j)
		defer l.Close()
		f := resting(t, l, 0)
		d, err := Hang(context.Background(), j)
		if err != nil {
			t.Fatal(err)
		}
		sameBits(t, f.Sheet.Pos, d.Sheet().Pos)
		if o := f.Outcome; o.Iterations != d.Steps || o.Laid != c.laid {
			t.Errorf("folds %d: %d steps, %d folds laid, want %d and %d", c.folds, o.Iterations, o.Laid, d.Steps, c.laid)
		}
	}
}

// The cloth is taken up as it hangs until its edge rests where it is wanted; a depth
// at which it rests already moves nothing; as it falls, it is let down again (on 16 mm
// what is let down came to rest 20 mm higher than it fell first). Another number of
// folds is laid from the flat.
func TestLiveSetsEdge(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	j := job(t, 0.11, 0.016, limp)
	j.Folds = Auto
	l := NewLive(j)
	defer l.Close()
	f := resting(t, l, 0)
	fell := f.Outcome.EdgeBelowNeck
	j.SetEdge = true
	for _, up := range []float64{0.012, 0.030} { // the last by more than a carried drape is off a fresh one
		j.EdgeDepth = fell - up
		l.Change(j)
		f = resting(t, l, f.Serial)
		o := f.Outcome
		if math.Abs(o.EdgeBelowNeck-j.EdgeDepth) > EdgeNear || o.Taken <= 0 || o.Taken != f.Hung.Taken ||
			f.Job.Cowl.Taken != 0 || !f.Carried {
			t.Errorf("wanted %.1f mm below the neck: rests at %.1f mm, taken up %.1f mm of %.1f and %.1f, carried %t; want "+
				"it there within 5 mm by taking up what hangs",
				j.EdgeDepth*1000, o.EdgeBelowNeck*1000, o.Taken*1000, f.Hung.Taken*1000, f.Job.Cowl.Taken*1000, f.Carried)
		}
	}
	j.EdgeDepth = f.Outcome.EdgeBelowNeck
	l.Change(j)
	same := until(t, l, "the same rest", func(g *Frame) bool { return g.Job.EdgeDepth == j.EdgeDepth })
	if same.Stage != StageRest {
		t.Errorf("wanted where it rests: %q, want at rest", same.Stage)
	}
	sameBits(t, same.Sheet.Pos, f.Sheet.Pos)
	j.SetEdge = false
	l.Change(j)
	if f = resting(t, l, same.Serial); f.Outcome.Taken != 0 || f.Outcome.EdgeBelowNeck < same.Outcome.EdgeBelowNeck {
		t.Errorf("let fall: taken up %.1f mm, %.1f mm below the neck, want 0 and deeper than %.1f", f.Outcome.Taken*1000,
			f.Outcome.EdgeBelowNeck*1000, same.Outcome.EdgeBelowNeck*1000)
	}
	j.Folds = 1
	l.Change(j)
	if f = resting(t, l, f.Serial); f.Outcome.Laid != 1 || f.Carried {
		t.Errorf("one fold: %d laid, carried %t, want 1 laid from the flat", f.Outcome.Laid, f.Carried)
	}
}

// vertex returns the vertex of the sheet nearest to a place of the flat piece.
func vertex(f *Frame, flat r2.Vec) int {
	best := 0
	for v, q := range f.Sheet.Flat {
		if r2.Norm(r2.Sub(q, flat)) < r2.Norm(r2.Sub(f.Sheet.Flat[best], flat)) {
			best = v
		}
	}
	return best
}

// own counts the pins of one's own.
func own(pins []LivePin) int {
	n := 0
	for _, p := range pins {
		if p.Own {
			n++
		}
	}
	return n
}

// The hand draws the cloth along and, letting go, lets it fall back. A pin
// holds its place; taken out, it holds no more. A pin of the draft that is
// taken out lets the seam go, put back it holds it again.
func TestLiveHand(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	j := coarse(t, limp)
	l := NewLive(j)
	defer l.Close()
	rest := resting(t, l, 0)
	flat := r2.Vec{Y: j.Cowl.FoldY - 0.25}
	v := vertex(&rest, flat)
	from := rest.Sheet.Pos[v]
	to := r3.Add(from, r3.Vec{X: 0.02, Y: 0.02, Z: 0.06})
	l.Grab(flat, to)
	f := until(t, l, "the cloth in hand", func(f *Frame) bool { return r3.Norm(r3.Sub(f.Sheet.Pos[v], from)) > 0.015 })
	l.Grab(flat, r3.Add(to, r3.Vec{X: -0.04}))
	f = resting(t, l, f.Serial)
	if f.Sheet.Pos[v].X > from.X {
		t.Errorf("drawn to the right the place lies at x = %.1f mm, want less than the %.1f mm of the rest",
			f.Sheet.Pos[v].X*1000, from.X*1000)
	}
	drawn := r3.Norm(r3.Sub(f.Sheet.Pos[v], from))
	l.Drop()
	f = resting(t, l, f.Serial)
	if left := r3.Norm(r3.Sub(f.Sheet.Pos[v], from)); left > drawn/4 {
		t.Errorf("drawn %.1f mm and let go, the place lies %.1f mm from its former rest, want a quarter or less: "+
			"friction keeps a little", drawn*1000, left*1000)
	}

	pinned := r3.Add(f.Sheet.Pos[v], r3.Vec{Z: 0.02})
	drafted := len(l.Pins())
	l.Pin(flat, pinned)
	f = resting(t, l, f.Serial)
	if by := r3.Norm(r3.Sub(f.Sheet.Pos[v], pinned)); by > 0.005 || own(l.Pins()) != 1 {
		t.Errorf("pinned, the place lies %.1f mm from its pin with %d own pins, want 5 or less (the vertex is not quite "+
			"the place) with 1", by*1000, own(l.Pins()))
	}
	l.Unpin(flat)
	f = resting(t, l, f.Serial)
	if by := r3.Norm(r3.Sub(f.Sheet.Pos[v], pinned)); by < 0.01 || len(l.Pins()) != drafted {
		t.Errorf("unpinned, the place lies %.1f mm from the pin with %d pins, want 10 or more with %d", by*1000,
			len(l.Pins()), drafted)
	}
	checkLoosePin(t, l, f, drafted)
}

// checkLoosePin takes a pin of the waist out, which then follows the hand, and puts it back.
func checkLoosePin(t *testing.T, l *Live, f Frame, drafted int) {
	t.Helper()
	waist := slices.IndexFunc(l.Pins(), func(p LivePin) bool { return p.Name == "waist" && math.Abs(p.Flat.X) > 0.03 })
	pin := l.Pins()[waist]
	v := vertex(&f, pin.Flat)
	follows := func() float64 { // the hand, drawn 2 cm forward
		from := f.Sheet.Pos[v]
		l.Grab(pin.Flat, r3.Add(from, r3.Vec{Z: 0.02}))
		f = resting(t, l, f.Serial)
		by := r3.Norm(r3.Sub(f.Sheet.Pos[v], from))
		l.Drop()
		f = resting(t, l, f.Serial)
		return by
	}
	held := follows()
	l.Unpin(pin.Flat)
	f = resting(t, l, f.Serial)
	// At rest a pin that has given way holds nothing: what it holds shows when it is drawn at.
	if loose := follows(); loose < 1.5*held || len(l.Pins()) != drafted-1 {
		t.Errorf("without its pin the waist follows the hand by %.2f mm, with it by %.2f, with %d pins, want half as far "+
			"again with %d", loose*1000, held*1000, len(l.Pins()), drafted-1)
	}
	l.Pin(pin.Flat, pin.At)
	f = resting(t, l, f.Serial)
	if len(l.Pins()) != drafted || own(l.Pins()) != 0 {
		t.Errorf("put back, %d pins and %d own, want %d and 0", len(l.Pins()), own(l.Pins()), drafted)
	}
}

// A change of fabric on the way goes on from the present drape and ends
// settled, and so does one of the cut. The drop is that of Hang within a
// quarter: another path, the same cloth.
func TestLiveChange(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	l := NewLive(job(t, 0.11, 0.020, limp))
	defer l.Close()
	f := until(t, l, "settling", func(f *Frame) bool { return f.Stage == StageSettling })
	next := job(t, 0.11, 0.020, stiff)
	wider := job(t, 0.13, 0.020, stiff)
	finer := job(t, 0.13, 0.017, stiff)
	for _, j := range []Job{next, wider, finer} {
		l.Change(j)
		f = until(t, l, "the change", func(f *Frame) bool {
			return f.Job.Fabric.Name == j.Fabric.Name && f.Job.Cowl.Extension == j.Cowl.Extension &&
				f.Job.Spacing == j.Spacing && f.Stage != StageRest
		})
		if f.Stage == StagePlacing || !f.Carried || f.Err != nil {
			t.Errorf("%s, %g m: %q, error %v, want to go on from the present drape", j.Fabric.Name, j.Cowl.Extension, f.Stage,
				f.Err)
		}
		f = resting(t, l, f.Serial)
		r, err := HangAll(context.Background(), j, 1)
		if err != nil {
			t.Fatal(err)
		}
		if a, b := f.Outcome.EdgeDrop, r.Outcome.EdgeDrop; math.Abs(a-b) > 0.25*b {
			t.Errorf("%s, %g m: drops %.1f mm, want the %.1f mm of Hang within a quarter", j.Fabric.Name, j.Cowl.Extension, a,
				b)
		}
		if f.Outcome.Spacing != j.Spacing {
			t.Errorf("spacing %g m, want %g", f.Outcome.Spacing, j.Spacing)
		}
		if f.Outcome.Fabric != j.Fabric.Name || f.Outcome.Extension != j.Cowl.Extension {
			t.Errorf("outcome of %s, %g m, want %s, %g m", f.Outcome.Fabric, f.Outcome.Extension, j.Fabric.Name,
				j.Cowl.Extension)
		}
	}
	finer.Seed++
	l.Change(finer)
	until(t, l, "another placing", func(f *Frame) bool { return f.Stage == StagePlacing && f.Job.Seed == finer.Seed })
}

// Cloth that hangs and does not follow the hand is placed anew: on 20 mm, with 6 cm more
// extension, it ends in the bits of a fresh placing.
func TestLiveLeavesWhatDoesNotFollow(t *testing.T) {
	if testing.Short() {
		t.Skip("three drapes")
	}
	j, longer := laidJob(t, 0.10, 2), laidJob(t, 0.16, 2)
	j.Spacing, longer.Spacing = 0.020, 0.020
	l := NewLive(j)
	defer l.Close()
	f := resting(t, l, 0)
	l.Change(longer)
	if f = resting(t, l, f.Serial); f.Carried {
		t.Errorf("carried over, want it placed anew")
	}
	sameBits(t, f.Sheet.Pos, run(t, longer).Drape.Sheet().Pos)
}

// What cannot be hung is told, and what hangs goes on undisturbed: to the same
// bits. A first job that cannot be hung leaves nothing, until one that can.
func TestLiveSameAfterMiss(t *testing.T) {
	good := coarse(t, limp)
	bad := good
	bad.Spacing = 0.0005
	l := NewLive(bad)
	defer l.Close()
	f := until(t, l, "a refusal", func(f *Frame) bool { return f.Err != nil })
	if f.Stage != StageStopped || len(f.Sheet.Pos) != 0 {
		t.Errorf("refused: %q with %d vertices, want stopped with none", f.Stage, len(f.Sheet.Pos))
	}
	l.Change(good)
	until(t, l, "letting go", func(f *Frame) bool { return f.Stage == StageLetting && f.Err == nil })
	bad.Spacing, bad.Form = good.Spacing, nil
	l.Change(bad)
	f = until(t, l, "a refusal", func(f *Frame) bool { return f.Err != nil })
	if f.Job.Form == nil {
		t.Errorf("the frame is of the refused job, want the one before it")
	}
	f = resting(t, l, f.Serial)
	d, err := Hang(context.Background(), good)
	if err != nil {
		t.Fatal(err)
	}
	sameBits(t, f.Sheet.Pos, d.Sheet().Pos)
	l.Change(good)
	f = until(t, l, "no refusal", func(f *Frame) bool { return f.Err == nil })
	if f.Stage != StageRest {
		t.Errorf("%q after asking for what hangs, want at rest", f.Stage)
	}
}

// Close ends the walk in every stage; calls after it do no harm. At rest the
// goroutine sleeps.
func TestLiveClose(t *testing.T) {
	j := coarse(t, limp)
	for _, stage := range []string{"", StagePlacing, StageLetting, StageSettling, StageRest} {
		l := NewLive(j)
		if stage != "" {
			until(t, l, stage, func(f *Frame) bool { return f.Stage == stage })
		}
		if stage == StageRest && !sleeps() {
			t.Errorf("at rest and still at work, want asleep")
		}
		closed := make(chan struct{})
		go func() {
			l.Close()
			l.Close()
			close(closed)
		}()
		select {
		case <-closed:
		case <-time.After(30 * time.Second):
			t.Fatalf("Close while %q does not return", stage)
		}
		l.Grab(r2.Vec{}, r3.Vec{})
		l.Drop()
		l.Pin(r2.Vec{}, r3.Vec{})
		l.Unpin(r2.Vec{})
		l.Change(j)
		l.Frame(&Frame{})
	}
}

// sleeps reports whether a walking goroutine waits for orders within a second.
func sleeps() bool {
	for range 100 {
		stack := make([]byte, 1<<16)
		if strings.Contains(string(stack[:runtime.Stack(stack, true)]), "(*walker).sleep") {
			return true
		}
		time.Sleep(10 * time.Millisecond)
	}
	return false
}

// Many callers at once do no harm (under -race) and the last change counts.
func TestLiveCalledAtOnce(t *testing.T) {
	j := coarse(t, limp)
	l := NewLive(j)
	defer l.Close()
	until(t, l, "letting go", func(f *Frame) bool { return f.Stage == StageLetting })
	var wg sync.WaitGroup
	for k := range 4 {
		wg.Go(func() {
			var f Frame
			for n := range 25 {
				flat := r2.Vec{X: 0.01 * float64(k), Y: j.Cowl.FoldY - 0.05}
				l.Frame(&f)
				l.Grab(flat, r3.Vec{Y: 0.3, Z: 0.15})
				l.Pin(flat, r3.Vec{Y: 0.3, Z: 0.15})
				l.Change(j)
				l.Pins()
				l.Unpin(flat)
				l.Drop()
				if f.Sheet.Pos != nil {
					f.Sheet.Pos[n], f.Strain[n] = r3.Vec{}, 0 // the caller's own
				}
				time.Sleep(time.Millisecond)
			}
		})
	}
	wg.Wait()
	last := job(t, 0.10, 0.020, limp)
	l.Change(last)
	until(t, l, "the last change", func(f *Frame) bool { return f.Job.Cowl.Extension == last.Cowl.Extension })
}
