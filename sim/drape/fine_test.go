package drape

import (
	"context"
	"errors"
	"math"
	"testing"

	"cowl/mesh/limit"
)

// The finest lattice is near a quarter of the bending length, never below 3 mm, and
// at least one halving away.
func TestFinestSpacing(t *testing.T) {
	for _, q := range []struct{ spacing, bending, want float64 }{
		{8, 10, 4},  // 2 would be below 3
		{8, 40, 4},  // once at least
		{12, 20, 6}, // 5 is nearer to 6 than to 3
		{12, 10, 3},
		{20, 60, 10},
		{20, 12, 5},
		{6, 10, 3},
	} {
		j := job(t, 0.11, q.spacing/1000, limp)
		j.Fine = true
		c := q.bending / 1000
		j.Fabric.BendWarp = j.Fabric.Weight * 9.80665 * c * c * c
		j.Fabric.BendWeft = j.Fabric.BendWarp
		if got := 1000 * j.FinestSpacing(); math.Abs(got-q.want) > 1e-9 {
			t.Errorf("bending length %g mm, from %g mm: finest spacing %.3g mm, want %g", q.bending, q.spacing, got, q.want)
		}
		if j.Fine = false; j.FinestSpacing() != j.Spacing {
			t.Errorf("finest spacing without fine %g m, want %g", j.FinestSpacing(), j.Spacing)
		}
	}
}

func TestFineRefused(t *testing.T) {
	j := job(t, 0.11, 0.005, limp)
	j.Fine = true
	var e *limit.Error
	if err := j.Check(); !errors.As(err, &e) || e.Field != "fine" {
		t.Errorf("fine on 5 mm: %v, want it refused", err)
	}
}

// What is carried on to half the spacing comes to rest there, and tells what it was
// before: the drape of the job without it, to the bit.
func TestFine(t *testing.T) {
	j := job(t, 0.11, 0.020, limp)
	j.Fabric.BendWarp, j.Fabric.BendWeft = 290e-6, 290e-6 // bending length 60 mm
	j.Waist = SidesPinned
	plain, err := HangAll(context.Background(), j, 2)
	if err != nil {
		t.Fatal(err)
	}
	j.Fine = true
	fine, err := HangAll(context.Background(), j, 2)
	if err != nil {
		t.Fatal(err)
	}
	for k, o := range fine.Each {
		sound(t, "halved", o)
		if o.Spacing != 0.010 || o.Coarser == nil {
			t.Fatalf("hand %d: spacing %g m, coarser %v, want 0.010 and what was before", k, o.Spacing, o.Coarser)
		}
		if was := plain.Each[k]; o.Coarser.EdgeDrop != was.EdgeDrop || o.Coarser.Energy != was.Energy {
			t.Errorf("hand %d: before halving drop %v m, energy %v J, want %v, %v as without it",
				k, o.Coarser.EdgeDrop, o.Coarser.Energy, was.EdgeDrop, was.Energy)
		}
		if o.Iterations <= o.Coarser.Iterations || o.Nodes < 3*o.Coarser.Nodes {
			t.Errorf("hand %d: %d steps, %d nodes, before %d and %d", k, o.Iterations, o.Nodes, o.Coarser.Iterations,
				o.Coarser.Nodes)
		}
	}
}

// One of many drapes at a time keeps to one core; what goes on with it has all of them.
func TestAloneForAWhile(t *testing.T) {
	j := job(t, 0.08, 0.020, limp)
	kept := j
	kept.Alone = true
	all, err := hangEach(t.Context(), []Job{j, kept})
	if err != nil {
		t.Fatal(err)
	}
	for k, alone := range []bool{false, true} {
		if d := all[k].drape; d.Job.Alone != alone || d.System.Alone != alone {
			t.Errorf("drape %d goes on alone: %t, its scene %t, want %t", k, d.Job.Alone, d.System.Alone, alone)
		}
	}
}
