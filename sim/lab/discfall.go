package lab

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// circle returns the outline of the specimen.
func (d DiscSetup) circle() []r2.Vec {
	const corners = 360
	out := make([]r2.Vec, corners)
	for k := range out {
		a := 2 * math.Pi * float64(k) / corners
		out[k] = r2.Vec{X: d.Specimen / 2 * math.Cos(a), Y: d.Specimen / 2 * math.Sin(a)}
	}
	return out
}

// setUp puts the cloth flat on the plate.
func (d DiscSetup) setUp(s sim.Stiffness, spacing float64) (*bench, error) {
	l, err := lattice.Cut(d.circle(), lattice.Options{Spacing: spacing, Grain: d.Grain})
	if err != nil {
		return nil, err
	}
	k := &bench{lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s), Fixed: d.clamp(l), Obstacle: plate(d.Disc / 2),
		Friction: d.Friction, Gap: d.Gap, Alone: true}}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Z: -p.Y}
	}
	k.state = sim.NewState(k.system, pos)
	return k, nil
}

// clamp fixes the crossings between the plates and those just beyond. A yarn
// whose last fixed crossing lies at x bends as if it were clamped at x − h/2,
// since the stencil there spreads the bend over the clamped half too, and the
// last one inside a line lies h/2 before it in the mean. To clamp at the rim of
// the plates the line must lie farther out by a spacing along the yarns, less
// across them: h/√2 as a mean over the turns. From 6.5 mm down that leaves the
// sag of a stiff ring within 2 % of its closed form; at 8 mm it is 13 % off.
func (d DiscSetup) clamp(l *lattice.Lattice) []bool {
	fixed := make([]bool, len(l.Rest))
	for i, p := range l.Rest {
		fixed[i] = r2.Norm(p) <= d.Disc/2+l.Spacing/math.Sqrt2
	}
	return fixed
}

// drape lets the cloth fall once, coarse first. The coarse lattice decides the
// nodes, so it must bend like the cloth: half a bending length and a tenth of the overhang at
// most. (A fifth was too much: isotropic cloth of 40 µN·m fell into 8 nodes on 12 mm and kept
// them on 6, where from the start it makes 4 of far less energy.)
func (d DiscSetup) drape(ctx context.Context, s sim.Stiffness, placing int) (Draped, error) {
	var r Draped
	var k *bench
	c := (GravityLength(s, 0) + GravityLength(s, math.Pi/2)) / 2
	for _, spacing := range halvings(d.Spacing, math.Min(c/2, (d.Specimen-d.Disc)/2/10)) {
		next, err := d.setUp(s, spacing)
		if err != nil {
			return r, err
		}
		next.stage, next.report = fmt.Sprintf("fall %d of %d", placing+1, d.Placings), d.Report
		if k == nil {
			d.ripple(next, uint64(placing))
			d.let(ctx, next, &r.Run)
		} else {
			k.carry(next)
		}
		k = next
		if spacing != d.Spacing {
			k.relax(ctx, &r.Run, sim.Settings{Residual: 1e-2, Steps: 150_000})
		}
	}
	k.shake(ctx, d.Shake, &r.Run)
	k.relax(ctx, &r.Run, sim.Settings{Residual: 1e-3, Steps: 150_000})
	d.read(k, &r)
	return r, nil
}

// halve carries a placing on to half the spacing.
func (d DiscSetup) halve(ctx context.Context, s sim.Stiffness, from Draped) (*Draped, error) {
	k, err := d.setUp(s, from.Spacing/2)
	if err != nil {
		return nil, err
	}
	k.stage, k.report = "halved", d.Report
	from.bench.carry(k)
	out := &Draped{}
	k.relax(ctx, &out.Run, sim.Settings{Residual: 1e-3, Steps: 150_000})
	d.read(k, out)
	return out, nil
}

// shakes is how many times the stand goes up and down.
const shakes = 3

// shake shakes the stand with strength a: the cloth comes near rest under the heavier
// and the lighter weight in turn.
func (k *bench) shake(ctx context.Context, a float64, r *Run) {
	if a == 0 {
		return
	}
	c := k.system.Cloth
	full := slices.Clone(c.Load)
	k.relax(ctx, r, sim.Settings{Residual: 2e-2, Steps: 50_000})
	for range shakes {
		for _, weight := range [2]float64{1 + a, 1 - a} {
			for i, w := range full {
				c.Load[i] = weight * w
			}
			k.relax(ctx, r, sim.Settings{Residual: 2e-2, Steps: 20_000})
		}
	}
	copy(c.Load, full)
}

// let brings the cloth on its way.
func (d DiscSetup) let(ctx context.Context, k *bench, r *Run) {
	switch d.Fall {
	case Slow:
		k.burden(ctx, r)
	case Lowered:
		d.lower(ctx, k, r)
	}
}

// burden lets the weight come on slowly: from a twentieth, doubled time and
// again, each time nearly to rest.
func (k *bench) burden(ctx context.Context, r *Run) {
	c := k.system.Cloth
	full := slices.Clone(c.Load)
	for share := 0.05; share < 1; share *= 2 {
		for i, w := range full {
			c.Load[i] = share * w
		}
		k.relax(ctx, r, sim.Settings{Residual: 1e-2 * share, Steps: 50_000})
	}
	copy(c.Load, full)
}

// lower lets the cloth lie on a table level with the plate and lowers it by a
// twelfth of the overhang at a time, each time to about rest, until the cloth
// hangs free of it.
func (d DiscSetup) lower(ctx context.Context, k *bench, r *Run) {
	over := (d.Specimen - d.Disc) / 2
	rim := k.system.Obstacle
	for step := 1; step <= 13 && ctx.Err() == nil; step++ {
		k.system.Obstacle = table{rim, -over * float64(step) / 12}
		k.relax(ctx, r, sim.Settings{Residual: 2e-2, Steps: 4000})
	}
	k.system.Obstacle = rim
}

// The first wave of the hanging part of the cloth: a random sum of all waves
// round the disc between so many, this high at the rim (m).
const (
	fewest, most = 2, 14
	first        = 1e-3
)

// ripple lays the first wave into the flat cloth.
func (d DiscSetup) ripple(k *bench, seed uint64) {
	rng := rand.New(rand.NewPCG(seed, 0))
	var high, turn [most + 1]float64
	for n := fewest; n <= most; n++ {
		high[n], turn[n] = first*rng.NormFloat64(), 2*math.Pi*rng.Float64()
	}
	for i, p := range k.lattice.Rest {
		if k.system.Fixed[i] {
			continue
		}
		out := (r2.Norm(p) - d.Disc/2) / (d.Specimen/2 - d.Disc/2)
		for n := fewest; n <= most; n++ {
			k.state.Pos[i].Y += out * out * high[n] * math.Cos(float64(n)*math.Atan2(p.Y, p.X)+turn[n])
		}
	}
}

// read reads the cloth at rest.
func (d DiscSetup) read(k *bench, r *Draped) {
	r.bench = k
	sheet := k.lattice.Skin().Sheet(k.state.Pos, math.Inf(1))
	r.Shadow = shadowOf(&sheet, d.Disc/2, 0.55*d.Specimen)
	disc := math.Pi / 4 * d.Disc * d.Disc
	r.Coefficient = (r.Shadow.Area() - disc) / (math.Pi/4*d.Specimen*d.Specimen - disc)
	r.Nodes = r.Shadow.Nodes()
	c := k.system.Cloth
	r.Energy = c.Stored(k.state.Pos).Total()
	for i, x := range k.state.Pos {
		r.Energy += c.Load[i] * x.Y
	}
}
