package drape

import (
	"context"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r3"
)

// MostLean is how far forward a wearer may bend, rad: at a right angle the cloth would
// hang off the form altogether.
const MostLean = math.Pi / 3

const (
	leanBy    = 5 * math.Pi / 180 // rad, the wearer bends by so much at a time; the cloth comes near rest at each
	leanSteps = 6000              // of the way to rest at each, at most
	leanRest  = 30_000            // the same where it is read
)

// Lean is what becomes of the cloth while the wearer bends forward, and when they are
// upright again. In the frame of the form it is the weight that turns: away from the chest
// under a cowl at the front, on to the back under one at the back.
type Lean struct {
	Angle               float64 // rad, forward
	Upright, Bent, Back Posture
}

// Posture is what shows at one angle.
type Posture struct {
	StandOff float64 // m, of the edge on the centre front off the form
	Opening  float64 // m², between the edge and the form
	Kept     int     // laid folds that are still there
	First    float64 // m down the flat centre front, place of the first kept fold; 0: none
	Settled  bool
}

// checkLean refuses an angle out of range, and a lean of nobody.
func (j Job) checkLean() error {
	if j.Free && j.Lean != 0 {
		return limit.Errorf("lean", "lean %v of a piece that hangs free, want 0: nobody wears it",
			limit.Of(j.Lean, limit.Angle))
	}
	return LeanRange(j.Lean).Check()
}

// LeanRange returns how far forward a wearer may bend, rad.
func LeanRange(angle float64) limit.Range {
	return limit.Range{Field: "lean", Value: angle, Hi: MostLean, Unit: limit.Angle,
		Why: limit.Say("0 is upright; farther the cloth hangs off the form")}
}

// leaned bends the wearer of a copy of the drape and lets them come up again. The cloth
// holds on to the form and to itself where it touched all the way.
func (d *Drape) leaned(ctx context.Context, angle float64) (Lean, error) {
	c, scene := *d, *d.System
	c.System, c.State = &scene, d.State.Clone()
	out := Lean{Angle: angle}
	var err error
	if out.Upright, err = c.posture(true); err != nil {
		return out, err
	}
	w := sim.NewStepper(c.System, c.State)
	steps := max(1, int(math.Round(angle/leanBy)))
	for k := 1; k <= 2*steps; k++ {
		at := angle * float64(min(k, 2*steps-k)) / float64(steps)
		scene.Down = down(at, d.Job.Cowl.Worn)
		d.tell("leaning", float64(k)/float64(2*steps))
		read := k%steps == 0
		o := sim.Settings{Residual: nearRest, Steps: leanSteps, Watch: c.watched()}
		if read {
			o.Residual, o.Steps = settled, leanRest
		}
		r := w.Walk(ctx, o)
		c.look()
		if !read {
			continue
		}
		p, err := c.posture(r.Status == sim.Settled)
		if err != nil {
			return out, err
		}
		if out.Back = p; k == steps {
			out.Bent = p
		}
	}
	return out, nil
}

// down is which way the weight pulls in the frame of the form whose wearer bends forward
// by angle, rad. A form that is turned for a back cowl has its wearer's front at Z below 0.
func down(angle float64, worn draft.Side) r3.Vec {
	forward := 1.0
	if worn == draft.AtBack {
		forward = -1
	}
	return r3.Vec{Y: -math.Cos(angle), Z: forward * math.Sin(angle)}
}

// posture reads the cloth as it lies.
func (d *Drape) posture(settled bool) (Posture, error) {
	r, err := d.Read()
	if err != nil {
		return Posture{}, err
	}
	p := Posture{StandOff: r.StandOff, Opening: d.opening(), Settled: settled}
	crests := r.Crests()
	for _, f := range d.track.Look(crests).Folds {
		if f.Kept() {
			if p.Kept++; p.Kept == 1 {
				p.First = crests[f.Crest]
			}
		}
	}
	return p, nil
}

// opening is the area between the edge and the form below it, m²: what an eye sees
// into that looks down along the edge.
func (d *Drape) opening() float64 {
	line := d.Job.edgeLine()
	const parts = 100
	var sum, before float64
	var last r3.Vec
	for k := range parts + 1 {
		h, ok := d.Lattice.Locate(line.at(line.long * float64(k) / parts))
		if !ok {
			continue
		}
		at := h.At(d.State.Pos)
		off, _ := d.Job.Form.Distance(at)
		off = math.Max(0, off)
		if k > 0 {
			sum += (off + before) / 2 * math.Abs(at.X-last.X)
		}
		last, before = at, off
	}
	return sum
}

// leanShown bends the wearer of the shown drape.
func (r *Run) leanShown(ctx context.Context) error {
	l, err := r.Drape.leaned(ctx, r.Drape.Job.Lean)
	if err != nil {
		return err
	}
	r.Outcome.Lean = &l
	return nil
}
