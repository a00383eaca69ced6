package lab

import (
	"context"
	"fmt"
	"math"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// StandardChord is the angle at which the bending length test reads the
// overhang, 41.5° (ISO 9073-7; ASTM D1388).
const StandardChord = 41.5 * math.Pi / 180

// BendSetup is a cantilever test; zero values take the default.
type BendSetup struct {
	Length  float64        // m, overhang 0.005–0.5; 0 looks for the one that hangs at StandardChord
	Width   float64        // m, 0.005–0.2; 0 means 25 mm
	Grain   float64        // rad, from the length of the strip to the warp
	Spacing float64        // m; 0 means an eighth of the bending length, coarser where that takes over 3000 nodes
	Report  func(Progress) // called now and then, may be nil
}

// BendResult is what a cantilever test reads.
type BendResult struct {
	Length        float64 // m, overhang
	Chord         float64 // rad, of the line from edge to tip below the level
	TipX, TipDrop float64 // m, of the middle of the end from the edge
	// m, by the heavy elastica; half the overhang at StandardChord; 0 where the strip hangs too
	// steep to tell
	BendingLength float64
	Run
}

// mostStrip is the number of nodes up to which a strip is made as fine as an
// eighth of its bending length.
const mostStrip = 3000

// Bend lets a strip hang over an edge. The strip has twice the length and hangs
// over a line in its middle, where it is level by symmetry, so that each half
// is a cantilever. It fails where the setup is out of range or too coarse.
func Bend(ctx context.Context, s sim.Stiffness, b BendSetup) (BendResult, error) {
	if b.Width == 0 {
		b.Width = 0.025
	}
	if err := b.check(); err != nil {
		return BendResult{}, err
	}
	if b.Length > 0 {
		r, err := b.overhang(ctx, s)
		return r, err
	}
	b.Length = 2 * GravityLength(s, b.Grain)
	var total Run
	for range searches {
		r, err := b.overhang(ctx, s)
		if err != nil {
			return r, err
		}
		total.Steps += r.Steps
		total.Seconds += r.Seconds
		r.Steps, r.Seconds = total.Steps, total.Seconds
		if math.Abs(r.Chord-StandardChord) < nearChord || r.Status != sim.Settled || r.BendingLength == 0 {
			return r, nil
		}
		b.Length *= 2 * r.BendingLength / b.Length
	}
	r, err := b.overhang(ctx, s)
	return r, err
}

// The search for the standard overhang ends within nearChord, which moves the
// bending length by one part in a thousand, or after so many strips.
const (
	nearChord = 0.05 * math.Pi / 180
	searches  = 4
)

// check tells what is out of range.
func (b BendSetup) check() error {
	if b.Length != 0 {
		if err := within("length", b.Length, 0.005, 0.5, 1000, "mm"); err != nil {
			return err
		}
	}
	if b.Spacing != 0 {
		if err := within("spacing", b.Spacing, 0.0003, 0.02, 1000, "mm"); err != nil {
			return err
		}
	}
	return within("width", b.Width, 0.005, 0.2, 1000, "mm")
}

// coarser is how many times as wide the spacing may be on which a strip hangs first: from end
// to end a coarse one comes to rest in fewer steps.
const coarser = 4

// lattices returns the spacings on which a strip is computed, coarse first; the overhang is a
// whole number of each.
func (b BendSetup) lattices(c float64) []float64 {
	h, most := b.Spacing, 1
	if h == 0 {
		h, most = math.Max(math.Min(c, b.Length/2)/8, math.Sqrt(2*b.Length*b.Width/mostStrip)), coarser
	}
	n := most * int(math.Ceil(b.Length/h/float64(most)-1e-9))
	for most = 1; most < coarser && n%(2*most) == 0; {
		most *= 2
	}
	h = b.Length / float64(n)
	return halvings(h, min(float64(most)*h, b.Width/3))
}

// overhang hangs one strip of the set length.
func (b BendSetup) overhang(ctx context.Context, s sim.Stiffness) (BendResult, error) {
	var r BendResult
	var k *bench
	for _, spacing := range b.lattices(GravityLength(s, b.Grain)) {
		next, err := b.setUp(s, spacing)
		if err != nil {
			return r, err
		}
		if k != nil {
			k.carry(next)
		}
		next.still(ctx, &r.Run, k == nil)
		k = next
	}
	for _, side := range [2]float64{-1, 1} {
		x := k.at(r2.Vec{Y: side * b.Length})
		r.TipX += side * x.Z / 2
		r.TipDrop -= x.Y / 2
	}
	r.Length, r.Chord = b.Length, math.Atan2(r.TipDrop, r.TipX)
	if load, ok := chordLoad(r.Chord); ok {
		r.BendingLength = b.Length / math.Cbrt(load)
	}
	return r, nil
}

// setUp puts a flat level strip of twice the overhang on the line in its middle.
func (b BendSetup) setUp(s sim.Stiffness, spacing float64) (*bench, error) {
	l, err := lattice.Cut(rectangle(b.Width, 2*b.Length), lattice.Options{Spacing: spacing, Grain: b.Grain})
	if err != nil {
		return nil, err
	}
	k := &bench{
		lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s), Fixed: b.edge(l)},
		stage: fmt.Sprintf("overhang of %.4g mm", b.Length*1000), report: b.Report,
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Z: p.Y}
	}
	k.state = sim.NewState(k.system, pos)
	return k, nil
}

// edge fixes the crossings on the line in the middle of the strip. Where only
// the one in the middle lies on it, the two on either side that lie nearest are
// fixed too. Points between crossings will not do: to hold a chord of the bent
// cloth is to hold it flat.
func (b BendSetup) edge(l *lattice.Lattice) []bool {
	fixed := make([]bool, len(l.Rest))
	var best [2]int
	off := [2]float64{math.Inf(1), math.Inf(1)}
	for i, p := range l.Rest {
		y := math.Abs(p.Y)
		fixed[i] = y < 1e-6*l.Spacing && math.Abs(p.X) < b.Width/2+1e-9
		side := 0
		if p.X > 0 {
			side = 1
		}
		if x := math.Abs(p.X); x > b.Width/5 && x <= b.Width/2+1e-9 && y < off[side] {
			best[side], off[side] = i, y
		}
	}
	fixed[best[0]], fixed[best[1]] = true, true
	return fixed
}
