package lab

import (
	"context"
	"errors"
	"maps"
	"math"
	"runtime"
	"slices"
	"sync"

	"cowl/sim"
	"cowl/sim/fault"
)

// DiscSetup is a drape meter: a round specimen held between two plates of a
// smaller diameter and let fall; zero values take the default.
type DiscSetup struct {
	Specimen float64        // m, diameter of the cloth, 0.1–0.6; 0 means 0.30
	Disc     float64        // m, diameter of the plates; 0 means 0.18
	Grain    float64        // rad, turn of the warp; only the mesh can feel it
	Friction float64        // cloth on the rim of the plate
	Spacing  float64        // m; 0 means a quarter of the bending length, within 4–6 mm
	Placings int            // times the cloth is let fall, 1–48; 0 means 4
	Fall     Fall           // how the cloth comes to hang; "" means Lowered
	Shake    float64        // strength a of the shakes after the fall, a share of the weight, 0–0.8; 0: none
	Fine     bool           // carry the typical placing on to half the spacing, and say what that moved
	Gap      float64        // m, kept between layers of the cloth; 0 lets them pass
	Report   func(Progress) // called now and then, may be nil
}

// Fall is how the cloth of a drape meter comes to hang.
type Fall string

// The ways to fall.
const (
	Lowered Fall = "lowered" // from a table round the plate that is lowered under it
	Dropped Fall = "dropped" // let go level, all at once
	Slow    Fall = "slow"    // its weight comes on slowly
)

// DiscResult is what a drape meter reads over all placings.
type DiscResult struct {
	Coefficient float64     // mean over the placings with Count nodes, a fraction: (shadow − disc)/(specimen − disc)
	Mean        float64     // over all placings
	Spread      float64     // its standard deviation over all placings; 0 for one
	Count       int         // most frequent number of nodes; of equals the one nearest to the mean
	Counts      map[int]int // placings by number of nodes
	Each        []Draped    // one a placing
	Typical     int         // index of the placing with Count nodes and a coefficient nearest to theirs
	Halved      *Draped     // the typical placing on half the spacing; nil without Fine
	Run                     // status and residual of the placing that is least at rest; steps and seconds of all
}

// Draped is one placing at rest.
type Draped struct {
	Coefficient float64   // a fraction
	Nodes       []float64 // m, depth of each: fall of the rim from its peak; see Shadow.Nodes
	Energy      float64   // J, stored and of height; 0 is the flat level cloth
	Shadow      *Shadow
	Run

	bench *bench // as it hangs
}

// Disc lets the specimen fall once a placing. Placings differ in the small
// first wave, which decides the nodes; a cloth with no faces, as here, falls
// face down as it falls face up. It fails where the setup is out of range.
//
// The same cloth rests in many shapes, and which one depends on how it comes to
// hang. BS 5058 (1973), clause 2, only says that the ring of cloth between the
// discs is allowed to drape; that a table is lowered round the disc, the
// default, is from memory. On that way the cloth is near rest throughout, which
// a walk to rest can follow and on which friction of bending has its meaning.
// Let fall at once the walk is a quench, without true inertia: the cloth
// buckles into more nodes and keeps most of them. Four placings stand for two
// specimens both ways up, as the test is commonly described.
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
			defer fault.Tell()
			for k := range next {
				out.Each[k], errs[k] = d.drape(ctx, s, k)
			}
		})
	}
	for k := range d.Placings {
		next <- k
	}
	close(next)
	all.Wait()
	out.sum()
	if err := errors.Join(errs...); err != nil || !d.Fine {
		return out, err
	}
	var err error
	out.Halved, err = d.halve(ctx, s, out.Each[out.Typical])
	return out, err
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
	if d.Fall == "" {
		d.Fall = Lowered
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
		{"shake", d.Shake, 0, 0.8, 1, ""},
		{"gap", d.Gap, 0, 0.005, 1000, "mm"},
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
	nodes := 0.0 // mean
	r.Counts = map[int]int{}
	for _, e := range r.Each {
		r.Mean += e.Coefficient / n
		nodes += float64(len(e.Nodes)) / n
		r.Counts[len(e.Nodes)]++
		r.Spread += e.Coefficient * e.Coefficient
		steps, seconds := r.Steps+e.Steps, r.Seconds+e.Seconds
		if r.Nodes == 0 || r.Status == sim.Settled && (e.Status != sim.Settled || e.Residual > r.Residual) {
			r.Run = e.Run
		}
		r.Steps, r.Seconds = steps, seconds
	}
	r.Spread = math.Sqrt(math.Max(0, (r.Spread-n*r.Mean*r.Mean)/math.Max(1, n-1)))
	r.Count = mostFrequent(r.Counts, nodes)
	for _, e := range r.Each {
		if len(e.Nodes) == r.Count {
			r.Coefficient += e.Coefficient / float64(r.Counts[r.Count])
		}
	}
	far := math.Inf(1)
	for k, e := range r.Each {
		if d := math.Abs(e.Coefficient - r.Coefficient); len(e.Nodes) == r.Count && d < far {
			r.Typical, far = k, d
		}
	}
}

// mostFrequent returns the number that most placings have; of equals the one nearest
// to the mean, of those the smaller.
func mostFrequent(counts map[int]int, mean float64) int {
	best := -1
	for _, c := range slices.Sorted(maps.Keys(counts)) {
		off := func(count int) float64 { return math.Abs(float64(count) - mean) }
		if best < 0 || counts[c] > counts[best] || counts[c] == counts[best] && off(c) < off(best) {
			best = c
		}
	}
	return best
}
