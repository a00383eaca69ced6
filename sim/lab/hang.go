package lab

import (
	"context"
	"math"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// HangSetup is a sheet hung by its two upper corners; zero values take the default.
type HangSetup struct {
	Width    float64 // m, of the edge between the corners, 0.05–3; 0 means 0.6
	Height   float64 // m, 0.05–3; 0 means as wide
	Span     float64 // m between the two points; 0 means 0.8 of the width
	Grain    float64 // rad, from the upright of the sheet to the warp
	Spacing  float64 // m; 0 means a thirtieth of the width
	Placings int     // ways to bring the corners together, 1–12; 0 means 3
}

// HangResult is what a hung sheet reads in the placing of least energy.
type HangResult struct {
	Drop    float64   // m, of the middle of the edge below the points
	Forward float64   // m, of that middle out of the plane of the points
	Curve   float64   // m, drop of an edge that hangs alone in a hanging curve
	V       float64   // m, drop of an edge drawn into a V, the deepest that it can without growing
	Energy  float64   // J, stored and of height; 0 is the flat sheet upright, its edge level with the points
	Stored  float64   // J, in the cloth
	Each    []Hanging // one a placing, in the order tried
	Run
}

// Hanging is one placing at rest.
type Hanging struct {
	Name          string
	Drop, Forward float64 // m
	Energy        float64 // J
	Status        sim.Status
}

// Hang hangs the sheet in several ways and reads the one of least energy: a
// hung sheet has many states of rest. It fails where the setup is out of range.
func Hang(ctx context.Context, s sim.Stiffness, h HangSetup) (HangResult, error) {
	h.defaults()
	var best HangResult
	if err := h.check(); err != nil {
		return best, err
	}
	var all Run
	var each []Hanging
	var kept *bench
	for _, p := range placings[:h.Placings] {
		k, r, err := h.place(ctx, s, p)
		if err != nil {
			return r, err
		}
		all.Steps, all.Seconds = all.Steps+r.Steps, all.Seconds+r.Seconds
		each = append(each, Hanging{p.name, r.Drop, r.Forward, r.Energy, r.Status})
		if kept == nil || r.Status == sim.Settled && (best.Status != sim.Settled || r.Energy < best.Energy) {
			best, kept = r, k
		}
		if ctx.Err() != nil {
			break
		}
	}
	best.Run = all
	kept.relax(ctx, &best.Run, sim.Settings{Residual: 2e-4})
	h.read(kept, &best)
	best.Each = each
	best.Curve, best.V = HangingDrop(h.Width, h.Span)
	return best, nil
}

func (h *HangSetup) defaults() {
	if h.Width == 0 {
		h.Width = 0.6
	}
	if h.Height == 0 {
		h.Height = h.Width
	}
	if h.Span == 0 {
		h.Span = 0.8 * h.Width
	}
	if h.Spacing == 0 {
		h.Spacing = h.Width / 30
	}
	if h.Placings == 0 {
		h.Placings = 3
	}
}

// check tells what is out of range.
func (h HangSetup) check() error {
	for _, c := range []struct {
		name         string
		v, low, high float64
	}{
		{"width", h.Width, 0.05, 3}, {"length", h.Height, 0.05, 3},
		{"span", h.Span, 0.2 * h.Width, 0.999 * h.Width},
		{"spacing", h.Spacing, h.Width / 400, h.Width / 8},
	} {
		if err := within(c.name, c.v, c.low, c.high, 1000, "mm"); err != nil {
			return err
		}
	}
	return within("placings", float64(h.Placings), 1, float64(len(placings)), 1, "starts")
}

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
	{"fallen, two waves", 0.9, 2}, {"fallen, three waves", 0.9, 3}, {"four waves", 0, 4}, {"fallen, four waves", 0.9, 4}, {"five waves", 0, 5},
}

// place hangs the sheet in one way, coarse first.
func (h HangSetup) place(ctx context.Context, s sim.Stiffness, p placing) (*bench, HangResult, error) {
	var r HangResult
	var k *bench
	for _, spacing := range halvings(h.Spacing, math.Max(h.Spacing, h.Width/24)) {
		next, err := h.lay(s, spacing, p)
		if err != nil {
			return nil, r, err
		}
		o := sim.Settings{Residual: 1e-2}
		if k != nil {
			k.carry(next)
		}
		if spacing == h.Spacing {
			o.Residual = 1e-3
		}
		k = next
		k.relax(ctx, &r.Run, o)
	}
	h.read(k, &r)
	return k, r, nil
}

// halvings lists spacings from a coarse one, at most coarsest, to the finest,
// each half the one before.
func halvings(finest, coarsest float64) []float64 {
	out := []float64{finest}
	for 2*out[0] <= coarsest*(1+1e-9) {
		out = append([]float64{2 * out[0]}, out...)
	}
	return out
}

// pin is the stiffness of the two points, N/m.
const pin = 2000

// lay puts the sheet in its placing, its corners on the points.
func (h HangSetup) lay(s sim.Stiffness, spacing float64, p placing) (*bench, error) {
	corner := r2.Vec{X: h.Width / 2, Y: h.Height / 2}
	l, err := lattice.Cut(rectangle(h.Width, h.Height), lattice.Options{Spacing: spacing, Grain: h.Grain, Origin: corner})
	if err != nil {
		return nil, err
	}
	k := &bench{lattice: l, scene: &sim.Scene{Cloth: sim.NewCloth(l, s)}}
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
	k.state = sim.NewState(k.scene, pos)
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

// read reads the sheet at rest.
func (h HangSetup) read(k *bench, r *HangResult) {
	c := k.scene.Cloth
	mid := k.at(r2.Vec{Y: h.Height / 2})
	r.Drop, r.Forward = -mid.Y, mid.Z
	r.Stored = c.Stored(k.state.Pos).Total()
	r.Energy = r.Stored
	for i, x := range k.state.Pos {
		r.Energy += c.Load[i] * (x.Y - (k.lattice.Rest[i].Y - h.Height/2))
	}
}
