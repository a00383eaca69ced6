package lab

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"cowl/sim"
)

// HangSetup is a sheet hung by its two upper corners; zero values take the default.
type HangSetup struct {
	Width    float64        // m, of the edge between the corners, 0.05–3; 0 means 0.6
	Height   float64        // m, 0.05–3; 0 means as wide
	Span     float64        // m between the two points; 0 means 0.8 of the width
	Grain    float64        // rad, from the upright of the sheet to the warp
	Spacing  float64        // m; 0 means a thirtieth of the width
	Placings int            // ways to bring the corners together, 1–12; 0 means all
	Shakes   int            // times the best is shaken and let hang again, 0–500
	Gap      float64        // m, kept between layers of the cloth; 0 lets them pass
	Report   func(Progress) // called now and then, may be nil
}

// HangResult is what a hung sheet reads in the state of least energy.
type HangResult struct {
	Drop    float64   // m, of the middle of the edge below the points
	Forward float64   // m, of that middle out of the plane of the points
	Curve   float64   // m, drop of an edge that hangs alone in a hanging curve
	V       float64   // m, drop of an edge drawn into a V, the deepest that it can without growing
	Energy  float64   // J, stored and of height; 0 is the flat sheet upright, its edge level with the points
	Stored  float64   // J, in the cloth
	Each    []Hanging // one a placing and one a shake, that of least energy first
	Least   []Least   // on each lattice, coarse to fine
	Run               // steps and seconds of all
}

// Least is the least energy found on a lattice.
type Least struct {
	Spacing float64 // m
	Energy  float64 // J
	Nodes   int
}

// Hanging is one placing at rest.
type Hanging struct {
	Name          string
	Spacing       float64 // m, of the finest lattice it was taken to
	Drop, Forward float64 // m
	Energy        float64 // J
	Status        sim.Status

	bench  *bench
	stored float64 // J
}

// carried is how many of the states found on a coarse lattice are taken to finer ones.
const carried = 2

// Hang hangs the sheet in several ways, for a hung sheet has many states of
// rest, and reads the one of least energy. All are tried on a coarse lattice;
// the best is shaken and hung again, as often as asked for; those of least
// energy are taken to finer lattices, each at rest before the next. It fails
// where the setup is out of range.
func Hang(ctx context.Context, s sim.Stiffness, h HangSetup) (HangResult, error) {
	h.defaults()
	var out HangResult
	if err := h.check(); err != nil {
		return out, err
	}
	lattices := halvings(h.Spacing, math.Max(h.Spacing, h.Width/24))
	if err := h.search(ctx, s, lattices[0], &out); err != nil {
		return out, err
	}
	slices.SortStableFunc(out.Each, byEnergy)
	best := out.Each[:min(carried, len(out.Each))]
	for i, spacing := range lattices {
		if i > 0 {
			if err := h.refine(ctx, s, spacing, best, &out.Run); err != nil {
				return out, err
			}
		}
		k := best[0].bench
		k.relax(ctx, &out.Run, sim.Settings{Residual: 2e-4})
		best[0] = h.read(best[0].Name, k, out.Run)
		out.Least = append(out.Least, Least{spacing, best[0].Energy, len(k.state.Pos)})
	}
	out.Drop, out.Forward, out.Energy, out.Stored = best[0].Drop, best[0].Forward, best[0].Energy, best[0].stored
	out.Curve, out.V = HangingDrop(h.Width, h.Span)
	return out, nil
}

// search tries all placings on a lattice, then shakes the best that there is.
func (h HangSetup) search(ctx context.Context, s sim.Stiffness, spacing float64, out *HangResult) error {
	var best *bench
	least := Hanging{Energy: math.Inf(1)}
	for i := range h.Placings + h.Shakes {
		p := placings[0]
		if i < h.Placings {
			p = placings[i]
		}
		k, err := h.setUp(s, spacing, p)
		if err != nil {
			return err
		}
		name, high := p.name, uneven
		k.stage = fmt.Sprintf("placing %d of %d", i+1, h.Placings)
		if i >= h.Placings {
			best.carry(k)
			name, high = fmt.Sprintf("shake %d", i-h.Placings+1), shaken*h.Width
			k.stage = fmt.Sprintf("%s of %d", name, h.Shakes)
		}
		k.report = h.Report
		h.shake(k, uint64(i), high)
		e := h.rest(ctx, name, k, &out.Run)
		if best == nil || byEnergy(e, least) < 0 {
			best, least = k, e
		}
		out.Each = append(out.Each, e)
	}
	return nil
}

// refine takes the states to a lattice of the given spacing and puts them in
// the order of their energy there.
func (h HangSetup) refine(ctx context.Context, s sim.Stiffness, spacing float64, states []Hanging, r *Run) error {
	for i, e := range states {
		next, err := h.setUp(s, spacing, placings[0])
		if err != nil {
			return err
		}
		e.bench.carry(next)
		next.stage, next.report = fmt.Sprintf("state %d of %d", i+1, len(states)), h.Report
		states[i] = h.rest(ctx, e.Name, next, r)
	}
	slices.SortStableFunc(states, byEnergy)
	return nil
}

// rest brings the sheet to rest and reads it.
func (h HangSetup) rest(ctx context.Context, name string, k *bench, r *Run) Hanging {
	k.relax(ctx, r, sim.Settings{})
	return h.read(name, k, *r)
}

// byEnergy puts what has settled first, and of that the least energy.
func byEnergy(a, b Hanging) int {
	if settled := a.Status == sim.Settled; settled != (b.Status == sim.Settled) {
		if settled {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.Energy, b.Energy)
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
		h.Placings = len(placings)
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
	return errors.Join(
		within("placings", float64(h.Placings), 1, float64(len(placings)), 1, "starts"),
		within("shakes", float64(h.Shakes), 0, 500, 1, "times"),
		within("gap", h.Gap, 0, 0.005, 1000, "mm"))
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
