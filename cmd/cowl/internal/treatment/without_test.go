package treatment

import (
	"math"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// Without its lowering, taking in and weight, one at a time, a front is the one
// without it: its cowl point where the cut has it, its half waist wider by what was taken
// in, no weight, and the other two as they were.
func TestBeforeFronts(t *testing.T) {
	s, err := style.FromFile("../../demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s.Stand.Lower, s.Stand.TakeIn, s.Stand.Weight = 0.01, 0.008, 0.020
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	if without, err := Compared(s, p, false); err != nil || len(without) != 0 {
		t.Errorf("unasked: compared with %d fronts, %v, want none", len(without), err)
	}
	without, err := Compared(s, p, true)
	if err != nil || len(without) != 3 {
		t.Fatalf("compared with %d fronts, %v, want 3", len(without), err)
	}
	for k, q := range []struct {
		name                 string
		point, waist, weight float64 // m, m more than with all, kg
	}{{"lowering", s.Cut.CowlPoint, 0, 0.020}, {"taking in", p.CowlPoint, 0.008, 0.020}, {"weight", p.CowlPoint, 0, 0}} {
		got := without[k]
		wider := got.Cowl.Report().Waist - p.Report().Waist
		if got.Name != q.name || math.Abs(got.Cowl.CowlPoint-q.point) > 1e-9 || math.Abs(wider-q.waist) > 5e-4 ||
			got.Cowl.Weight != q.weight {
			t.Errorf("without the %s: cowl point %.4f m, half waist %+.4f m, weight %g kg, want without the %s %.4f m, "+
				"%+.4f m, %g kg",
				got.Name, got.Cowl.CowlPoint, wider, got.Cowl.Weight, q.name, q.point, q.waist, q.weight)
		}
	}
	if s.Stand.Lower == 0 || p.Weight == 0 {
		t.Error("the front itself was changed")
	}
}
