package fit_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/toile/fit"
)

// The made-up cloth: no cloth does this. Every figure (mm) is straight in the logarithm
// of bend and in the loop itself; the figure "deaf" depends on none, and no figure
// depends on the property "idle".
var madeUp = []struct {
	name   string
	kind   int
	at     float64
	slopes [3]float64 // bend, loop, idle
	hand   float64
}{
	{"drop", 0, 150, [3]float64{-20, -6, 0}, 4},
	{"reach", 1, 60, [3]float64{12, 9, 0}, 3},
	{"depth of fold 1", 2, 50, [3]float64{14, -12, 0}, 3},
	{"depth of fold 2", 2, 30, [3]float64{3, 10, 0}, 2},
	{"deaf", 3, 50, [3]float64{}, 3},
}

var madeUpProperties = []fit.Property{
	{Name: "bend", Least: 0.4, Most: 1.6}, {Name: "loop", Least: 0, Most: 1, Linear: true},
	{Name: "idle", Least: 0.6, Most: 1.4, Bell: true},
}

// draw draws how many times its value a property is, as it is known.
func draw(p fit.Property, r *rand.Rand) float64 {
	if !p.Bell {
		return p.Least + (p.Most-p.Least)*r.Float64()
	}
	for {
		if k := 1 + (p.Most-1)/2*r.NormFloat64(); k >= p.Least && k <= p.Most {
			return k
		}
	}
}

// figure is what a hand makes of the i-th figure of a cloth.
func figure(i int, times []float64, r *rand.Rand) float64 {
	m := madeUp[i]
	v := m.at + m.hand*r.NormFloat64()
	for k, p := range madeUpProperties {
		x := times[k]
		if !p.Linear {
			x = math.Log(x)
		}
		v += m.slopes[k] * x
	}
	return v
}

// experiment draws 12 cloths hung by two hands each, and so many toiles of a cloth that
// is hidden, each placed by a hand of its own and read with a ruler that errs by 5 mm.
func experiment(r *rand.Rand, toiles int) (e fit.Experiment, truth []float64) {
	e.Properties = madeUpProperties
	one := func() (times []float64) {
		for _, p := range madeUpProperties {
			times = append(times, draw(p, r))
		}
		return times
	}
	for range 12 {
		e.Cloths = append(e.Cloths, one())
	}
	truth = one()
	for i, m := range madeUp {
		f := fit.Figure{Name: m.name, Kind: m.kind, Toiles: toiles, Ruler: 5}
		for range toiles {
			f.Measured += (figure(i, truth, r) + 5*r.NormFloat64()) / float64(toiles)
		}
		for _, c := range e.Cloths {
			f.Drawn = append(f.Drawn, []float64{figure(i, c, r), figure(i, c, r)})
		}
		e.Figures = append(e.Figures, f)
	}
	return e, truth
}

// experiments counts how often the truth lies in the interval of each property and how often
// the property tells.
func experiments(t *testing.T, n, toiles int, seed uint64) (holds, tells []int, agrees int) {
	t.Helper()
	holds, tells = make([]int, len(madeUpProperties)), make([]int, len(madeUpProperties))
	for k := range n {
		e, truth := experiment(rand.New(rand.NewPCG(seed, uint64(k))), toiles)
		got, err := fit.Fit(e)
		if err != nil {
			t.Fatal(err)
		}
		if got.Agrees() {
			agrees++
		}
		for i, in := range got.Intervals {
			if in.Low <= truth[i] && truth[i] <= in.High {
				holds[i]++
			}
			if in.Tells {
				tells[i]++
			}
		}
	}
	return holds, tells, agrees
}

// In 20 trials the truth lies in the 90 % interval 17 times or more, and of the property
// that no figure depends on it is said that the toiles cannot tell. In 100 trials the
// interval is what it says: 90 %, three deviations of 100 trials either way.
func TestTruthInInterval(t *testing.T) {
	for _, q := range []struct {
		trials, toiles int
		least, most    float64 // share of the trials
	}{{20, 3, 0.85, 1}, {100, 1, 0.81, 0.99}, {100, 6, 0.81, 0.99}} {
		holds, tells, agrees := experiments(t, q.trials, q.toiles, 1)
		t.Logf("%d trials of %d toiles: truth held %v, told %v, agreed %d", q.trials, q.toiles, holds, tells, agrees)
		for i, p := range madeUpProperties {
			if share := float64(holds[i]) / float64(q.trials); share < q.least || share > q.most {
				t.Errorf("%s: the truth lay in the interval in %d of %d trials, want %.0f to %.0f %%", p.Name, holds[i], q.trials,
					100*q.least, 100*q.most)
			}
		}
		if tells[2] > q.trials/10 {
			t.Errorf("idle: told in %d of %d trials, want 'cannot tell'", tells[2], q.trials)
		}
		if agrees < q.trials*85/100 {
			t.Errorf("some cloth agreed in %d of %d trials, want 85 %% or more", agrees, q.trials)
		}
	}
}

// Many toiles tell of the loop what one does not.
func TestNarrows(t *testing.T) {
	_, few, _ := experiments(t, 20, 1, 2)
	_, many, _ := experiments(t, 20, 20, 2)
	if many[1] <= few[1] || many[1] < 15 {
		t.Errorf("the loop was told in %d of 20 trials of one toile and in %d of 20 toiles, want more and 15 or more",
			few[1], many[1])
	}
}

// The errors of figures that go together are not counted twice: the same figure ten times
// over, with the same errors of the other properties, tells no more than once.
func TestNotTwice(t *testing.T) {
	once, tenfold := fit.Experiment{Properties: []fit.Property{{Name: "bend", Least: 0.4, Most: 1.6}}}, fit.Experiment{}
	tenfold.Properties = once.Properties
	r := rand.New(rand.NewPCG(3, 3))
	f := fit.Figure{Name: "drop", Measured: 150, Toiles: 50, Ruler: 0.1}
	for range 12 {
		k := draw(once.Properties[0], r)
		once.Cloths = append(once.Cloths, []float64{k})
		v := 150 - 20*math.Log(k) + 6*r.NormFloat64() // by what is not looked for
		f.Drawn = append(f.Drawn, []float64{v - 0.1, v + 0.1})
	}
	once.Figures, tenfold.Cloths = []fit.Figure{f}, once.Cloths
	for range 10 {
		tenfold.Figures = append(tenfold.Figures, f)
	}
	a, err := fit.Fit(once)
	b, err2 := fit.Fit(tenfold)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	if x, y := a.Intervals[0].Share, b.Intervals[0].Share; y < 0.8*x {
		t.Errorf("the interval took %.2f of the range by one figure and %.2f by the same ten times, want no less than "+
			"four fifths", x, y)
	}
}

// What the lattice errs by is common to all toiles: a thousand of them do not narrow it.
func TestLattice(t *testing.T) {
	share := func(lattice float64) float64 {
		e, _ := experiment(rand.New(rand.NewPCG(4, 4)), 1000)
		for i := range e.Figures {
			e.Figures[i].Lattice = lattice
		}
		got, err := fit.Fit(e)
		if err != nil {
			t.Fatal(err)
		}
		return got.Intervals[0].Share
	}
	if fine, coarse := share(0), share(100); coarse < 0.85 || fine > 0.5 {
		t.Errorf("bend: %.2f of the range with no error of the lattice, %.2f with 100 mm, want under 0.5 and over 0.85",
			fine, coarse)
	}
}

// Toiles that no cloth within what is known can make are told, and so are figures that
// too few cloths have.
func TestMisfit(t *testing.T) {
	e, _ := experiment(rand.New(rand.NewPCG(5, 5)), 3)
	e.Figures[0].Measured += 100
	for i := range 8 {
		e.Figures[4].Drawn[i] = []float64{math.NaN(), math.NaN()}
	}
	got, err := fit.Fit(e)
	if err != nil || got.Agrees() {
		t.Errorf("a drop 100 mm off: misfit %.1f, allowed %.1f, %v, want more than allowed", got.Misfit, got.Allowed, err)
	}
	if len(got.Used) != 4 || len(got.Left) != 1 || !strings.Contains(got.Left[0], "deaf: only 4 of 12") {
		t.Errorf("used %d figures, left %q, want 4 and the deaf one", len(got.Used), got.Left)
	}
	for _, f := range e.Figures {
		for i := range f.Drawn {
			f.Drawn[i] = []float64{math.NaN(), math.NaN()}
		}
	}
	if _, err := fit.Fit(e); err == nil || !strings.Contains(err.Error(), "no figure can be used") {
		t.Errorf("nothing drawn: %v, want an error", err)
	}
	e.Properties[0].Most = e.Properties[0].Least
	if _, err := fit.Fit(e); err == nil || !strings.Contains(err.Error(), "bend: known within") {
		t.Errorf("no range: %v, want an error", err)
	}
}

// The same experiment gives the same bits.
func TestSameBits(t *testing.T) {
	e, _ := experiment(rand.New(rand.NewPCG(6, 6)), 2)
	a, _ := fit.Fit(e)
	b, _ := fit.Fit(e)
	for i := range a.Intervals {
		if a.Intervals[i] != b.Intervals[i] {
			t.Errorf("%+v, then %+v", a.Intervals[i], b.Intervals[i])
		}
	}
}
