//go:build laid

package drape

import (
	"context"
	"flag"
	"fmt"
	"math"
	"strings"
	"testing"

	"cowl/materials"
	"cowl/sim"

	"gonum.org/v1/gonum/stat"
)

var (
	cloths = flag.String("cloths", "silk-crepe-de-chine-memory,cotton-broad,silk-organza-memory,denim-memory",
		"fabrics; even-100 and even-16 are made up and do not know their grain")
	grains    = flag.String("grains", "45", "degrees")
	spacings  = flag.String("spacings", "8,6", "mm")
	laidCount = flag.String("laid", "1,2,3", "folds")
	longer    = flag.String("extensions", "8,14", "cm")
	handsEach = flag.Int("hands", 5, "number of hands")
	pace      = flag.Float64("pace", 1, "how many times as slow the hand is")
	shaken    = flag.Bool("shaken", false, "say how hard a shake each fold of the first hand survives")
)

// TestLaidTable prints what becomes of laid folds, cloth by cloth: minutes to hours.
//
//	go test -tags laid -run LaidTable -v -timeout 5h ./sim/drape -spacings 12 -hands 2
func TestLaidTable(t *testing.T) {
	fmt.Println("| cloth | grain | mm | extension cm | laid | kept of each hand | extra | drop mm | first fold mm | " +
		"its place mm | its radius mm | stored mJ | steps | survives |")
	fmt.Println("|---|---|---|---|---|---|---|---|---|---|---|---|---|---|")
	for _, cloth := range strings.Split(*cloths, ",") {
		for _, e := range numbers(t, *longer) {
			for _, n := range numbers(t, *laidCount) {
				for _, mm := range numbers(t, *spacings) {
					for _, deg := range numbers(t, *grains) {
						row(t, rowJob(t, cloth, e/100, mm/1000, deg, int(n)), cloth)
					}
				}
			}
		}
	}
}

// rowJob returns a job of the table: extension and spacing in m, grain in degrees.
func rowJob(t *testing.T, cloth string, extension, spacing, grain float64, folds int) Job {
	var shear float64
	even, _ := fmt.Sscanf(cloth, "even-%g", &shear)
	j := job(t, extension, spacing, map[int]string{0: cloth, 1: limp}[even])
	if even == 1 {
		j.Fabric = evenCloth(j.Fabric, shear)
	}
	j.Cowl.Grain = grain * math.Pi / 180
	j.Folds, j.Waist, j.Pace, j.Shake = folds, SidesPinned, *pace, *shaken
	return j
}

// evenCloth is a made-up cloth of a shear stiffness (N/m) that is the same all ways:
// C11 = C22 = 2G, C12 = 0 and one bending stiffness. It rubs as f does.
func evenCloth(f materials.Fabric, shear float64) materials.Fabric {
	const bend = 1.6e-6 // N·m
	f.Name, f.Weight = fmt.Sprintf("even-%g", shear), 0.065
	f.BendWarp, f.BendWeft, f.BendBias = bend, bend, bend
	f.Shear, f.TensileWarp, f.TensileWeft = shear, 2*shear, 2*shear
	f.BendFriction, f.ShearFriction, f.BendSoftening, f.ShearLock = 0, 0, 0, 0
	return f
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
	var drop, deep, place, radius, stored, steps []float64
	for _, o := range r.Each {
		if o.Status != sim.Settled || o.Pierced > 0 || o.Residual > 1e-3 {
			t.Errorf("%s, %d laid, %.0f mm: %s, residual %.1e, %d pierced", cloth, j.Folds, 1000*j.Spacing, o.Status,
				o.Residual, o.Pierced)
		}
		kept, extra = append(kept, o.Kept), append(extra, o.Extra)
		drop, steps = append(drop, 1000*o.EdgeDrop), append(steps, float64(o.Iterations))
		radius, stored = append(radius, 1000*o.FoldRadius), append(stored, 1000*o.Energy)
		if len(o.Folds) > 0 {
			deep, place = append(deep, 1000*o.Folds[0].Depth), append(place, 1000*o.Folds[0].CF)
		}
	}
	fmt.Printf("| %s | %.1f | %.0f | %.0f | %d | %v | %v | %s | %s | %s | %s | %s | %.0f | %.1f |\n",
		cloth, j.Cowl.Grain*180/math.Pi, 1000*j.Spacing, 100*j.Cowl.Extension, j.Folds, kept, extra,
		meanAndSpread(drop), meanAndSpread(deep), meanAndSpread(place), meanAndSpread(radius), meanAndSpread(stored),
		stat.Mean(steps, nil), strengths(r.Outcome.Folds))
}

// strengths returns how hard a shake each of the folds survives, fold by fold.
func strengths(folds []Fold) []float64 {
	out := make([]float64, len(folds))
	for i, f := range folds {
		out[i] = f.Survives
	}
	return out
}

func meanAndSpread(v []float64) string {
	if len(v) < 2 {
		return fmt.Sprintf("%.0f", v)
	}
	m, s := stat.MeanStdDev(v, nil)
	return fmt.Sprintf("%.4g ± %.2g", m, s)
}
