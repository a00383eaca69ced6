package lab

import (
	"math"
	"math/rand/v2"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// placing is one way to bring the corners together: how much of the drop of a
// hanging curve the edge is given, and into how many half waves what is left of
// it is laid.
type placing struct {
	name  string
	fall  float64
	waves int
}

var placings = []placing{
	{"half fallen, one wave", 0.5, 1}, {"fallen as a hanging curve", 0.98, 1}, {"one wave forward", 0, 1},
	{"two waves", 0, 2}, {"three waves", 0, 3}, {"half fallen, two waves", 0.5, 2}, {"half fallen, three waves", 0.5, 3},
	{"fallen, two waves", 0.9, 2}, {"fallen, three waves", 0.9, 3}, {"four waves", 0, 4}, {"fallen, four waves", 0.9, 4},
	{"five waves", 0, 5},
}

// Real sheets hang no two sides alike: uneven is how far a placing is put off
// its plane, m, that it may not come to rest on an edge between two states.
// Shaken is how far a shake throws it, over its width.
const (
	uneven = 0.002
	shaken = 0.13
)

// shake throws the cloth out of its plane in a random sum of waves, each of a
// height about high/4 (m) and none at the sides.
func (h HangSetup) shake(k *bench, seed uint64, high float64) {
	rng := rand.New(rand.NewPCG(seed, 1))
	const across, down = 5, 4
	for m := 1; m <= across; m++ {
		for n := range down {
			a := high / down * rng.NormFloat64()
			for i, p := range k.lattice.Rest {
				k.state.Pos[i].Z += a * math.Sin(float64(m)*math.Pi*(p.X/h.Width+0.5)) *
					math.Cos(float64(n)*math.Pi*(p.Y/h.Height+0.5))
			}
		}
	}
}

// pin is the stiffness of the two points, N/m.
const pin = 2000

// setUp puts the sheet in its placing, its corners on the points.
func (h HangSetup) setUp(s sim.Stiffness, spacing float64, p placing) (*bench, error) {
	corner := r2.Vec{X: h.Width / 2, Y: h.Height / 2}
	l, err := lattice.Cut(rectangle(h.Width, h.Height), lattice.Options{Spacing: spacing, Grain: h.Grain, Origin: corner})
	if err != nil {
		return nil, err
	}
	k := &bench{lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s), Gap: h.Gap}}
	for _, q := range [2]r2.Vec{{X: -corner.X, Y: corner.Y}, corner} {
		if err := k.hold(q, sim.All); err != nil {
			return nil, err
		}
	}
	pos := make([]r3.Vec, len(l.Rest))
	wave := h.wave(p)
	for i, q := range l.Rest {
		pos[i] = wave(q)
	}
	k.state = sim.NewState(k.system, pos)
	for i, x := range [2]float64{-h.Span / 2, h.Span / 2} {
		k.state.Target[i], k.state.Grip[i] = r3.Vec{X: x}, pin
	}
	return k, nil
}

// wave returns where a flat point starts: the edge falls part of the way of a
// hanging curve of its own length and swings out in waves, as high as takes up
// the rest; the sheet hangs down from it.
func (h HangSetup) wave(p placing) func(r2.Vec) r3.Vec {
	deep, _ := HangingDrop(h.Width, h.Span)
	half := h.Width / 2
	path := func(high float64) func(s float64) r3.Vec {
		return func(s float64) r3.Vec {
			t := s / half
			return r3.Vec{X: t * h.Span / 2, Y: -p.fall * deep * (1 - t*t), Z: high * math.Sin(float64(p.waves)*math.Pi*(t+1)/2)}
		}
	}
	low, high := 1e-4, h.Width
	for range 50 {
		if mid := (low + high) / 2; arc(path(mid), half) < h.Width {
			low = mid
		} else {
			high = mid
		}
	}
	edge := path(low)
	return func(q r2.Vec) r3.Vec {
		return r3.Add(edge(q.X), r3.Vec{Y: q.Y - h.Height/2})
	}
}

// arc returns the length of a path from −half to half.
func arc(path func(float64) r3.Vec, half float64) float64 {
	const n = 200
	sum, last := 0.0, path(-half)
	for i := 1; i <= n; i++ {
		next := path(half * (2*float64(i)/n - 1))
		sum += r3.Norm(r3.Sub(next, last))
		last = next
	}
	return sum
}

// read reads the sheet where the last walk left it.
func (h HangSetup) read(name string, k *bench, r Run) Hanging {
	c := k.system.Cloth
	mid := k.at(r2.Vec{Y: h.Height / 2})
	e := Hanging{Name: name, Spacing: k.lattice.Spacing, Drop: -mid.Y, Forward: mid.Z, Status: r.Status, bench: k}
	e.stored = c.Stored(k.state.Pos).Total()
	e.Energy = e.stored
	for i, x := range k.state.Pos {
		e.Energy += c.Load[i] * (x.Y - (k.lattice.Rest[i].Y - h.Height/2))
	}
	return e
}
