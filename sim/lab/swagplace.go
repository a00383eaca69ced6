package lab

import (
	"context"
	"math"
	"time"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// swagDraft is the flat piece of a swag and how its folds are laid. From the
// straight upper edge down every line of the cloth hangs in a chain from side to
// side, the lower edge to the finished depth (workrooms hang a weight chain for
// it). What is left of the cloth between two lines goes forward to a crest and back to
// a valley; the lower edge lies in front, like a crest.
//
// A leg between two equal chains, the one lower and before the other, is a
// cylinder whose rulings lead from one to the other. Unrolled, a chain rises
// towards its ends by 1/Flat of what it rises in space, its length unchanged. So
// the piece is drafted, and its lower edge comes out curved as those of
// workrooms are. Chains fan out from side to middle, so the laid piece is
// strained a little all the same; the cloth finds its way when it is let go.
type swagDraft struct {
	width, stack float64 // m, of the board and of the pleats at either end of it
	depth, flat  float64 // m, in the middle
	legs         int     // from fold to fold, two a pleat, and the last to the lower edge
}

func (w SwagSetup) draft() swagDraft {
	return swagDraft{width: w.Width, stack: w.Stack, flat: w.Flat * w.Depth, depth: w.Depth, legs: 2*w.Pleats + 1}
}

// chain returns the chain in which the line down the flat middle (m) hangs.
func (d swagDraft) chain(down float64) chain {
	share := down / d.flat
	return newChain(d.width-2*d.stack*(1-share), d.depth*share)
}

// at returns the flat place at share t, −1..1, of the line down the middle.
func (d swagDraft) at(down, t float64) r2.Vec {
	c := d.chain(down)
	x, drop := c.at(t)
	slant := d.depth / d.flat
	return r2.Vec{X: c.unrolled(x, slant), Y: -down + slant*(c.drop-drop)}
}

// fold returns how far down the flat middle fold i lies: crests are odd.
func (d swagDraft) fold(i int) float64 { return d.flat * float64(i) / float64(d.legs) }

// outline returns the flat piece, counter-clockwise.
func (d swagDraft) outline() []r2.Vec {
	const along, leg = 60, 6 // parts of the lower edge, and of a side from fold to fold
	var lower, left, right []r2.Vec
	for i := range along {
		lower = append(lower, d.at(d.flat, 2*float64(i)/along-1))
	}
	for i := range leg * d.legs {
		down := d.flat * float64(i) / float64(leg*d.legs)
		right = append(right, d.at(d.flat-down, 1))
		left = append(left, d.at(down, -1))
	}
	return append(append(append(lower, right...), d.at(0, 1)), left...)
}

// forward returns how far the cloth of a leg goes forward at the sides, or in the
// middle, m: what is left of its length over its height.
func (d swagDraft) forward(leg int, t float64) float64 {
	from, to := d.at(d.fold(leg), t), d.at(d.fold(leg+1), t)
	all := d.depth // what all legs take along the middle, or along the board
	if t != 0 {
		all = d.stack
	}
	return math.Sqrt(math.Max(0, r2.Norm2(r2.Sub(to, from))-math.Pow(all/float64(d.legs), 2)))
}

// ahead returns how far before the board the line down the flat middle lies, at its
// ends or in its middle, m.
func (d swagDraft) ahead(down, t float64) float64 {
	leg := min(d.legs-1, int(down/d.flat*float64(d.legs)))
	share := down/d.flat*float64(d.legs) - float64(leg)
	crest := d.forward(leg-leg%2, t)
	if leg%2 == 1 {
		share = 1 - share
	}
	return share * crest
}

// laid returns where the place at share t of a line is laid.
func (d swagDraft) laid(down, t float64) r3.Vec {
	c := d.chain(down)
	x, drop := c.at(t)
	end, mid := d.ahead(down, 1), d.ahead(down, 0)
	share := 0.0 // of the way from the sides to the middle
	if c.drop > 0 {
		share = drop / c.drop
	}
	deep := math.Sqrt(math.Max(0, c.drop*c.drop-(mid-end)*(mid-end))) // the chain hangs in a plane that leans
	return r3.Vec{X: x, Y: -deep * share, Z: end + (mid-end)*share}
}

// The hand of a swag. A step carries a wave about one spacing; these are steps
// on 12 mm, on a finer lattice the same hand takes more of them.
const (
	swagLead   = 3000
	swagHold   = 1500
	swagLoosen = 2000
	swagOn     = 0.012 // m
	swagPhases = 100   // of each

	swagFinger    = 1.0  // N/m, grip
	swagFingers   = 0.03 // m along a line from finger to finger
	swagTacks     = 0.03 // m along the board from tack to tack
	swagLightness = 4    // powers of ten by which the fingers grow lighter before they let go
)

// touch is a place of the cloth that the hand leads.
type touch struct {
	flat   r2.Vec // m
	at     r3.Vec // m, where it is laid
	finger bool   // lets go; else a tack on the board or a fold of a pleat, which stays
}

// touches lists the tacks on the board, the folds of the pleats at the sides, and
// fingers along folds and halfway between.
func (d swagDraft) touches() []touch {
	var out []touch
	add := func(down, t float64, finger bool) {
		out = append(out, touch{d.at(down, t), d.laid(down, t), finger})
	}
	n := int(math.Ceil(d.chain(0).span / swagTacks))
	for i := range n + 1 {
		add(0, 2*float64(i)/float64(n)-1, false)
	}
	for i := 1; i <= d.legs; i++ {
		add(d.fold(i), -1, false)
		add(d.fold(i), 1, false)
	}
	for i := 1; i <= 2*d.legs; i++ {
		down := d.flat * float64(i) / float64(2*d.legs)
		n := int(math.Ceil(2 * d.chain(down).half / swagFingers))
		for j := 1; j < n; j++ {
			add(down, 2*float64(j)/float64(n)-1, true)
		}
	}
	return out
}

// swagHand has its touches on a swag.
type swagHand struct {
	*bench
	touches []touch
	walk    *sim.Stepper
	steps   int
}

// setUp hangs the flat piece upright from the board, and puts the hand on it.
func (w SwagSetup) setUp(s sim.Stiffness, d swagDraft) (*swagHand, error) {
	l, err := lattice.Cut(d.outline(), lattice.Options{Spacing: w.Spacing, Grain: w.Grain})
	if err != nil {
		return nil, err
	}
	k := &bench{lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s), Gap: w.Gap, Alone: true}, report: w.Report}
	h := &swagHand{bench: k, touches: d.touches()}
	for _, p := range h.touches {
		if err := k.hold(p.flat, sim.All); err != nil {
			return nil, err
		}
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = r3.Vec{X: q.X, Y: q.Y}
	}
	k.state = sim.NewState(k.system, pos)
	h.walk = sim.NewStepper(k.system, k.state)
	h.walk.Even = true
	return h, nil
}

// place leads the cloth from the flat to where it is laid, holds it there and
// lets go, by equal ratios: with equal steps nine tenths of the letting go would
// pass before the weight of the cloth is felt. It reports whether it may go on.
func (h *swagHand) place(ctx context.Context, r *Run) bool {
	start := time.Now()
	all := func(float64) float64 { return 1 }
	smoothly := func(t float64) float64 { return t * t * (3 - 2*t) }
	lighter := func(t float64) float64 { return math.Pow(10, -swagLightness*t) }
	ok := h.spend(ctx, "laying folds", swagLead, smoothly, all) &&
		h.spend(ctx, "holding", swagHold, all, all) &&
		h.spend(ctx, "letting go", swagLoosen, all, lighter)
	h.touch(1, 0)
	r.note(h.bench, sim.Result{Status: sim.Cancelled, Steps: h.steps}, start)
	return ok
}

// spend takes steps with the touches led a share of their way and the fingers
// gripping by a share; both are told how much of the steps is done.
func (h *swagHand) spend(ctx context.Context, stage string, steps int, way, grip func(done float64) float64) bool {
	h.stage = stage
	each := max(1, int(float64(steps)*swagOn/h.lattice.Spacing/swagPhases))
	for phase := 1; phase <= swagPhases && ctx.Err() == nil; phase++ {
		done := float64(phase) / swagPhases
		h.touch(way(done), grip(done))
		for range each {
			h.walk.Step()
		}
		h.steps += each
		h.tell(phase, swagPhases, 1)
	}
	return ctx.Err() == nil
}

// touch leads all touches a share of their way, the fingers gripping by a share.
func (h *swagHand) touch(way, grip float64) {
	for i, p := range h.touches {
		from := r3.Vec{X: p.flat.X, Y: p.flat.Y}
		h.state.Target[i], h.state.Grip[i] = r3.Add(from, r3.Scale(way, r3.Sub(p.at, from))), pin
		if p.finger {
			h.state.Grip[i] = swagFinger * grip
		}
	}
}
