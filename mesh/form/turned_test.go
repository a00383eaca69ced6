package form

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Turned by half a turn about Y, a form is the same body seen from behind: a place is as
// far from it as the turned place was, and its lines are those of the back.
func TestTurned(t *testing.T) {
	f := build(t, 12)
	back := f.Turned()
	half := func(p r3.Vec) r3.Vec { return r3.Vec{X: -p.X, Y: p.Y, Z: -p.Z} }
	rng := rand.New(rand.NewPCG(3, 3))
	for range 2000 {
		p := r3.Vec{X: rng.Float64()*0.8 - 0.4, Y: rng.Float64()*0.9 - 0.3, Z: rng.Float64()*0.6 - 0.3}
		d, n := f.Distance(p)
		e, m := back.Distance(half(p))
		if math.Abs(d-e) > 1e-7 || r3.Norm(r3.Sub(half(n), m)) > 1e-5 {
			t.Fatalf("Distance(%v): turned %.9f %v, want %.9f %v", p, e, m, d, half(n))
		}
	}
	if msg := closedSurface(back.Surface()); msg != "" {
		t.Errorf("Turned: %s", msg)
	}
	for k, p := range back.Surface().Pos {
		if d, n := back.Distance(p); math.Abs(d) > 0.002 || r3.Dot(n, back.Surface().Normal[k]) < 0.5 {
			t.Fatalf("vertex %v of the turned form: distance %.4f, normal %v against %v", p, d, n, back.Surface().Normal[k])
		}
	}
	nape := f.NeckLine()[0]
	if got := back.FrontNeck(); r3.Norm(r3.Sub(got, half(nape))) > 0.004 {
		t.Errorf("FrontNeck of the turned form = %v, want the nape %v", got, half(nape))
	}
	if got, want := back.WaistQuarter()+f.WaistQuarter(), f.Girth(0)/2; math.Abs(got-want) > 0.003 {
		t.Errorf("front and back quarter of the waist: %.4f m, want half the girth %.4f m", got, want)
	}
	for _, s := range []float64{-1, 1} {
		if a, b := back.ShoulderPoint(s, 0.05), half(f.ShoulderPoint(-s, 0.05)); r3.Norm(r3.Sub(a, b)) > 1e-9 {
			t.Errorf("ShoulderPoint(%g) = %v, want %v", s, a, b)
		}
	}
	if again := back.Turned(); again.FrontNeck() != f.FrontNeck() || again.Apex(1) != f.Apex(1) ||
		again.WaistPoint(1, 0.3) != f.WaistPoint(1, 0.3) {
		t.Errorf("turned twice: front neck %v, apex %v, want those of the form, %v and %v", again.FrontNeck(), again.Apex(1),
			f.FrontNeck(), f.Apex(1))
	}
}

// The point of the back dart lies on the back, and the tape that bridges it lies nowhere
// inside the form.
func TestTurnedBlade(t *testing.T) {
	f := build(t, 12).Turned()
	b := size(t, 12)
	p := f.Apex(1)
	if d, _ := f.Distance(p); math.Abs(d) > 0.001 || p.Z <= 0 || math.Abs(p.X-b.BackWidth/4) > 1e-9 {
		t.Errorf("Apex of the turned form = %v, %.4f m off it, want it on the back %.4f m from CB", p, d, b.BackWidth/4)
	}
	count := 0
	for _, q := range f.CF() {
		count++
		if z := f.BridgedFront(q.Y); z < q.Z-0.001 {
			t.Errorf("BridgedFront(%.3f) = %.4f, want it not inside the centre back at %.4f", q.Y, z, q.Z)
		}
	}
	if count < 50 {
		t.Errorf("%d places of the centre back, want 50 or more", count)
	}
}
