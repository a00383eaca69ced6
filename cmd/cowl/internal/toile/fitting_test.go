package toile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/materials"
)

// fittedJSON runs a fit on made-up cloth and returns what it prints as JSON.
func fittedJSON(t *testing.T, path, out string) (fitJSON, error) {
	t.Helper()
	var b, warn bytes.Buffer
	err := Fit(t.Context(), Options{Book: path, JSON: true, hang: madeUp}, console.Console{Out: &b, Err: &warn},
		"silk-crepe-de-chine-memory", 0.012, out)
	var got fitJSON
	if b.Len() > 0 {
		if err := json.Unmarshal(b.Bytes(), &got); err != nil {
			t.Fatal(err)
		}
	}
	return got, err
}

// Toiles of a made-up cloth whose bending is 1.3 times the value of the library and whose
// shear no figure depends on: bending and loop are told and hold the truth, of shear they
// cannot tell, and the fabric that is written says so.
func TestFit(t *testing.T) {
	base, err := materials.Find("silk-crepe-de-chine-memory")
	if err != nil {
		t.Fatal(err)
	}
	truth := base
	truth.BendWarp *= 1.3
	truth.BendFriction = 0.5 * materials.LoopOverBend / 2 * base.BendWarp
	s, dir := styleFile(t, base.Name), t.TempDir()
	path := filepath.Join(dir, "toiles.csv")
	r := rand.New(rand.NewPCG(7, 7))
	for range 10 {
		o := madeUpOutcome(truth, r)
		cm := func(m float64) string { return fmt.Sprintf("%.1fcm", 100*(m+rulerError*r.NormFloat64())) }
		e := Entry{Style: s, Drop: cm(o.EdgeDrop), Reach: cm(o.Forward), Laid: two(), Kept: two(), Date: "2026-11-29",
			Folds: []string{cm(o.Folds[0].Depth) + "@5cm", cm(o.Folds[1].Depth) + "@15cm"}}
		if _, _, err := Add(path, e); err != nil {
			t.Fatal(err)
		}
	}
	out := filepath.Join(dir, "fitted.yaml")
	got, err := fittedJSON(t, path, out)
	if err != nil || got.Toiles != 10 || got.Cuts != 1 || !got.Agrees || len(got.Properties) != 3 {
		t.Fatalf("fit = %+v, %v", got, err)
	}
	bend, shear, loop := got.Properties[0], got.Properties[1], got.Properties[2]
	if v := truth.BendWarp * 1e6; !(bend.Tells && bend.Interval[0] <= v && v <= bend.Interval[1]) {
		t.Errorf("bending %+v, want told and %.3g in it", bend, v)
	}
	if v := truth.BendFriction * 1e3; !(loop.Interval[0] <= v && v <= loop.Interval[1]) || loop.Known[0] != 0 {
		t.Errorf("loop %+v, want %.3g in it", loop, v)
	}
	if shear.Tells || shear.Known != [2]float64{12, 20} {
		t.Errorf("shear %+v, want 12 to 20 N/m and that they cannot tell", shear)
	}
	f, err := materials.FromFile(out)
	if err != nil {
		t.Fatal(err)
	}
	if e := f.Basis[materials.BendWarp]; e.Kind != materials.Derived || !strings.Contains(e.How, "fitted to 10 toiles") ||
		f.Name != base.Name+"-fitted" {
		t.Errorf("%s: bending is %v", f.Name, e)
	}
	if f.Shear != base.Shear || f.Basis[materials.Shear] != base.Basis[materials.Shear] ||
		f.Range[materials.Shear] != base.Range[materials.Shear] {
		t.Errorf("shear is %v, want it as it was", f.Basis[materials.Shear])
	}
	if i := f.Range[materials.BendWarp]; math.Abs(i.Low*1e6-bend.Interval[0]) > 1e-6 || f.BendWeft != f.BendWarp {
		t.Errorf("range of bending %v, want that of the fit", i)
	}
	var words bytes.Buffer
	if err := Fit(t.Context(), Options{Book: path, hang: madeUp}, console.Console{Out: &words}, base.Name, 0.012,
		""); err != nil || !strings.Contains(words.String(), cannotTell) || !strings.Contains(words.String(),
		"A prediction is not a toile") {
		t.Errorf("fit says %s, %v", words.String(), err)
	}
}

// One rough toile tells nothing and writes nothing; toiles no cloth can make say so; and
// a fabric without toiles is told with those that have.
func TestFitRefuses(t *testing.T) {
	s, dir := styleFile(t, "silk-crepe-de-chine-memory"), t.TempDir()
	path, out := filepath.Join(dir, "toiles.csv"), filepath.Join(dir, "fitted.yaml")
	if _, _, err := Add(path, Entry{Style: s, Drop: "14cm", Date: "2026-11-29"}); err != nil {
		t.Fatal(err)
	}
	got, err := fittedJSON(t, path, out)
	var silent console.Silent
	if !errors.As(err, &silent) || got.File != "" || got.Properties[0].Tells {
		t.Errorf("fit to one drop = %+v, %v", got.Properties, err)
	}
	if _, _, err := Add(path, Entry{Style: s, Drop: "40cm", Reach: "30cm", Date: "2026-11-29"}); err != nil {
		t.Fatal(err)
	}
	if got, err = fittedJSON(t, path, out); !errors.As(err, &silent) || got.Agrees {
		t.Errorf("fit to a drop of 40 cm = %+v, %v, want that no cloth agrees", got, err)
	}
	if _, err := os.Stat(out); !os.IsNotExist(err) {
		t.Errorf("something was written: %v", err)
	}
	err = Fit(t.Context(), Options{Book: path, hang: madeUp}, console.Console{}, "denim", 0.012, "")
	if err == nil || !strings.Contains(err.Error(), `no toile of "denim", want one of silk-crepe-de-chine-memory`) {
		t.Errorf("fit of denim = %v", err)
	}
}

// Cloths are drawn within what is known, spread over it, each one that can be, and the
// same again.
func TestDrawCloths(t *testing.T) {
	n := 0
	for _, f := range materials.Library() {
		looked := soughtOf(f)
		cloths, times, err := drawCloths(f, looked)
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			continue
		}
		n++
		for i, s := range looked {
			least, most := math.Inf(1), math.Inf(-1)
			for k, c := range cloths {
				v := s.fields[0].Value(c) / s.base[0]
				least, most = math.Min(least, v), math.Max(most, v)
				if math.Abs(v-times[k][i]) > 1e-9 || v < s.Least || v > s.Most {
					t.Errorf("%s: %s is %g times its value, want %g within %g to %g", f.Name, s.Name, v, times[k][i], s.Least, s.Most)
				}
			}
			if most-least < 0.8*(s.Most-s.Least) {
				t.Errorf("%s: %s was drawn from %g to %g of %g to %g", f.Name, s.Name, least, most, s.Least, s.Most)
			}
		}
	}
	if n < 20 {
		t.Errorf("%d fabrics", n)
	}
}
