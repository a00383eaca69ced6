// Package lab runs the standard tests of cloth on the solver that drapes it:
// the cantilever (Bend), the strip under load (Tensile), the sheet hung from two
// points (Hang), the drape meter (Disc), the swag (Swag) and the heart loop
// (Loop). Lengths are metres, angles radians, forces newtons; a grain angle lies
// between the long side of the specimen, or its upright, and the warp. Closed
// forms to compare with are in Chord, OffAxisModulus, TrellisShear and
// HangingDrop, and in materials.HeartDepth. Start at Bend.
package lab

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Run tells how a figure was computed.
type Run struct {
	Status   sim.Status
	Residual float64 // total unbalanced force over the weight of the piece, or over the load where that is said
	Nodes    int
	Spacing  float64 // m, of the finest lattice
	Steps    int     // on all lattices
	Seconds  float64
}

// Progress says how far a test has come.
type Progress struct {
	Stage    string  // what is being done
	Share    float64 // 0..1 of the steps that it may take
	Residual float64 // unbalanced force over the weight; over the load in a pull
}

// bench is a specimen on a lattice, held in a scene.
type bench struct {
	lattice *lattice.Lattice
	system  *sim.System
	state   *sim.State
	stage   string         // what is being done, for the report
	report  func(Progress) // may be nil
}

// relax walks to rest and adds to the record of the run.
func (b *bench) relax(ctx context.Context, r *Run, o sim.Settings) {
	start := time.Now()
	if o.Steps == 0 {
		o.Steps = mostSteps
	}
	o.Report = func(step int, residual float64) { b.tell(step, o.Steps, residual) }
	got := sim.Relax(ctx, b.system, b.state, o)
	r.note(b, got, start)
}

// still brings a strip to rest: it walks until what rings has faded, on the first lattice until
// it hangs nearly as it will, and goes on by Newton's method; where that finds no rest it walks on.
func (b *bench) still(ctx context.Context, r *Run, first bool) {
	o := sim.Settings{Residual: 1e-4, Steps: 300}
	if first {
		o = sim.Settings{Residual: 1e-2, Steps: 5000}
	}
	if b.relax(ctx, r, o); !b.newton(ctx, r) {
		b.relax(ctx, r, sim.Settings{Residual: 1e-4, Steps: 2 * mostSteps})
	}
}

// newton goes on by Newton's method, and reports whether there is no more to do.
func (b *bench) newton(ctx context.Context, r *Run) bool {
	const most = 300
	start := time.Now()
	got := sim.Newton(ctx, b.system, b.state, sim.Settings{Residual: 1e-6, Steps: most,
		Report: func(step int, residual float64) { b.tell(step, most, residual) }})
	r.note(b, got, start)
	return got.Status != sim.StepLimit
}

// mostSteps ends a walk that finds no rest.
const mostSteps = 200_000

// tell reports a walk of so many steps of at most so many.
func (b *bench) tell(step, most int, residual float64) {
	if b.report != nil {
		b.report(Progress{fmt.Sprintf("%s, %.2g mm", b.stage, b.lattice.Spacing*1000), float64(step) / float64(most),
			residual})
	}
}

// note adds one walk to the record.
func (r *Run) note(b *bench, got sim.Result, start time.Time) {
	r.Status, r.Residual = got.Status, got.Residual
	r.Nodes, r.Spacing = len(b.state.Pos), b.lattice.Spacing
	r.Steps += got.Steps
	r.Seconds += time.Since(start).Seconds()
}

// at returns where the flat point q of the specimen lies in space.
func (b *bench) at(q r2.Vec) r3.Vec {
	p, ok := b.lattice.Locate(q)
	if !ok {
		panic("lab: a point off the specimen is asked for")
	}
	return p.At(b.state.Pos)
}

// carry lays the free nodes of another lattice where those of b lie, and sets its
// friction as it is set there. Fixed nodes stay: between the clamp of a coarse lattice and its free
// nodes they would lie half a millimetre off.
func (b *bench) carry(to *bench) {
	at := slices.Clone(to.state.Pos)
	to.state.Take(to.lattice, b.state, b.lattice, nil)
	for i, fixed := range to.system.Fixed {
		if fixed {
			to.state.Pos[i] = at[i]
		}
	}
}

// rectangle returns the outline of a w × h piece about the origin, h along Y.
func rectangle(w, h float64) []r2.Vec {
	return []r2.Vec{{X: -w / 2, Y: -h / 2}, {X: w / 2, Y: -h / 2}, {X: w / 2, Y: h / 2}, {X: -w / 2, Y: h / 2}}
}

// row returns n points at the middles of n equal parts of the line from a to b.
func row(a, b r2.Vec, n int) []r2.Vec {
	out := make([]r2.Vec, n)
	for k := range out {
		out[k] = r2.Add(a, r2.Scale((float64(k)+0.5)/float64(n), r2.Sub(b, a)))
	}
	return out
}

// hold adds a hold of the flat point q to the scene.
func (b *bench) hold(q r2.Vec, only r3.Vec) error {
	p, ok := b.lattice.Locate(q)
	if !ok {
		return fmt.Errorf("lab: spacing %.1f mm leaves no cloth to hold, want a finer one", b.lattice.Spacing*1000)
	}
	b.system.Holds = append(b.system.Holds, sim.Hold{Point: p, Only: only})
	return nil
}

// within returns an error unless low <= v <= high; scale turns v into the unit.
func within(name string, v, low, high, scale float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	return fmt.Errorf("lab: %s %.4g %s, want %.4g–%.4g %s", name, v*scale, unit, low*scale, high*scale, unit)
}

// GravityLength returns c = (B/w)^⅓ in m for a strip cut at the grain angle:
// the bending length of a cantilever (F. T. Peirce, "The 'handle' of cloth as a
// measurable quantity", J. Textile Inst. 21, 1930). B is that of the orthotropic
// plate, B1·cos⁴ + B2·sin⁴ + 4·D66·cos²·sin².
func GravityLength(s sim.Stiffness, grain float64) float64 {
	c, d := math.Pow(math.Cos(grain), 2), math.Pow(math.Sin(grain), 2)
	return math.Cbrt((s.BendWarp*c*c + s.BendWeft*d*d + 4*s.Twist*c*d) / (s.Weight * sim.Gravity))
}
