//go:build laid

package drape

import (
	"context"
	"flag"
	"fmt"
	"strings"
	"testing"

	"cowl/sim"

	"gonum.org/v1/gonum/stat"
)

var (
	cloths    = flag.String("cloths", "silk-crepe-de-chine-memory,cotton-broad,silk-organza-memory,denim-memory", "fabrics")
	spacings  = flag.String("spacings", "8,6", "mm")
	laidCount = flag.String("laid", "1,2,3", "folds")
	longer    = flag.String("extensions", "8,14", "cm")
	handsEach = flag.Int("hands", 5, "number of hands")
	pace      = flag.Float64("pace", 1, "how many times as slow the hand is")
)

// TestLaidTable prints what becomes of laid folds, cloth by cloth: minutes to hours.
//
//	go test -tags laid -run LaidTable -v -timeout 5h ./sim/drape -spacings 12 -hands 2
func TestLaidTable(t *testing.T) {
	fmt.Println("| cloth | mm | extension cm | laid | kept of each hand | extra | drop mm | first fold mm | its place mm | steps |")
	fmt.Println("|---|---|---|---|---|---|---|---|---|---|")
	for _, cloth := range strings.Split(*cloths, ",") {
		for _, e := range numbers(t, *longer) {
			for _, n := range numbers(t, *laidCount) {
				for _, mm := range numbers(t, *spacings) {
					j := job(t, e/100, mm/1000, cloth)
					j.Folds, j.Waist, j.Pace = int(n), SidesPinned, *pace
					row(t, j, cloth)
				}
			}
		}
	}
}

func numbers(t *testing.T, list string) []float64 {
	var out []float64
	for _, part := range strings.Split(list, ",") {
		var v float64
		if _, err := fmt.Sscan(part, &v); err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// row hangs a job by all hands and prints what they found.
func row(t *testing.T, j Job, cloth string) {
	r, err := HangAll(context.Background(), j, *handsEach)
	if err != nil {
		t.Errorf("%s, %d laid: %v", cloth, j.Folds, err)
		return
	}
	var kept, extra []int
	var drop, deep, place, steps []float64
	for _, o := range r.Each {
		if o.Status != sim.Settled || o.Pierced > 0 || o.Residual > 1e-3 {
			t.Errorf("%s, %d laid, %.0f mm: %s, residual %.1e, %d pierced", cloth, j.Folds, 1000*j.Spacing, o.Status, o.Residual, o.Pierced)
		}
		kept, extra = append(kept, o.Kept), append(extra, o.Extra)
		drop, steps = append(drop, 1000*o.EdgeDrop), append(steps, float64(o.Iterations))
		if len(o.Folds) > 0 {
			deep, place = append(deep, 1000*o.Folds[0].Depth), append(place, 1000*o.Folds[0].CF)
		}
	}
	fmt.Printf("| %s | %.0f | %.0f | %d | %v | %v | %s | %s | %s | %.0f |\n", cloth, 1000*j.Spacing, 100*j.Piece.Extension, j.Folds, kept, extra,
		meanAndSpread(drop), meanAndSpread(deep), meanAndSpread(place), stat.Mean(steps, nil))
}

func meanAndSpread(v []float64) string {
	if len(v) < 2 {
		return fmt.Sprintf("%.0f", v)
	}
	m, s := stat.MeanStdDev(v, nil)
	return fmt.Sprintf("%.0f ± %.0f", m, s)
}
