package drape

import (
	"context"
	"runtime"
	"sync"
	"time"

	"cowl/sim"
	"cowl/sim/fold"
)

// Outcome is what a drape says, in SI units. How files, sheets and people are
// told of it is in package measure.
type Outcome struct {
	Status  sim.Status
	Warning string // why a result is not to be trusted

	FoldCount     int // above the bust, most frequent over the placings
	CountShare    float64
	FoldCounts    []int // above the bust, one a placing
	Folds         []fold.Fold
	EdgeDrop      float64   // m, below the shoulder neck points
	EdgeDrops     []float64 // m, one a placing
	EdgeBelowNeck float64   // m, below the front neck point
	StandOff      float64   // m
	Forward       float64   // m
	Twist         float64   // m, left-right
	Drift         float64   // m, of the edge on CF, to the wearer's left
	CFGrowth      float64   // share, as all growth and strain
	EdgeGrowth    float64   // of the cowl edge
	EdgeStretch   float64   // of the 3 cm of it that have grown most
	ShoulderGrow  float64   // of the shoulder seams, mean of both
	ShoulderMost  float64   // of the 3 cm of them that have grown most
	TapePull      float64   // N, the largest pull in a stay
	WrongSide     float64   // m²
	FoldRadius    float64   // m; 0: no fold
	Kinks         int
	MaxStrain     float64
	PinPull       float64 // N
	PinSlip       float64 // m
	Inside        float64 // m, of the form
	Pierced       int

	Residual   float64 // total unbalanced force / weight
	Energy     float64 // J
	ShearShare float64 // of the stored energy
	Nodes      int
	Spacing    float64 // m
	Iterations int
	Seconds    float64
	Placings   int
	Seed       uint64

	Fabric    string
	Extension float64 // m
	HalfEdge  float64 // m
	Grain     float64 // rad
	CowlPoint float64 // m
	Facing    float64 // m
	Free      bool
}

// settled is the residual above which a drape is no result.
const settled = 1e-3

// outcome reads one drape.
func (d *Drape) outcome(seconds float64) (Outcome, fold.Reading, error) {
	if d.Result.Status == sim.Diverged {
		return Outcome{Status: sim.Diverged, Warning: "the forces ran away: try a finer spacing; if that does not help, the fabric's values may contradict each other"}, fold.Reading{}, nil
	}
	r, err := d.Read()
	if err != nil {
		return Outcome{}, r, err
	}
	j, e := d.Job, d.Scene.Stored(d.State.Pos)
	o := Outcome{
		Status: d.Result.Status, FoldCount: r.Count, Folds: r.Folds, Kinks: r.Kinks, Pierced: d.Pierced(),
		EdgeDrop: r.EdgeDrop, EdgeBelowNeck: r.EdgeBelowNeck, StandOff: r.StandOff, Forward: r.Forward,
		Twist: r.Twist, Drift: r.Drift, CFGrowth: r.CFGrowth,
		TapePull: d.TapePull(), WrongSide: r.WrongSide,
		FoldRadius: r.FoldRadius, MaxStrain: d.Scene.Cloth.MaxStrain(d.State.Pos),
		PinPull: d.PinPull(), PinSlip: d.PinSlip(), Inside: d.Inside(),
		Residual: d.Result.Residual, Energy: e.Total(), ShearShare: e.Shear / e.Total(),
		Nodes: len(d.Lattice.Rest), Spacing: d.Lattice.Spacing, Iterations: d.Steps, Seconds: seconds, Seed: j.Seed,
		Fabric: j.Fabric.Name, Extension: j.Piece.Extension, HalfEdge: j.Piece.HalfEdge, Grain: j.Piece.Grain,
		CowlPoint: j.Piece.CowlPoint, Facing: j.Piece.Facing, Free: j.Free,
	}
	o.EdgeGrowth, o.EdgeStretch = d.EdgeGrowth()
	o.ShoulderGrow, o.ShoulderMost = d.ShoulderGrowth()
	o.doubt()
	return o, r, nil
}

// doubt takes the word "settled" from a drape that is no result.
func (o *Outcome) doubt() {
	switch {
	case o.Status != sim.Settled:
		o.Warning = "the cloth has not come to rest: figures and picture show a moment, not a drape"
	case o.Pierced > 0:
		o.Status, o.Warning = sim.StepLimit, "layers of cloth pass through each other: try a finer spacing or another seed"
	case o.MaxStrain > knot:
		o.Status, o.Warning = sim.StepLimit, "a spot of the cloth has crumpled into a knot: try a finer spacing or another seed"
	case o.Residual > settled:
		o.Status, o.Warning = sim.StepLimit, "the forces are not in balance: try again with another seed or spacing"
	}
}

// Run is a job hung by several hands.
type Run struct {
	Outcome Outcome      // of the shown placing, with counts and spread over all
	Reading fold.Reading // of the shown placing
	Drape   *Drape       // the shown placing: the first, never chosen for what it shows
	Each    []Outcome    // one a placing
}

// HangAll hangs the job with n hands of seeds Seed, Seed+1, … and reads what they
// agree on. Placings are independent, so they take a core each; the result
// does not depend on the number of cores.
func HangAll(ctx context.Context, j Job, n int) (*Run, error) {
	drapes, each, readings, errs := make([]*Drape, n), make([]Outcome, n), make([]fold.Reading, n), make([]error, n)
	gate := make(chan struct{}, runtime.GOMAXPROCS(0))
	var wg sync.WaitGroup
	for k := range n {
		wg.Go(func() {
			gate <- struct{}{}
			defer func() { <-gate }()
			job := j
			job.Seed += uint64(k)
			job.Alone = j.Alone || n > 1
			if k > 0 {
				job.Report = nil
			}
			start := time.Now()
			if drapes[k], errs[k] = Hang(ctx, job); errs[k] == nil {
				each[k], readings[k], errs[k] = drapes[k].outcome(time.Since(start).Seconds())
			}
		})
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	r := &Run{Outcome: each[0], Reading: readings[0], Drape: drapes[0], Each: each}
	r.agree()
	return r, nil
}

// agree fills the shown outcome with what the placings have in common.
func (r *Run) agree() {
	o := &r.Outcome
	o.Placings = len(r.Each)
	for _, e := range r.Each {
		o.FoldCounts = append(o.FoldCounts, e.FoldCount)
		o.EdgeDrops = append(o.EdgeDrops, e.EdgeDrop)
	}
	o.FoldCount, o.CountShare = fold.Modes(o.FoldCounts)
}
