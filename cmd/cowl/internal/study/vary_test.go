package study

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
)

func TestParseFactor(t *testing.T) {
	for _, q := range []struct {
		text string
		want []float64 // in the unit of the sheet
		name string    // of the last value
	}{
		{"extension=0cm:14cm:2cm", []float64{0, 2, 4, 6, 8, 10, 12, 14}, "14 cm"},
		{"extension=1in,2in", []float64{2.54, 5.08}, "5.08 cm"},
		{"grain=0:90:22.5", []float64{0, 22.5, 45, 67.5, 90}, "90°"},
		{"folds=1,2,3", []float64{1, 2, 3}, "folds laid 3"},
		{"edge-depth=4cm:10cm:2cm", []float64{4, 6, 8, 10}, "10 cm"},
		{"dart-share=0:1:0.25", []float64{0, 0.25, 0.5, 0.75, 1}, "dart share 1"},
		{"weight=80gsm:200gsm:60gsm", []float64{80, 140, 200}, "200 g/m²"},
		{"bend=1uNm,0.01mNm", []float64{1, 10}, "10 µN·m"},
		{"shear=10N/m:25N/m:10N/m", []float64{10, 20}, "20 N/m"},
	} {
		f, err := parseFactor(q.text)
		if err != nil {
			t.Errorf("%s: %v", q.text, err)
			continue
		}
		var got []float64
		for _, v := range f.values {
			got = append(got, f.shown(v))
		}
		if !slices.Equal(got, q.want) || f.said(f.values[len(f.values)-1]) != q.name {
			t.Errorf("%s = %v, the last %q, want %v, %q", q.text, got, f.said(f.values[len(f.values)-1]), q.want, q.name)
		}
	}
	for _, q := range []struct{ text, says string }{
		{"yoke=1cm,2cm", "cowl-point"}, {"extension", "FIRST:LAST:STEP"}, {"extension=0:14:2", "unit"},
		{"extension=4cm", "2–60"},
		{"extension=4cm:2cm:1cm", "LAST above FIRST"}, {"extension=0cm:9cm:0cm", "STEP above 0"}, {"grain=0:90:0.1", "2–60"},
		{"shear=3", "N/m"},
	} {
		if _, err := parseFactor(q.text); err == nil || !strings.Contains(err.Error(), q.says) {
			t.Errorf("%s: %v, want %q in the message", q.text, err, q.says)
		}
	}
}

// Bending is set for the mean of warp and weft and keeps their ratio; the
// varied cloth is written out, reads back, and owns no range or drape test.
func TestVaryCloth(t *testing.T) {
	s := demoStyle(t)
	before := s.Fabric
	f, err := parseFactor("bend=10uNm,20uNm")
	if err != nil {
		t.Fatal(err)
	}
	if err := f.apply(&s, f.values[0]); err != nil {
		t.Fatal(err)
	}
	g := s.Fabric
	if mean := (g.BendWarp + g.BendWeft) / 2; math.Abs(mean-10e-6) > 1e-12 ||
		math.Abs(g.BendWarp/g.BendWeft-before.BendWarp/before.BendWeft) > 1e-6 {
		t.Errorf("bending %g, %g, want a mean of 1e-5 and the ratio of before", g.BendWarp, g.BendWeft)
	}
	if g.Drape != nil || g.Basis[materials.BendWarp].Kind != materials.Assumed || g.Name == before.Name {
		t.Errorf("the varied cloth passes for the measured one: %+v", g)
	}
	again, err := style.Parse("s.yaml", s.YAML())
	if err != nil || again.Fabric.BendWarp != g.BendWarp {
		t.Errorf("the style file gives %g, %v, want %g", again.Fabric.BendWarp, err, g.BendWarp)
	}
	f, _ = parseFactor("shear=900N/m,5000N/m")
	if err := f.apply(&s, f.values[1]); err == nil || !strings.Contains(err.Error(), "2–1000") {
		t.Errorf("shear 5000 N/m: %v, want the range", err)
	}
	f, _ = parseFactor("slashes=1:3:1")
	if err := f.fits(s); err == nil || !strings.Contains(err.Error(), "--how slash") {
		t.Errorf("slashes with a pivot: %v", err)
	}
}

// What is known of a fabric becomes its doubts: ranges of the source as they
// are, spreads of a test twice, and an assumption that says so.
func TestDoubts(t *testing.T) {
	chiffon, err := materials.Find("silk-chiffon-memory")
	if err != nil {
		t.Fatal(err)
	}
	ds := doubtsOf(chiffon)
	byName := map[string]doubt{}
	for _, d := range ds {
		byName[d.name] = d
	}
	w := byName["weight"]
	if math.Abs(w.least*chiffon.Weight-0.026) > 1e-9 || math.Abs(w.most*chiffon.Weight-0.035) > 1e-9 ||
		!strings.Contains(w.why, "range of the source") {
		t.Errorf("weight of chiffon: %+v, want 26–35 g/m²", w)
	}
	both := byName["bending, warp and weft together"]
	if len(both.fields) != 2 || math.Abs(both.most*0.95-1.5) > 1e-9 {
		t.Errorf("bending of chiffon: %+v, want both up to 1.5 µN·m", both)
	}
	limp := both.times(chiffon, both.least)
	if math.Abs(limp.BendWeft-0.4e-6) > 1e-12 ||
		math.Abs(limp.BendBias-materials.PeirceBias(limp.BendWarp, limp.BendWeft)) > 1e-12 {
		t.Errorf("the limpest chiffon bends %g on the weft, %g on the bias, want 4e-7 and the rule of Peirce", limp.BendWeft,
			limp.BendBias)
	}
	tested := chiffon
	tested.Range, tested.Spread[materials.Shear] = materials.Ranges{}, 0.1*chiffon.Shear
	if d := doubtOf(tested, materials.Shear); math.Abs(d.least-0.8) > 1e-9 || math.Abs(d.most-1.2) > 1e-9 || !d.normal {
		t.Errorf("shear with a spread of 10 %%: %+v, want 0.8–1.2", d)
	}
	r := rand.New(rand.NewPCG(1, 1))
	low, high := math.Inf(1), math.Inf(-1)
	for range 500 {
		k := w.draw(r)
		low, high = math.Min(low, k), math.Max(high, k)
	}
	if low < w.least || high > w.most || low > w.least+0.01 || high < w.most-0.01 {
		t.Errorf("drawn %g–%g, want to fill %g–%g", low, high, w.least, w.most)
	}
}

func TestParseWant(t *testing.T) {
	w, err := ParseWant("Edge drop 12cm, folds 3,depth 1in")
	if err != nil || math.Abs(w[dropFigure]-120) > 1e-9 || w[countFigure] != 3 || math.Abs(w[depthFigure]-25.4) > 1e-9 {
		t.Errorf("parseWant = %+v, %v, want 120, 3, 25.4", w, err)
	}
	for _, q := range []struct{ text, says string }{
		{"", "no want"}, {"deep", "no want"}, {"hem 3cm", "edge drop 12cm"}, {"drop 12", "unit"},
		{"drop 2m", "0.0 cm to 60.0 cm"}, {"folds 2.5", "whole number"},
		{"folds 9", "0 to 6"}, {"drop 1cm, edge drop 2cm", "twice"}, {"depth 1mm", "5 mm to 200 mm"},
	} {
		if _, err := ParseWant(q.text); err == nil || !strings.Contains(err.Error(), q.says) {
			t.Errorf("want %q: %v, want %q in the message", q.text, err, q.says)
		}
	}
}

// What is tried never leaves what a field may be; a loop that is assumed from the
// bending goes with it, one that was measured does not.
func TestDoubtsStayWithinReason(t *testing.T) {
	f, err := materials.Find("polyester-twill")
	if err != nil {
		t.Fatal(err)
	}
	f.ShearLock, f.Basis[materials.ShearLock].Kind = 70*math.Pi/180, materials.Measured
	d := doubtOf(f, materials.ShearLock)
	if got := d.most * 70; math.Abs(got-75) > 1e-9 || math.Abs(d.least-0.9) > 1e-9 {
		t.Errorf("a locking angle of 70° ± 10 %%: %.1f° at most, %.2f at least, want 75° and 0.90", got, d.least)
	}
	if err := d.times(f, d.most).Validate(); err != nil {
		t.Errorf("at its most: %v", err)
	}
	bend := doubt{fields: []materials.Field{materials.BendWarp, materials.BendWeft}}
	if got := bend.times(f, 2).BendFriction / f.BendFriction; math.Abs(got-2) > 1e-3 {
		t.Errorf("twice the bending has %.3f times the assumed loop, want twice", got)
	}
	f.Basis[materials.BendFriction].Kind = materials.Measured
	if got := bend.times(f, 2).BendFriction / f.BendFriction; math.Abs(got-1) > 1e-9 {
		t.Errorf("twice the bending has %.3f times the measured loop, want the same", got)
	}
}

// Every size of a sweep is cut for its own body. Held as length all have the extension of the
// style, held as drop its drop: by the hanging curve of the draft's edge, before the stand.
func TestSweepSizes(t *testing.T) {
	for _, q := range []struct {
		hold string
		vary []string
	}{{HoldLength, []string{"size=8,10,16"}}, {HoldDrop, []string{"size=8,10,16"}},
		{HoldDrop, []string{"cowl-point=3cm,5cm", "size=8,16"}}} {
		s := demoStyle(t)
		s.Cut.Extension = 0.09
		spec, err := NewSpec("sweep", s, 3)
		if err != nil {
			t.Fatal(err)
		}
		spec.Vary, spec.Hold = q.vary, q.hold
		p, err := spec.plan()
		if err != nil {
			t.Fatalf("%s, %v: %v", q.hold, q.vary, err)
		}
		drops := map[float64]float64{} // by cowl point, m
		waists := map[float64]bool{}
		for _, c := range p.cases {
			if c.wrong != nil {
				t.Fatalf("%s, %s: %v", q.hold, c.Name, c.wrong)
			}
			if q.hold == HoldLength && math.Abs(c.cowl.Extension-0.09) > 1e-9 {
				t.Errorf("%s held as length: extension %.4f m, want 0.09 m", c.Name, c.cowl.Extension)
			}
			drop, first := c.cowl.Report().DropChain, drops[c.style.Cut.CowlPoint]
			if first == 0 {
				drops[c.style.Cut.CowlPoint], first = drop, drop
			}
			if q.hold == HoldDrop && math.Abs(drop-first) > 1e-5 {
				t.Errorf("%s held as drop: %.5f m, want %.5f m as the size before", c.Name, drop, first)
			}
			waists[c.cowl.Report().Waist] = true
		}
		if want := len(p.vary[len(p.vary)-1].values); len(q.vary) == 1 && len(waists) != want {
			t.Errorf("%v: %d half waists, want %d", q.vary, len(waists), want)
		}
	}
}

// A drop is held where sizes are varied and the extension is not; what is of one body alone
// is cut in no other size.
func TestSweepSizesRefused(t *testing.T) {
	for _, q := range []struct {
		hold, body, says string
		vary             []string
	}{
		{HoldDrop, "", "want --vary size", []string{"grain=0,45"}},
		{HoldDrop, "", "want one of them", []string{"size=8,10", "extension=4cm,8cm"}},
		{HoldLength, "", "size 8.5, want an even size", []string{"size=8,8.5"}},
		{HoldLength, "size: 10\n  bust_cm: 90", "own measurements", []string{"size=8,10"}},
	} {
		spec := asked(t, "sweep", 3, q.vary)
		spec.Hold = q.hold
		if q.body != "" {
			spec.Style = strings.Replace(spec.Style, "size: 10", q.body, 1)
		}
		if _, err := spec.plan(); err == nil || !strings.Contains(err.Error(), q.says) {
			t.Errorf("%v held as %s: %v, want %q", q.vary, q.hold, err, q.says)
		}
	}
}
