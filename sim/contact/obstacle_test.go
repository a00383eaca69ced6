package contact

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// slope is a plane through the origin with a unit normal.
type slope struct{ n r3.Vec }

func (s slope) Distance(p r3.Vec) (float64, r3.Vec) { return r3.Dot(s.n, p), s.n }

// globe is a sphere about the origin.
type globe float64

func (b globe) Distance(p r3.Vec) (float64, r3.Vec) {
	l := r3.Norm(p)
	return l - float64(b), r3.Scale(1/l, p)
}

// Without friction the force is the slope of ½·k·depth²·(1 + h²/2), and nothing acts
// beyond the shell.
func TestPressIsSlope(t *testing.T) {
	const shell, k, step = 0.001, 70.0, 1e-7
	r := rand.New(rand.NewPCG(1, 2))
	touching, free := 0, 0
	for range 500 {
		p := r3.Scale(0.05+0.004*(2*r.Float64()-1),
			r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}))
		energy := func(q r3.Vec) float64 {
			depth := math.Max(0, shell-(r3.Norm(q)-0.05))
			h := harden * depth / shell
			return k * depth * depth / 2 * (1 + h*h/2)
		}
		along := func(d r3.Vec) float64 { return (energy(r3.Sub(p, d)) - energy(r3.Add(p, d))) / (2 * step) }
		want := r3.Vec{X: along(r3.Vec{X: step}), Y: along(r3.Vec{Y: step}), Z: along(r3.Vec{Z: step})}
		sum := []Sum{{Mass: 1}}
		NewAgainst(globe(0.05), shell, 0, []float64{k}).Add(0, 1, []r3.Vec{p}, sum, 0)
		force, mass := sum[0].Force, sum[0].Mass
		if d := r3.Norm(r3.Sub(force, want)); d > 1e-6*k*shell {
			t.Errorf("Add at %v = %v N, want %v", p, force, want)
		}
		if r3.Norm(p) > 0.05+shell {
			free++
			if force != (r3.Vec{}) {
				t.Errorf("Add at %v, beyond the shell = %v N, want none", p, force)
			}
			if near := r3.Norm(p) < 0.05+shell+soon; near != (mass > 1) {
				t.Errorf("Add at %v, beyond the shell, adds mass %g, want some within %g m of it", p, mass-1, soon)
			}
		} else if touching++; mass <= 1 {
			t.Errorf("Add at %v adds no mass, want the contact's", p)
		}
	}
	if touching < 100 || free < 100 {
		t.Errorf("%d touching and %d free, want hundreds", touching, free)
	}
}

// slide lets a weight rest on a slope at angle a for many steps and returns how
// far it has gone down it.
func slide(mu, a float64) float64 {
	const k, weight, shell = 50.0, 1e-4, 0.001
	s, c := math.Sincos(a)
	x, v := []r3.Vec{{Y: shell * c, X: shell * s}}, r3.Vec{}
	on := NewAgainst(slope{r3.Vec{X: s, Y: c}}, shell, mu, []float64{k})
	start := x[0]
	for step := range 3000 {
		f := []Sum{{Force: r3.Vec{Y: -weight}}}
		on.Add(0, 1, x, f, float64(step))
		if f[0].Mass == 0 {
			f[0].Mass = 1.1 * k // in the air above the shell
		}
		v = r3.Scale(0.9, r3.Add(v, r3.Scale(1/f[0].Mass, f[0].Force)))
		x[0] = r3.Add(x[0], v)
	}
	return r3.Norm(r3.Sub(x[0], start))
}

// A weight slips at tan⁻¹ μ (Coulomb 1785): it rests half a degree below and
// slides half a degree above.
func TestSlip(t *testing.T) {
	n := 0
	for _, mu := range []float64{0.1, 0.25, 0.4, 0.8} {
		at, half := math.Atan(mu), 0.5*math.Pi/180
		// At rest a weight has sunk weight/k = 2 µm and crept as little.
		if got := slide(mu, at-half); got > 20e-6 {
			t.Errorf("μ = %g, %.2f°: slid %g m, want rest", mu, (at-half)*180/math.Pi, got)
		}
		if got := slide(mu, at+half); got < 60e-6 {
			t.Errorf("μ = %g, %.2f°: slid %g m, want sliding", mu, (at+half)*180/math.Pi, got)
		}
		n++
	}
	if n != 4 {
		t.Errorf("%d frictions, want 4", n)
	}
}

// With friction off, any slope lets go.
func TestNoFriction(t *testing.T) {
	if got := slide(0, 0.5*math.Pi/180); got < 60e-6 {
		t.Errorf("μ = 0, 0.5°: slid %g m, want sliding", got)
	}
}
