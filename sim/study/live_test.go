package study

import (
	"context"
	"math"
	"testing"
	"time"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// coarse is a job on the coarsest lattice: a second or two to rest.
func coarse(t testing.TB, fabric string) Job { return job(t, 0.11, 0.020, fabric) }

// until fetches frames until one pleases, and fails the test after a while.
func until(t *testing.T, l *Live, what string, pleases func(*Frame) bool) Frame {
	t.Helper()
	var f Frame
	for end := time.Now().Add(5 * time.Minute); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
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
		if math.Float64bits(p.X) != math.Float64bits(q.X) || math.Float64bits(p.Y) != math.Float64bits(q.Y) || math.Float64bits(p.Z) != math.Float64bits(q.Z) {
			t.Fatalf("vertex %d lies at %v, want %v", i, p, q)
		}
	}
}

// Watched but not touched, the cloth comes to rest in the bits of Hang.
func TestLiveSameBits(t *testing.T) {
	j := coarse(t, limp)
	l := NewLive(j)
	defer l.Close()
	f := resting(t, l, 0)
	d, err := Hang(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	sameBits(t, f.Sheet.Pos, d.Sheet().Pos)
	if f.Outcome.Iterations != d.Steps {
		t.Errorf("%d steps, want %d", f.Outcome.Iterations, d.Steps)
	}
}
