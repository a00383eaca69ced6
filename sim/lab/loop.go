package lab

import (
	"context"
	"fmt"
	"math"

	"cowl/materials"
	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// LoopSetup is a hanging heart loop; zero values take the default.
type LoopSetup struct {
	Length  float64        // m, of the strip between its clamped ends, 0.03–0.5; 0 means 15 cm
	Width   float64        // m, 0.005–0.2; 0 means 25 mm
	Grain   float64        // rad, from the length of the strip to the warp
	Spacing float64        // m; 0 means a tenth of the bending length, coarser where that takes over 4500 nodes
	Report  func(Progress) // called now and then, may be nil
}

// LoopResult is what a hanging heart loop reads.
type LoopResult struct {
	Length        float64 // m, of the loop
	Depth         float64 // m, of its lowest point below the clamp
	BendingLength float64 // m, by the heavy elastica; 0 where the loop is too stiff or too limp to tell
	Peirce        float64 // m, the same by Peirce's formula; 0 likewise
	Rigidity      float64 // N·m, w·c³ of the bending length by the elastica
	Run
}

// Loop clamps both ends of a strip upright, face to face, and lets it hang: the
// heart loop of Peirce, see materials.HeartDepth. It fails where the setup is
// out of range or too coarse.
func Loop(ctx context.Context, s sim.Stiffness, p LoopSetup) (LoopResult, error) {
	p.defaults()
	var r LoopResult
	if err := p.check(); err != nil {
		return r, err
	}
	k, err := p.hang(ctx, s, &r.Run)
	if err != nil {
		return r, err
	}
	r.Length, r.Depth = p.Length, -k.at(r2.Vec{}).Y
	if c, ok := materials.HeartLength(r.Depth / r.Length); ok {
		r.BendingLength = c * r.Length
		r.Rigidity = materials.BendFromLength(r.BendingLength, s.Weight)
	}
	if c, ok := materials.PeirceHeart(r.Depth / r.Length); ok {
		r.Peirce = c * r.Length
	}
	return r, nil
}

func (p *LoopSetup) defaults() {
	if p.Length == 0 {
		p.Length = 0.15
	}
	if p.Width == 0 {
		p.Width = 0.025
	}
}

// check tells what is out of range.
func (p LoopSetup) check() error {
	if err := within("length", p.Length, 0.03, 0.5, 1000, "mm"); err != nil {
		return err
	}
	if p.Spacing != 0 {
		if err := within("spacing", p.Spacing, 0.0003, p.Length/40, 1000, "mm"); err != nil {
			return err
		}
	}
	return within("width", p.Width, 0.005, 0.2, 1000, "mm")
}

// mostLoop is the number of nodes up to which a loop is made as fine as a tenth
// of its bending length.
const mostLoop = 4500

// spacing returns the spacing on which a loop is computed.
func (p LoopSetup) spacing(c float64) float64 {
	if p.Spacing != 0 {
		return p.Spacing
	}
	return math.Max(math.Min(c, p.Length/9)/10, math.Sqrt(p.Length*p.Width/mostLoop))
}

// setUp puts the strip into the clamp, with three spacings of it inside, in three
// arcs: half a circle over either side of the clamp, and half of one twice as
// wide below.
func (p LoopSetup) setUp(s sim.Stiffness, spacing float64) (*bench, error) {
	l, err := lattice.Cut(rectangle(p.Width, p.Length+6*spacing), lattice.Options{Spacing: spacing, Grain: p.Grain})
	if err != nil {
		return nil, err
	}
	fixed, pos := make([]bool, len(l.Rest)), make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		s := p.Length/2 - math.Abs(q.Y)
		up, out := p.arcs(s)
		fixed[i] = s <= 0
		pos[i] = r3.Vec{X: q.X, Y: up, Z: math.Copysign(out, q.Y)}
	}
	k := &bench{
		lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s), Fixed: fixed},
		stage: fmt.Sprintf("loop of %.4g mm", p.Length*1000), report: p.Report,
	}
	k.state = sim.NewState(k.system, pos)
	return k, nil
}

// arcs returns where the strip lies at first, s from the clamp: over it, and aside.
func (p LoopSetup) arcs(s float64) (up, out float64) {
	r := p.Length / 2 / (2 * math.Pi)
	if s < math.Pi*r {
		sin, cos := math.Sincos(s / r)
		return r * sin, r * (1 - cos)
	}
	sin, cos := math.Sincos((s - math.Pi*r) / (2 * r))
	return -2 * r * sin, 2 * r * cos
}

// hang hangs the loop on coarse lattices, then on finer ones as it hung there: from end to end
// that takes fewer steps.
func (p LoopSetup) hang(ctx context.Context, s sim.Stiffness, r *Run) (*bench, error) {
	var k *bench
	for _, spacing := range halvings(p.spacing(GravityLength(s, p.Grain)), min(p.Length/40, p.Width/5)) {
		next, err := p.setUp(s, spacing)
		if err != nil {
			return nil, err
		}
		if k != nil {
			k.carry(next)
			p.clamp(next, p.bent(k))
		}
		p.rest(ctx, next, r, k == nil)
		k = next
	}
	return k, nil
}

// rest brings the loop to rest. Crossings lie nearer to the clamp or farther
// from it, so that none can be its edge; those within are laid as if the cloth
// went on mirrored, bent as it is bent just outside, for which it rests in
// rounds. Laid flat they shorten a loop at 22.5° by a spacing.
func (p LoopSetup) rest(ctx context.Context, k *bench, r *Run, first bool) {
	for bend, round := math.Inf(1), 0; round < clampRounds; round++ {
		k.still(ctx, r, first && round == 0)
		now := p.bent(k)
		if r.Status != sim.Settled || math.Abs(now-bend) < 0.01*math.Abs(now) {
			return
		}
		bend = now
		p.clamp(k, bend)
	}
}

// clampRounds is how often the clamp is laid anew at most.
const clampRounds = 8

// clamp lays the crossings within the clamp on arcs, bent by so much, rad/m.
func (p LoopSetup) clamp(k *bench, bend float64) {
	for i, q := range k.lattice.Rest {
		if s := p.Length/2 - math.Abs(q.Y); s <= 0 {
			sin, cos := math.Sincos(bend * s)
			k.state.Pos[i] = r3.Vec{X: q.X, Y: sin / bend, Z: math.Copysign((1-cos)/bend, q.Y)}
		}
	}
}

// bent returns how the cloth is bent at the clamp, rad/m: its turn over the two
// spacings in the middle of the first four.
func (p LoopSetup) bent(k *bench) float64 {
	h := k.lattice.Spacing
	return (p.slope(k, 3*h) - p.slope(k, h)) / (2 * h)
}

// slope returns the angle (rad) from the upright of the cloth s from the clamp,
// the mean over both ends and the width.
func (p LoopSetup) slope(k *bench, s float64) float64 {
	h, sum := k.lattice.Spacing, 0.0
	for _, end := range [2]float64{-1, 1} {
		for _, side := range [5]float64{-0.4, -0.2, 0, 0.2, 0.4} {
			at := func(s float64) r3.Vec { return k.at(r2.Vec{X: side * p.Width, Y: end * (p.Length/2 - s)}) }
			d := r3.Sub(at(s+h), at(s-h))
			sum += math.Atan2(end*d.Z, d.Y) / 10
		}
	}
	return sum
}
