package drape

import (
	"context"
	"math"
	"math/rand/v2"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hand is how one person places the cloth. No two do it alike: every seed
// draws its own within what a careful draper would call the same.
type hand struct {
	sag     float64 // length of the guided edge over its own length
	forward float64 // m, how far before the form the edge is led
	aside   float64 // m, centre front held off the middle, to the wearer's left
	lead    float64 // share of the way by which the edge runs ahead of the pins

	crest, valley [MostFolds]float64 // m down the flat, how far off its place each fold is laid
}

// handOf draws the hand of a seed.
func handOf(seed uint64) hand {
	r := rand.New(rand.NewPCG(seed, 0x636f776c))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	h := hand{sag: between(0.96, 0.98), forward: between(0.010, 0.020), aside: between(-0.003, 0.003),
		lead: between(-0.05, 0.05)}
	for k := range MostFolds {
		h.crest[k], h.valley[k] = between(-offPlace, offPlace), between(-offPlace, offPlace)
	}
	return h
}

// offPlace is how far off its place a careful draper lays a fold, m (our choice; no
// source gives a figure). So no two hands lay folds of one depth, either.
const offPlace = 0.004

// anyHand stands for all hands where what is asked for is refused or not: what one may
// lay, the others may too.
var anyHand = hand{sag: 0.97}

// before is how far the flat piece hangs before the foremost point of the form, m.
const before = 0.03

// start returns where the crossing at flat q begins: upright before the form,
// the facing folded back behind the front round a small roll.
func (j Job) start(q r2.Vec) r3.Vec {
	y0, z0 := j.waistY(), j.front()
	t := q.Y - j.Cowl.FoldY
	r := j.gap()
	switch {
	case t <= 0:
		return r3.Vec{X: q.X, Y: q.Y - y0, Z: z0}
	case t < math.Pi*r:
		return r3.Vec{X: q.X, Y: j.Cowl.FoldY - y0 + r*math.Sin(t/r), Z: z0 - r + r*math.Cos(t/r)}
	}
	return r3.Vec{X: q.X, Y: j.Cowl.FoldY - y0 - (t - math.Pi*r), Z: z0 - 2*r}
}

// waistY returns the flat y of the waist on CF, which hangs at height 0.
func (j Job) waistY() float64 { return j.Cowl.WaistY() }

// front returns the z of the plane in which the flat piece begins, m.
func (j Job) front() float64 {
	if j.Free {
		return j.Form.NeckPoint(1).Z
	}
	z := 0.0
	for y := 0.0; y < 0.45; y += 0.01 {
		z = math.Max(z, j.Form.BridgedFront(y))
	}
	for y := 0.0; y < j.Cowl.Hem; y += 0.01 {
		z = math.Max(z, j.Form.BridgedFront(-y))
	}
	return z + before
}

// The placing, in steps of the way to rest.
const (
	leadPhases = 200   // steps of the way of the pins to the form, the edge led along
	leadSteps  = 20    // in each
	layingLead = 40    // the same of a hand that lays folds, before slowly
	smoothings = 100   // times the pins are looked over while the hand holds still, and while it lets go
	laidOver   = 50    // the same of a hand that lays folds, whose cloth need not stretch
	smoothing  = 20    // steps between two
	guideGrip  = 5.0   // N/m a finger
	repinMost  = 0.001 // m, longest move of a pin at a time
)

// place leads the cloth from the flat to the form on a coarse lattice, then
// holds it and lets go on that of the placing. Cloth that is light across (see
// sim.Stepper) slides farther while it is led, so the hand works with even masses.
func (d *Drape) place(ctx context.Context) (*Drape, error) {
	h := handOf(d.Job.Seed)
	if !d.bring(ctx, h) {
		return d, nil
	}
	if d.Lattice.Spacing > 1.5*d.Job.placing() {
		var err error
		if d, err = d.finer(); err != nil {
			return nil, err
		}
	}
	d.smoothOut(ctx, h, d.looks())
	return d, nil
}

// bring leads the cloth to the form; false if it was stopped.
func (d *Drape) bring(ctx context.Context, h hand) bool {
	w := d.even()
	for k := 1; k <= leadPhases; k++ {
		t := float64(k) / leadPhases
		d.lead(h, t, guideGrip)
		if !d.walk(ctx, w, d.leads()) {
			return false
		}
		d.tell("placing", 0.7*t)
	}
	return true
}

// smoothOut holds the cloth, looks the pins over so many times, and lets go, looking
// them over as often.
func (d *Drape) smoothOut(ctx context.Context, h hand, times int) {
	w := d.even()
	for k := range times {
		d.repin()
		d.lead(h, 1, guideGrip)
		if !d.walk(ctx, w, d.slowly(smoothing)) {
			return
		}
		d.tell("smoothing", 0.7+0.15*float64(k)/float64(times))
	}
	d.press(h)
	for k := range times {
		d.repin()
		d.lead(h, 1, guideGrip*d.loosened(float64(k+1)/float64(times)))
		if !d.walk(ctx, w, d.slowly(smoothing)) {
			return
		}
		d.look()
		d.tell("letting go", 0.85+0.15*float64(k)/float64(times))
	}
}

// even returns a stepper with even masses.
func (d *Drape) even() *sim.Stepper {
	w := sim.NewStepper(d.System, d.State)
	w.Even = true
	return w
}

// walk takes n steps, and reports whether it may go on.
func (d *Drape) walk(ctx context.Context, w *sim.Stepper, n int) bool {
	for range n {
		w.Step()
		if d.Job.watch != nil {
			d.Job.watch(d, w)
		}
	}
	d.Steps += n
	if ctx.Err() != nil {
		d.Result.Status = sim.Cancelled
	}
	return ctx.Err() == nil
}

// repin moves every pin that drags a little towards where the cloth would lie.
func (d *Drape) repin() {
	smooth := smooth * d.System.Cloth.Weight()
	for k := range d.pins {
		if p := &d.pins[k]; !p.firm() && !p.sewn {
			p.giveWay(d.Job, r3.Scale(-1, d.State.Pull(d.System.Holds[k], k)), smooth)
		}
	}
}

// tell reports progress.
func (d *Drape) tell(stage string, share float64) {
	if d.Job.Report != nil {
		d.Job.Report(Progress{Stage: stage, Share: share})
	}
}

// lead sets pins, edge and centre for share t of the way.
func (d *Drape) lead(h hand, t, grip float64) {
	j, st := d.Job, d.State
	for k, p := range d.pins {
		st.Target[k], st.Grip[k] = j.way(p, t), p.grip()
	}
	k := len(d.pins)
	edge := j.hanging
	if j.Folds > 0 {
		edge = d.edgeOnTheWay
	}
	for _, q := range edge(h, smoothly(t+h.lead)) {
		st.Target[k], st.Grip[k] = q, grip
		k++
	}
	for range j.centre() {
		st.Target[k], st.Grip[k] = r3.Vec{X: h.aside}, grip
		k++
	}
	for _, f := range d.fingers {
		from := j.start(f.flat)
		st.Target[k], st.Grip[k] = r3.Add(from, r3.Scale(smoothly(t), r3.Sub(f.at, from))), grip*fingerGrip/guideGrip
		k++
	}
	for _, p := range led(d.pins) {
		st.Target[k], st.Grip[k] = j.way(p, t), grip
		k++
	}
}

// pinAll sets all pins to their places and the guiding hand away.
func (d *Drape) pinAll() { d.lead(hand{sag: 1}, 1, 0) }

// hanging returns where the guided places of the edge of cloth that is let fall are led at
// share e of the way: along a hanging curve between the cowl points, its middle before
// the form.
func (j Job) hanging(h hand, e float64) []r3.Vec {
	p := j.Cowl
	flat := r2.Vec{X: p.HalfEdge, Y: p.FoldY}
	from, to := j.start(flat), j.cowlPoint()
	end := r3.Add(from, r3.Scale(e, r3.Sub(to, from)))
	c := hangingCurve(end.X, p.HalfEdge*h.sag)
	places := j.edge()
	out := make([]r3.Vec, len(places))
	for k, q := range places {
		x, drop := c.at(q.X / p.HalfEdge)
		out[k] = r3.Vec{X: x + h.aside*(1-math.Abs(q.X)/p.HalfEdge), Y: end.Y - drop, Z: end.Z}
		if !j.Free {
			out[k] = j.clear(out[k], end.Z+(j.front()-before-end.Z)*drop/math.Max(c.drop, 1e-9), h.forward)
		}
	}
	return out
}

// cowlPoint returns where the cowl point of the wearer's left is pinned, m.
func (j Job) cowlPoint() r3.Vec {
	return j.off(j.Form.ShoulderPoint(1, j.Cowl.CowlPoint), sim.Shell+j.gap())
}

// clear moves a guided place forward to z and out of reach of the form.
func (j Job) clear(p r3.Vec, z, by float64) r3.Vec {
	p.Z = math.Max(p.Z, z)
	for range 60 {
		d, _ := j.Form.Distance(p)
		if d >= by {
			break
		}
		p.Z += math.Max(0.001, (by-d)/2)
	}
	return p
}
