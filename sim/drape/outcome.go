package drape

import (
	"context"
	"math"
	"runtime"
	"sync"
	"time"

	"cowl/sim"
	"cowl/sim/fold"
)

// Outcome is what a drape says, in the units of the sample room. The names are
// the keys of result.json.
type Outcome struct {
	Status  sim.Status `json:"status"`
	Warning string     `json:"warning,omitempty"` // why a result is not to be trusted

	FoldCount     int       `json:"fold_count"` // above the bust, most frequent over the placings
	CountShare    float64   `json:"count_share"`
	FoldCounts    []int     `json:"fold_counts"` // above the bust, one a placing
	Folds         []FoldOut `json:"folds"`
	EdgeDrop      float64   `json:"edge_drop_mm"` // below the shoulder neck points
	EdgeDropMean  float64   `json:"edge_drop_mean_mm"`
	EdgeDropSpan  float64   `json:"edge_drop_spread_mm"` // standard deviation over the placings
	EdgeDrops     []float64 `json:"edge_drops_mm"`       // one a placing
	EdgeBelowNeck float64   `json:"edge_below_neck_mm"`  // below the front neck point
	StandOff      float64   `json:"stand_off_mm"`
	Forward       float64   `json:"forward_mm"`
	Twist         float64   `json:"twist_mm"` // left-right
	Drift         float64   `json:"drift_mm"` // of the edge on CF, to the wearer's left
	CFGrowth      float64   `json:"cf_growth_percent"`
	EdgeGrowth    float64   `json:"edge_growth_percent"`      // of the cowl edge
	EdgeStretch   float64   `json:"edge_stretch_percent"`     // of the 3 cm of it that have grown most
	ShoulderGrow  float64   `json:"shoulder_growth_percent"`  // of the shoulder seams, mean of both
	ShoulderMost  float64   `json:"shoulder_stretch_percent"` // of the 3 cm of them that have grown most
	TapePull      float64   `json:"tape_pull_N"`              // the largest pull in a stay
	WrongSide     float64   `json:"wrong_side_mm2"`
	FoldRadius    float64   `json:"fold_radius_mm"`
	Kinks         int       `json:"kinks"`
	MaxStrain     float64   `json:"max_strain_percent"`
	PinPull       float64   `json:"pin_pull_N"`
	PinSlip       float64   `json:"pin_slip_mm"`
	Inside        float64   `json:"inside_form_mm"`
	Pierced       int       `json:"pierced"`

	Residual   float64 `json:"residual"` // total unbalanced force / weight
	Energy     float64 `json:"energy_mJ"`
	ShearShare float64 `json:"shear_share"` // of the stored energy
	Nodes      int     `json:"nodes"`
	Spacing    float64 `json:"spacing_mm"`
	Iterations int     `json:"iterations"`
	Seconds    float64 `json:"seconds"`
	Placings   int     `json:"placings"`
	Seed       uint64  `json:"seed"`

	Fabric    string  `json:"fabric"`
	Extension float64 `json:"extension_mm"`
	HalfEdge  float64 `json:"half_edge_mm"`
	Grain     float64 `json:"grain_deg"`
	CowlPoint float64 `json:"cowl_point_mm"`
	Facing    float64 `json:"facing_mm"`
	Free      bool    `json:"free"`
}

// FoldOut is one fold in millimetres.
type FoldOut struct {
	Depth  float64 `json:"depth_mm"`
	CF     float64 `json:"cf_mm"`     // distance down the flat CF from the edge
	Height float64 `json:"height_mm"` // above the waist
	Radius float64 `json:"radius_mm"`
	Zone   string  `json:"zone"` // "above bust" or "below bust"
}

// settled is the residual above which a drape is no result.
const settled = 1e-3

// outcome reads one drape.
func (d *Drape) outcome(seconds float64) (Outcome, fold.Reading, error) {
	if d.Result.Status == sim.Diverged {
		return Outcome{Status: sim.Diverged, Warning: "the forces ran away: try a finer spacing; if that does not help, the fabric's values may contradict each other", Folds: []FoldOut{}}, fold.Reading{}, nil
	}
	r, err := d.Read()
	if err != nil {
		return Outcome{}, r, err
	}
	const mm = 1000
	j, e := d.Job, d.Scene.Stored(d.State.Pos)
	o := Outcome{
		Status: d.Result.Status, FoldCount: r.Count, Kinks: r.Kinks, Pierced: d.Pierced(),
		EdgeDrop: r.EdgeDrop * mm, EdgeBelowNeck: r.EdgeBelowNeck * mm, StandOff: r.StandOff * mm, Forward: r.Forward * mm,
		Twist: r.Twist * mm, Drift: r.Drift * mm, CFGrowth: r.CFGrowth * 100,
		TapePull: d.TapePull(), WrongSide: r.WrongSide * mm * mm,
		FoldRadius: r.FoldRadius * mm, MaxStrain: d.Scene.Cloth.MaxStrain(d.State.Pos) * 100,
		PinPull: d.PinPull(), PinSlip: d.PinSlip() * mm, Inside: d.Inside() * mm,
		Residual: d.Result.Residual, Energy: e.Total() * mm, ShearShare: e.Shear / e.Total(),
		Nodes: len(d.Lattice.Rest), Spacing: d.Lattice.Spacing * mm, Iterations: d.Steps, Seconds: seconds, Seed: j.Seed,
		Fabric: j.Fabric.Name, Extension: j.Piece.Extension * mm, HalfEdge: j.Piece.HalfEdge * mm, Grain: j.Piece.Grain * 180 / math.Pi,
		Folds: []FoldOut{}, CowlPoint: j.Piece.CowlPoint * mm, Facing: j.Piece.Facing * mm, Free: j.Free,
	}
	edge, edgeMost := d.EdgeGrowth()
	shoulder, shoulderMost := d.ShoulderGrowth()
	o.EdgeGrowth, o.EdgeStretch, o.ShoulderGrow, o.ShoulderMost = edge*100, edgeMost*100, shoulder*100, shoulderMost*100
	for _, f := range r.Folds {
		o.Folds = append(o.Folds, FoldOut{f.Depth * mm, f.CF * mm, f.Height * mm, f.Radius * mm, string(f.Zone)})
	}
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
	case o.MaxStrain > 100*knot:
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
		o.EdgeDropMean += e.EdgeDrop / float64(len(r.Each))
	}
	o.FoldCount, o.CountShare = fold.Modes(o.FoldCounts)
	o.EdgeDropSpan = fold.Spread(o.EdgeDrops)
}
