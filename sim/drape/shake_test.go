package drape

import (
	"context"
	"testing"
)

// Shaken harder and harder, as long as a fold is left, the drape itself hangs as it
// hung, and whoever waits is told how far it has come.
func TestSurvival(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	j := laidJob(t, 0.14, 2)
	j.Spacing = 0.020
	told := 0
	j.Report = func(p Progress) {
		if p.Stage == "shaking" {
			told++
		}
	}
	d, err := Hang(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	before, load := d.State.Clone(), d.System.Cloth.Load[0]
	a := d.survival(context.Background())
	if len(a) != 2 || told == 0 {
		t.Fatalf("survival = %v, told %d times, want one a fold and to be told", a, told)
	}
	for k, f := range d.track.Folds {
		if !f.Kept() && a[k] != 0 {
			t.Errorf("fold %d was not kept and survives %g", k+1, a[k])
		}
	}
	sameBits(t, d.State.Pos, before.Pos)
	if d.System.Cloth.Load[0] != load {
		t.Errorf("the load is %g N after the shakes, %g before", d.System.Cloth.Load[0], load)
	}
}
