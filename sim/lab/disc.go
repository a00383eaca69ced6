package lab

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// DiscSetup is a drape meter: a round specimen held between two plates of a
// smaller diameter and let fall; zero values take the default.
type DiscSetup struct {
	Specimen float64 // m, diameter of the cloth, 0.1–0.6; 0 means 0.30
	Disc     float64 // m, diameter of the plates; 0 means 0.18
	Grain    float64 // rad, turn of the warp; only the mesh can feel it
	Friction float64 // cloth on the rim of the plate
	Spacing  float64 // m; 0 means a quarter of the bending length, within 4–6 mm
	Placings int     // times the cloth is let fall, 1–48; 0 means 4
	Slow     bool    // weight comes on slowly, instead of all at once
}

// DiscResult is what a drape meter reads over all placings.
type DiscResult struct {
	Coefficient float64     // mean over the placings, a fraction: (shadow − disc)/(specimen − disc)
	Spread      float64     // its standard deviation over the placings; 0 for one
	Count       int         // most frequent number of nodes; of equals the one nearest to the mean
	Counts      map[int]int // placings by number of nodes
	Each        []Draped    // one a placing
	Typical     int         // index of the placing with Count nodes and a coefficient nearest to the mean
	Run                     // status and residual of the placing that is least at rest; steps and seconds of all
}

// Draped is one placing at rest.
type Draped struct {
	Coefficient float64   // a fraction
	Nodes       []float64 // m, depth of each: fall of the rim from its peak; see Shadow.Nodes
	Energy      float64   // J, stored and of height; 0 is the flat level cloth
	Shadow      *Shadow
	Run
}

// Disc lets the specimen fall once a placing. Placings differ in the small
// first wave, which decides the nodes; a cloth with no faces, as here, falls
// face down as it falls face up. It fails where the setup is out of range.
//
// The same cloth rests in many shapes. Let fall, it buckles into many nodes at
// once and keeps most of them, as on a meter whose table drops away (Cusick;
// BS 5058). With Slow it follows the first few nodes that form, which carry
// less energy: more like a meter that shakes the cloth before it reads it (the
// Japanese way, from memory).
func Disc(ctx context.Context, s sim.Stiffness, d DiscSetup) (DiscResult, error) {
	d.defaults(s)
	var out DiscResult
	if err := d.check(); err != nil {
		return out, err
	}
	out.Each = make([]Draped, d.Placings)
	errs := make([]error, d.Placings)
	next := make(chan int)
	var all sync.WaitGroup
	for range min(d.Placings, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for k := range next {
				out.Each[k], errs[k] = d.drape(ctx, s, uint64(k))
			}
		})
	}
	for k := range d.Placings {
		next <- k
	}
	close(next)
	all.Wait()
	out.sum()
	return out, errors.Join(errs...)
}

func (d *DiscSetup) defaults(s sim.Stiffness) {
	if d.Specimen == 0 {
		d.Specimen = 0.30
	}
	if d.Disc == 0 {
		d.Disc = 0.18
	}
	if d.Spacing == 0 {
		c := math.Min(GravityLength(s, 0), GravityLength(s, math.Pi/2))
		d.Spacing = math.Min(0.006, math.Max(0.004, c/4))
	}
	if d.Placings == 0 {
		d.Placings = 4
	}
}

// check tells what is out of range.
func (d DiscSetup) check() error {
	for _, c := range []struct {
		name            string
		v, low, high, k float64
		unit            string
	}{
		{"specimen", d.Specimen, 0.1, 0.6, 1000, "mm"},
		{"disc", d.Disc, 0.2 * d.Specimen, 0.9 * d.Specimen, 1000, "mm"},
		{"spacing", d.Spacing, 0.001, (d.Specimen - d.Disc) / 6, 1000, "mm"},
		{"friction", d.Friction, 0, 2, 1, ""},
		{"placings", float64(d.Placings), 1, 48, 1, "placings"},
	} {
		if err := within(c.name, c.v, c.low, c.high, c.k, c.unit); err != nil {
			return err
		}
	}
	return nil
}

// sum draws up what the placings have in common.
func (r *DiscResult) sum() {
	n := float64(len(r.Each))
	mean := 0.0
	r.Counts = map[int]int{}
	for _, e := range r.Each {
		r.Coefficient += e.Coefficient / n
		mean += float64(len(e.Nodes)) / n
		r.Counts[len(e.Nodes)]++
		r.Spread += e.Coefficient * e.Coefficient
		steps, seconds := r.Steps+e.Steps, r.Seconds+e.Seconds
		if r.Nodes == 0 || r.Status == sim.Settled && (e.Status != sim.Settled || e.Residual > r.Residual) {
			r.Run = e.Run
		}
		r.Steps, r.Seconds = steps, seconds
	}
	r.Spread = math.Sqrt(math.Max(0, (r.Spread-n*r.Coefficient*r.Coefficient)/math.Max(1, n-1)))
	for k, e := range r.Each {
		off := func(count int) float64 { return math.Abs(float64(count) - mean) }
		c, best := len(e.Nodes), r.Count
		if k == 0 || r.Counts[c] > r.Counts[best] || r.Counts[c] == r.Counts[best] && off(c) < off(best) {
			r.Count = c
		}
	}
	far := math.Inf(1)
	for k, e := range r.Each {
		if d := math.Abs(e.Coefficient - r.Coefficient); len(e.Nodes) == r.Count && d < far {
			r.Typical, far = k, d
		}
	}
}

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

// lay puts the cloth flat on the plate.
func (d DiscSetup) lay(s sim.Stiffness, spacing float64) (*bench, error) {
	l, err := lattice.Cut(d.circle(), lattice.Options{Spacing: spacing, Grain: d.Grain})
	if err != nil {
		return nil, err
	}
	k := &bench{lattice: l, scene: &sim.Scene{Cloth: sim.NewCloth(l, s), Fixed: d.clamp(l), Obstacle: plate(d.Disc / 2), Friction: d.Friction}}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Z: -p.Y}
	}
	k.state = sim.NewState(k.scene, pos)
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
// nodes, so it must bend like the cloth: half a bending length at most.
func (d DiscSetup) drape(ctx context.Context, s sim.Stiffness, seed uint64) (Draped, error) {
	var r Draped
	var k *bench
	c := (GravityLength(s, 0) + GravityLength(s, math.Pi/2)) / 2
	for _, spacing := range halvings(d.Spacing, math.Min(c/2, (d.Specimen-d.Disc)/10)) {
		next, err := d.lay(s, spacing)
		if err != nil {
			return r, err
		}
		if k == nil {
			d.ripple(next, seed)
			d.load(ctx, next, &r.Run)
		} else {
			k.carry(next)
		}
		k = next
		o := sim.Settings{Residual: 1e-2, Steps: 150_000}
		if spacing == d.Spacing {
			o.Residual = 1e-3
		}
		k.relax(ctx, &r.Run, o)
	}
	d.read(k, &r)
	return r, nil
}

// load lets the weight come on slowly: from a twentieth, doubled time and
// again, each time nearly to rest.
func (d DiscSetup) load(ctx context.Context, k *bench, r *Run) {
	if !d.Slow {
		return
	}
	c := k.scene.Cloth
	full := slices.Clone(c.Load)
	for share := 0.05; share < 1; share *= 2 {
		for i, w := range full {
			c.Load[i] = share * w
		}
		k.relax(ctx, r, sim.Settings{Residual: 1e-2 * share, Steps: 50_000})
	}
	copy(c.Load, full)
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
		if k.scene.Fixed[i] {
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
	sheet := k.lattice.Skin().Sheet(k.state.Pos, math.Inf(1))
	r.Shadow = shadowOf(&sheet, d.Disc/2, 0.55*d.Specimen)
	disc := math.Pi / 4 * d.Disc * d.Disc
	r.Coefficient = (r.Shadow.Area() - disc) / (math.Pi/4*d.Specimen*d.Specimen - disc)
	r.Nodes = r.Shadow.Nodes()
	c := k.scene.Cloth
	r.Energy = c.Stored(k.state.Pos).Total()
	for i, x := range k.state.Pos {
		r.Energy += c.Load[i] * x.Y
	}
}
