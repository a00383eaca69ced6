package drape

import (
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
	FoldCountAll  int   // above and below
	Laid          int   // folds that the hand laid
	Kept          int   // of those
	Extra         int   // above the bust, that nobody laid
	Folds         []Fold
	Tried         []Try     // one a count, where none was asked for
	ShakeA        float64   // strength of the shake before it came to rest, 0: none
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

	Lean       *Lean    // of the shown placing; nil: nobody bent
	Coarser    *Outcome // on twice the spacing, before the last halving; nil: nothing was halved, see Job.Fine
	Residual   float64  // total unbalanced force / weight
	Energy     float64  // J, stored
	EnergyAll  float64  // J, stored and of height, from the height of the waist
	ShearShare float64  // of the stored energy
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
	SetEdge   bool    // the edge was set,
	EdgeDepth float64 // m, so far below the front neck point,
	Taken     float64 // m, by taking up so much at either cowl point
	Hem       float64 // m, the front goes on so far below the waist in the flat; 0: it ends there
	HemFront  float64 // m, the hem hangs so far below the waist of the form on CF,
	HemSides  float64 // m, and at the side seams, mean of both
}

// outcome reads one drape.
func (d *Drape) outcome(seconds float64) (Outcome, fold.Reading, error) {
	if d.Result.Status == sim.Diverged {
		return Outcome{Status: sim.Diverged, Laid: d.Job.Folds, Taken: d.Job.Cowl.Taken,
			Warning: "the forces ran away: try a finer spacing; if that does not help, the fabric's values may contradict " +
				"each other"}, fold.Reading{}, nil
	}
	r, err := d.Read()
	if err != nil {
		return Outcome{}, r, err
	}
	j, e := d.Job, d.System.Stored(d.State.Pos)
	o := Outcome{
		Status: d.Result.Status, FoldCount: r.Count, FoldCountAll: r.Count + r.CountBelow, Laid: d.Job.Folds,
		ShakeA: d.shook, Kinks: r.Kinks, Pierced: d.Pierced(),
		EdgeDrop: r.EdgeDrop, EdgeBelowNeck: r.EdgeBelowNeck, StandOff: r.StandOff, Forward: r.Forward,
		Twist: r.Twist, Drift: r.Drift, CFGrowth: r.CFGrowth,
		TapePull: d.TapePull(), WrongSide: r.WrongSide,
		FoldRadius: r.FoldRadius, MaxStrain: d.System.Cloth.MaxStrain(d.State.Pos),
		PinPull: d.PinPull(), PinSlip: d.PinSlip(), Inside: d.Inside(),
		Residual: d.Result.Residual, Energy: e.Total(), EnergyAll: e.Total() + d.heightEnergy(),
		ShearShare: e.Shear / e.Total(),
		Nodes:      len(d.Lattice.Rest), Spacing: d.Lattice.Spacing, Iterations: d.Steps, Seconds: seconds, Seed: j.Seed,
		Fabric: j.Fabric.Name, Extension: j.Cowl.Extension, HalfEdge: j.Cowl.HalfEdge, Grain: j.Cowl.Grain,
		CowlPoint: j.Cowl.CowlPoint, Facing: j.Cowl.Facing, Free: j.Free,
		SetEdge: j.SetEdge, EdgeDepth: j.EdgeDepth, Taken: j.Cowl.Taken, Hem: j.Cowl.Hem,
	}
	o.HemFront, o.HemSides = d.hemAt()
	if o.Folds, err = d.folds(r); err != nil {
		return Outcome{}, r, err
	}
	o.reckon()
	o.EdgeGrowth, o.EdgeStretch = d.EdgeGrowth()
	o.ShoulderGrow, o.ShoulderMost = d.ShoulderGrowth()
	o.doubt()
	return o, r, nil
}

// Try is what the cloth made of the folds that were laid.
func (o *Outcome) Try() Try {
	return Try{Laid: o.Laid, Kept: o.Kept, Extra: o.Extra, Settled: o.Status == sim.Settled}
}

// heightEnergy is the work that the weight of the cloth did in rising from the
// waist, J.
func (d *Drape) heightEnergy() float64 {
	sum := 0.0
	for i, p := range d.State.Pos {
		sum += d.System.Cloth.Load[i] * p.Y
	}
	return sum
}
