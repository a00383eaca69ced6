package drape

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// halvedOnce is a coarse job that is halved once, from 20 to 10 mm: its bending length is 60 mm.
func halvedOnce(t testing.TB) Job {
	j := coarse(t, limp)
	j.Fabric.BendWarp, j.Fabric.BendWeft = 290e-6, 290e-6
	j.Waist = SidesPinned
	j.Fine = true
	return j
}

// refinedFrame returns the first frame after a serial that shows what was refined.
func refinedFrame(t *testing.T, l *Live, after uint64) Frame {
	t.Helper()
	return until(t, l, "the finer lattice", func(f *Frame) bool {
		return f.Serial > after && f.Stage == StageRest && f.Outcome.Coarser != nil
	})
}

// At rest the cloth is refined beside what is shown, to the bits of HangAll. A change that asks
// for the same but for Fine shows the coarse cloth, and the fine again, as they lay.
func TestLiveRefines(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	j := halvedOnce(t)
	l := NewLive(j)
	defer l.Close()
	coarse := resting(t, l, 0)
	if !coarse.Refining || coarse.Outcome.Spacing != 0.020 || coarse.Outcome.Coarser != nil {
		t.Errorf("at rest: refining %t, spacing %g m, want it to begin on 0.020", coarse.Refining, coarse.Outcome.Spacing)
	}
	fine := refinedFrame(t, l, coarse.Serial)
	r, err := HangAll(context.Background(), j, 1)
	if err != nil {
		t.Fatal(err)
	}
	sameBits(t, fine.Sheet.Pos, r.Drape.Sheet().Pos)
	o, want := fine.Outcome, r.Outcome
	if fine.Serial != coarse.Serial+1 || fine.Refining {
		t.Errorf("%d frames to the fine one, refining %t, want 1 and done", fine.Serial-coarse.Serial, fine.Refining)
	}
	if o.EdgeDrop != want.EdgeDrop || o.Iterations != want.Iterations || o.Coarser.EdgeDrop != want.Coarser.EdgeDrop {
		t.Errorf("refined: drop %v m after %d steps, before %v m, want %v, %d, %v as of HangAll", o.EdgeDrop, o.Iterations,
			o.Coarser.EdgeDrop, want.EdgeDrop, want.Iterations, want.Coarser.EdgeDrop)
	}
	j.Fine = false
	l.Change(j)
	sameBits(t, resting(t, l, fine.Serial).Sheet.Pos, coarse.Sheet.Pos)
	j.Fine = true
	l.Change(j)
	sameBits(t, refinedFrame(t, l, fine.Serial).Sheet.Pos, fine.Sheet.Pos)
}

// A hand that takes hold, on the way to the finer lattice or there, has the coarse cloth in
// it; that is refined when it has been let go and rests again, with the pins that were set.
func TestLiveRefinesAnew(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	j := halvedOnce(t)
	l := NewLive(j)
	defer l.Close()
	f := resting(t, l, 0)
	few := len(f.Sheet.Pos)
	flat := r2.Vec{Y: j.Cowl.FoldY - 0.25}
	v := vertex(&f, flat)
	to := r3.Add(f.Sheet.Pos[v], r3.Vec{Z: 0.03})
	for k, when := range []string{"on the way", "refined"} {
		l.Grab(flat, to)
		f = resting(t, l, f.Serial)
		if len(f.Sheet.Pos) != few || f.Refining || f.Outcome.Coarser != nil {
			t.Errorf("grabbed %s: %d vertices, refining %t, want the coarse %d, not refined in the hand", when,
				len(f.Sheet.Pos), f.Refining, few)
		}
		if k == 1 {
			l.Pin(flat, to)
		}
		l.Drop()
		f = refinedFrame(t, l, f.Serial)
	}
	v = vertex(&f, flat)
	if by := r3.Norm(r3.Sub(f.Sheet.Pos[v], to)); by > 0.005 || own(l.Pins()) != 1 {
		t.Errorf("pinned and refined, the place lies %.1f mm from its pin with %d own pins, want 5 or less with 1", by*1000,
			own(l.Pins()))
	}
	l.Unpin(flat)
	f = until(t, l, "coarse cloth that walks", func(g *Frame) bool { return g.Serial > f.Serial && g.Stage != StageRest })
	if len(f.Sheet.Pos) != few {
		t.Errorf("unpinned: %d vertices, want the coarse %d", len(f.Sheet.Pos), few)
	}
	f = resting(t, l, f.Serial)
	j.Cowl = job(t, 0.12, 0.020, limp).Cowl
	l.Change(j) // of the cut, on the way to the finer lattice
	f = until(t, l, "the change", func(g *Frame) bool { return g.Job.Cowl.Extension == j.Cowl.Extension })
	if f.Stage == StageRest || !f.Carried {
		t.Errorf("changed: %q, carried %t, want the coarse cloth carried over", f.Stage, f.Carried)
	}
	if f = refinedFrame(t, l, f.Serial); math.Abs(f.Outcome.Extension-0.12) > 1e-9 {
		t.Errorf("refined with an extension of %g m, want 0.12", f.Outcome.Extension)
	}
}
