package toile

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/toile/fit"
	"cowl/materials"
)

var (
	trials      = flag.Int("trials", 0, "toiles that are drapes of hidden cloths: so many trials a fabric; half an hour for 10")
	trialCloths = flag.String("trial-cloths", "silk-crepe-de-chine-memory,cotton-broad", "fabrics")
	trialDir    = flag.String("trial-dir", "", "folder for the drapes of the trials; without it they are thrown away")
)

// Toiles that are drapes: three of a cloth whose bending, shear and loop are hidden, hung on
// 8 mm by hands of their own, read with a ruler that errs by 5 mm, and fitted on 12 mm. The truth
// lies in the stated 90 % interval of each property in 17 of 20 trials. (Bending misses that:
// ten trials each of crepe and cotton gave 20 of 20 for shear, 17 for the loop and 16 for bending.)
//
//	go test ./cmd/cowl/internal/toile -run Trials -v -trials 10 -timeout 2h
func TestTrials(t *testing.T) {
	if *trials == 0 {
		t.Skip("some hundred drapes: -trials 10")
	}
	dir := *trialDir
	if dir == "" {
		dir = t.TempDir()
	}
	holds, tells, wide, n := map[string]int{}, map[string]int{}, map[string]float64{}, 0
	for _, name := range strings.Split(*trialCloths, ",") {
		for k := range *trials {
			n++
			for _, p := range trial(t, dir, name, uint64(k)) {
				wide[p.Name] += p.share
				if p.holds {
					holds[p.Name]++
				}
				if p.tells {
					tells[p.Name]++
				}
			}
		}
	}
	for name := range holds {
		fmt.Printf("%s: truth in the interval in %d of %d trials, told in %d, %.2f of what was known\n", name, holds[name], n,
			tells[name], wide[name]/float64(n))
		if 20*holds[name] < 17*n {
			t.Errorf("%s: truth in the interval in %d of %d trials, want 17 of 20 or more", name, holds[name], n)
		}
	}
	if len(holds) != 3 {
		t.Errorf("of %d properties the truth was ever in the interval, want 3", len(holds))
	}
}

// outOf is what a trial found of a property.
type outOf struct {
	fit.Property
	share        float64 // of what was known
	holds, tells bool
}

// trial hangs toiles of a hidden cloth and fits them.
func trial(t *testing.T, dir, name string, seed uint64) []outOf {
	t.Helper()
	base, err := materials.Find(name)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(seed, 0x747269616c))
	looked := soughtOf(base)
	truth := make([]float64, len(looked))
	for i, s := range looked {
		truth[i] = drawOf(s.Property, r)
	}
	hidden, err := drawOne(base, looked, truth, nil, r)
	if err != nil {
		t.Fatal(err)
	}
	book := filepath.Join(t.TempDir(), "toiles.csv")
	enter(t, dir, book, name, hidden, r)
	hang := func(ctx context.Context, list []study.Hanging) ([]study.Hung, error) {
		return study.Hang(ctx, study.Options{Dir: dir, Jobs: 1, Quiet: true}, quiet, list)
	}
	var out strings.Builder
	err = Fit(t.Context(), Options{Book: book, JSON: true, hang: hang}, console.Console{Out: &out, Err: io.Discard}, name, 0.012, "")
	var got fitJSON
	if json.Unmarshal([]byte(out.String()), &got) != nil {
		t.Fatalf("%s, trial %d: %v", name, seed, err)
	}
	var all []outOf
	for i, p := range got.Properties {
		one := outOf{Property: looked[i].Property, tells: p.Tells}
		v := unit(looked[i], truth[i])
		one.share = (p.Interval[1] - p.Interval[0]) / (p.Known[1] - p.Known[0])
		one.holds = p.Interval[0] <= v*(1+1e-9) && v <= p.Interval[1]*(1+1e-9)
		fmt.Printf("%s, trial %d, %s: %.3g, interval %.3g to %.3g of %.3g to %.3g, tells %v, agrees %v\n", name, seed, one.Name, v,
			p.Interval[0], p.Interval[1], p.Known[0], p.Known[1], p.Tells, got.Agrees)
		all = append(all, one)
	}
	return all
}

var quiet = console.Console{Out: io.Discard, Err: io.Discard}

// drawOf draws a multiple as it is known.
func drawOf(p fit.Property, r *rand.Rand) float64 {
	for p.Bell {
		if v := 1 + (p.Most-1)/2*r.NormFloat64(); v > p.Least && v < p.Most {
			return v
		}
	}
	return p.Least + (p.Most-p.Least)*r.Float64()
}

// unit returns a multiple of a property in the unit of its first field.
func unit(s sought, times float64) float64 {
	var f materials.Fabric
	*s.fields[0].In(&f) = times * s.base[0]
	return s.fields[0].InUnits(f)
}

// enter hangs three toiles of the hidden cloth and enters them under the name of the known one.
func enter(t *testing.T, dir, book, name string, hidden materials.Fabric, r *rand.Rand) {
	t.Helper()
	s := style.Default()
	if err := s.UseFabric(name); err != nil {
		t.Fatal(err)
	}
	s.Cut.Extension, s.Hang.Folds, s.Hang.Spacing, s.Hang.Seed, s.Hang.Placings = 0.14, 2, 0.008, 101, 3
	path := filepath.Join(filepath.Dir(book), "style.yaml")
	if err := os.WriteFile(path, s.YAML(), 0o644); err != nil {
		t.Fatal(err)
	}
	s.Fabric = hidden
	hung, err := study.Hang(t.Context(), study.Options{Dir: dir, Jobs: 1, Quiet: true}, quiet,
		[]study.Hanging{{Name: "toile", Style: s, Steady: true}})
	if err != nil {
		t.Fatal(err)
	}
	cm := func(m float64) string {
		return fmt.Sprintf("%.1fcm", 100*math.Max(0.001, m+rulerError*r.NormFloat64()))
	}
	for _, o := range hung[0].Each {
		if o == nil {
			continue
		}
		got := readingOf(o)
		laid, kept := int(got.Laid), int(got.Kept)
		e := Entry{Style: path, Drop: cm(got.Drop), Reach: cm(got.Reach), Laid: &laid, Kept: &kept, Date: "2026-11-30"}
		for _, f := range got.Folds {
			e.Folds = append(e.Folds, cm(f.Depth)+"@"+cm(f.At))
		}
		if _, _, err := Add(book, e); err != nil {
			t.Fatal(err)
		}
	}
}
