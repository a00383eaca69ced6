package drape

import (
	"context"
	"math"
	"sync"
	"testing"

	"cowl/materials"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim"
)

// size10 is the body, form and block of the tests, built once.
var size10 = sync.OnceValue(func() (s struct {
	form  *form.Form
	block draft.Block
}) {
	b, err := body.FromChart(10)
	if err == nil {
		s.form, err = form.FromBody(b)
	}
	if err == nil {
		s.block, err = draft.FromBody(b)
	}
	if err != nil {
		panic(err)
	}
	return s
})

// job returns a cowl of the given extension (m) at a spacing (m) in a fabric.
func job(t testing.TB, extension, spacing float64, fabric string) Job {
	t.Helper()
	f, err := materials.Find(fabric)
	if err != nil {
		t.Fatal(err)
	}
	c := draft.DefaultCut()
	c.Extension = extension
	p, err := draft.Draft(size10().block, c)
	if err != nil {
		t.Fatal(err)
	}
	return Job{Cowl: p, Fabric: f, Form: size10().form, Spacing: spacing, Waist: Pinned, Seed: 1}
}

const (
	limp  = "polyester-twill"        // bending length 10 mm
	stiff = "cotton-polyester-twill" // bending length 13 mm, shear 3 times that of limp
)

// sound fails the test unless the drape is a result: at rest, no layer through
// another, nothing in the form deeper than half a millimetre.
func sound(t *testing.T, name string, o Outcome) {
	t.Helper()
	if o.Status != sim.Settled || o.Residual > 1e-3 {
		t.Errorf("%s: %s with residual %.2g, want settled at 1e-3 or less (%s)", name, o.Status, o.Residual, o.Warning)
	}
	if o.Pierced != 0 {
		t.Errorf("%s: pierced %d, want 0", name, o.Pierced)
	}
	if o.Inside > 0.5e-3 {
		t.Errorf("%s: cloth %.2f mm inside the form, want 0.5 at most", name, o.Inside*1000)
	}
}

// The same seed gives the same bits, alone or beside other placings.
func TestSameSeedSameBits(t *testing.T) {
	j := job(t, 0.11, 0.020, limp)
	a, err := Hang(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	r, err := HangAll(context.Background(), j, 2)
	if err != nil {
		t.Fatal(err)
	}
	other := 0
	for i, p := range a.State.Pos {
		q := r.Drape.State.Pos[i]
		if math.Float64bits(p.X) != math.Float64bits(q.X) || math.Float64bits(p.Y) != math.Float64bits(q.Y) ||
			math.Float64bits(p.Z) != math.Float64bits(q.Z) {
			t.Fatalf("node %d lies at %v alone and at %v beside another, want the same bits", i, p, q)
		}
		other++
	}
	if other == 0 || r.Each[0].EdgeDrop == r.Each[1].EdgeDrop {
		t.Errorf("two seeds drop %v m, want two hands to differ", r.Outcome.EdgeDrops)
	}
}

// A cancelled drape says so and stops.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	d, err := Hang(ctx, job(t, 0.11, 0.012, limp))
	if err != nil || d.Result.Status != sim.Cancelled {
		t.Errorf("Hang = %v, %v after cancel, want cancelled", d.Result.Status, err)
	}
}

func TestSpacingRange(t *testing.T) {
	for _, h := range []float64{0.001, 0.05, math.NaN()} {
		if _, err := Hang(context.Background(), job(t, 0.11, h, limp)); err == nil {
			t.Errorf("Hang at %g m = nil error, want a refusal", h)
		}
	}
}

// run hangs a job by one hand.
func run(t testing.TB, j Job) *Run {
	t.Helper()
	r, err := HangAll(t.Context(), j, 1)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// fallen holds the demo let fall, by spacing, m.
var fallen = map[float64]*Run{}

// demoOn is the demo let fall on a spacing (m), hung once for all tests: they read it only.
func demoOn(t testing.TB, spacing float64) *Run {
	t.Helper()
	if fallen[spacing] == nil {
		fallen[spacing] = run(t, job(t, 0.11, spacing, limp))
	}
	return fallen[spacing]
}

// The demo of the README at 8 mm is a result, with a rolled edge that has
// fallen and a fold over the bust.
func TestDemo(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	o := demoOn(t, 0.008).Outcome
	sound(t, "demo", o)
	if o.EdgeDrop < 0.050 || o.FoldCount < 1 || o.MaxStrain > 0.10 {
		t.Errorf("demo drops %.0f mm with %d folds, strain %.1f %%, want a cowl", o.EdgeDrop*1000, o.FoldCount,
			o.MaxStrain*100)
	}
}

// At any grain angle, also those at which neither fold line nor CF runs
// along nodes, the cloth comes to rest sound. No outcome is asked for.
func TestEveryGrain(t *testing.T) {
	if testing.Short() {
		t.Skip("a minute")
	}
	for _, deg := range []float64{0, 22.5, 45, -30} {
		r := demoOn(t, 0.012)
		if deg != 45 {
			r = run(t, recut(t, job(t, 0.11, 0.012, limp), func(c *draft.Cut) { c.Grain = deg * math.Pi / 180 }))
		}
		o := r.Outcome
		sound(t, "grain", o)
		if math.Abs(o.Grain*180/math.Pi-deg) > 1e-9 {
			t.Errorf("grain %g° hung, want %g°", o.Grain*180/math.Pi, deg)
		}
		t.Logf("grain %5.1f°: drop %.1f mm, folds %v, radius %.1f mm, kinks %d, shear share %.2f, twist %.1f mm",
			deg, o.EdgeDrop*1000, o.Folds, o.FoldRadius*1000, o.Kinks, o.ShearShare, o.Twist*1000)
	}
}

// The wider the extension, the deeper the edge drops: the trade's first rule, for a
// limp and a stiff cloth. By one hand each, as hands differ by a few millimetres only
// and a step is more than thirty; the table in README.md has three.
func TestDropGrowsWithExtension(t *testing.T) {
	if testing.Short() {
		t.Skip("minutes")
	}
	for _, fabric := range []string{limp, stiff} {
		last := 0.0
		for _, cm := range []float64{3, 7, 11} {
			var r *Run
			if cm == 11 && fabric == limp {
				r = demoOn(t, 0.012)
			} else {
				r = run(t, job(t, cm/100, 0.012, fabric))
			}
			o := r.Outcome
			t.Logf("%s, extension %2.0f cm: drop %.1f mm, folds %v", fabric, cm, o.EdgeDrop*1000, o.FoldCounts)
			if o.EdgeDrop <= last+0.01 {
				t.Errorf("%s, extension %g cm: drop %.1f mm, want 10 mm more than the %.1f mm of the step before", fabric, cm,
					o.EdgeDrop*1000, last*1000)
			}
			last = o.EdgeDrop
		}
	}
}

// The drop by one hand does not hang on the lattice.
func TestDropOverSpacing(t *testing.T) {
	if testing.Short() {
		t.Skip("minutes")
	}
	var drops []float64
	for _, mm := range []float64{12, 8, 6} {
		drops = append(drops, demoOn(t, mm/1000).Outcome.EdgeDrop*1000)
	}
	t.Logf("drop at 12, 8, 6 mm: %.1f mm", drops)
	for _, a := range drops {
		for _, b := range drops {
			if a > 1.08*b {
				t.Errorf("drops %.1f mm, want them within 8 %%", drops)
			}
		}
	}
}

// A chain 1 m long hung 60 cm apart sags 0.363 m with a least radius of
// 0.163 m: S = 2a sinh(d/2a), f = a(cosh(d/2a) − 1).
func TestHangingCurve(t *testing.T) {
	c := hangingCurve(0.3, 0.5)
	if math.Abs(c.drop-0.363) > 5e-4 || math.Abs(c.a-0.163) > 5e-4 {
		t.Errorf("hangingCurve(0.3, 0.5) drops %.4f m with a = %.4f m, want 0.363, 0.163", c.drop, c.a)
	}
	if x, y := c.at(1); math.Abs(x-0.3) > 1e-9 || math.Abs(y) > 1e-9 {
		t.Errorf("at(1) = %g, %g, want the end 0.3, 0", x, y)
	}
	if x, y := c.at(0); x != 0 || math.Abs(y-c.drop) > 1e-12 {
		t.Errorf("at(0) = %g, %g, want the middle 0, %g", x, y, c.drop)
	}
	if x, y := hangingCurve(0.3, 0.2).at(0.5); x != 0.15 || y != 0 {
		t.Errorf("taut at(0.5) = %g, %g, want 0.15, 0", x, y)
	}
}
