package draft

import (
	"fmt"
	"math"
	"strconv"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Closure is an opening that is left for the wearer to get in, and closed when worn.
type Closure int

// The closures. All are on the wearer's left, but for the back.
const (
	NoClosure    Closure = iota
	SideZip              // a zip in the side seam, from below the underarm to below the waist
	ShoulderOpen         // the shoulder seam left open from the cowl point on, buttoned
	BackOpen             // a slit in the centre back from the neck down, with a button and a loop
)

var closureNames = [...]string{"none", "side", "shoulder", "back"}

// String returns the name used on the command line.
func (c Closure) String() string {
	if c < NoClosure || c > BackOpen {
		return fmt.Sprintf("Closure(%d)", int(c))
	}
	return closureNames[c]
}

// ParseClosure returns the Closure of a name that String gives.
func ParseClosure(name string) (Closure, error) {
	for c, n := range closureNames {
		if n == name {
			return Closure(c), nil
		}
	}
	return NoClosure, limit.Errorf("closure", "closure %s, want none, side, shoulder or back", strconv.Quote(name))
}

// Measures of closures, m (common practice).
const (
	zipBelowArm  = 0.025 // of its upper stop below the underarm
	zipPastWaist = 0.10  // of its lower stop below the waist, if the top goes on to a hem
	zipAboveHem  = 0.020 // what is sewn up below that stop at least
	shortestZip  = 0.05
	offTip       = 0.015 // what of the shoulder stays sewn at the tip
	shortestOpen = 0.02
	leastSlit    = 0.10 // in the centre back
	slitStep     = 0.01 // it is made longer in such steps until the head passes
	belowSlit    = 0.10 // what is left of the centre back
)

// Gap is an opening as it lies in its seam.
type Gap struct {
	Closure Closure
	Long    float64  // m, from end to end
	Front   []r2.Vec // places of its stops on the cowl's seam, wearer's left half; nil: it is not in the cowl
	Back    []r2.Vec // on the plain piece's
	Out     r2.Vec   // unit, out of the cowl at its stops
	BackOut r2.Vec   // unit, out of the plain piece there
}

// GapIn returns how a closure lies in the cowl p and its plain piece, which are front and
// back or, of a back cowl, back and front. The slit is as long as
// a head (girth, m) needs. A seam that is too short for it, and a shoulder with pleats, are
// errors.
func (c Closure) GapIn(p Cowl, b Back, head float64) (Gap, error) {
	switch c {
	case SideZip:
		return zipIn(p, b)
	case ShoulderOpen:
		return shoulderIn(p, b)
	case BackOpen:
		if p.Worn == AtBack {
			return Gap{}, limit.Errorf("closure", "a slit in the centre back would cut the cowl in two: want side or shoulder")
		}
		return slitIn(p, b, head)
	}
	return Gap{}, nil
}

func zipIn(p Cowl, b Back) (Gap, error) {
	waist := p.SideToWaist()
	stops, end := []float64{zipBelowArm}, waist
	if below := math.Min(zipPastWaist, p.Hem-zipAboveHem); p.Hem > 0 && below > 0 {
		end = waist + below
		stops = append(stops, end)
	} else if p.Hem > 0 {
		end = polyline.Length(p.Side)
	}
	g := Gap{Closure: SideZip, Long: end - zipBelowArm}
	if g.Long < shortestZip {
		return g, limit.Errorf("closure", "a zip of %v in the side seam, want at least %v: the seam is too short for one",
			limit.Metres(math.Max(g.Long, 0)), limit.Metres(shortestZip))
	}
	g.mark(p.Side, b.Side, stops, p.Worn)
	return g, nil
}

func shoulderIn(p Cowl, b Back) (Gap, error) {
	if p.Pleats != nil {
		return Gap{}, limit.Errorf("closure", "a shoulder with pleats cannot be left open: want side or back")
	}
	g := Gap{Closure: ShoulderOpen, Long: p.ShoulderLength() - offTip}
	if end := polyline.Length(p.FacingEnd); math.Abs(end-g.Long) < offTip {
		g.Long = end // the two stops would be taken for one
	}
	if g.Long < shortestOpen {
		return g, limit.Errorf("closure", "the shoulder would be open for %v, want at least %v: it is too short",
			limit.Metres(math.Max(g.Long, 0)), limit.Metres(shortestOpen))
	}
	g.mark(p.Shoulder, b.Shoulder, []float64{g.Long}, p.Worn)
	return g, nil
}

func slitIn(p Cowl, b Back, head float64) (Gap, error) {
	neck := b.Neck[len(b.Neck)-1]
	g := Gap{Closure: BackOpen, Long: leastSlit}
	if short := head - Opening(p, b); short > 2*leastSlit {
		g.Long = slitStep * math.Ceil(short/2/slitStep-1e-9)
	}
	if most := neck.Y - b.Waist[len(b.Waist)-1].Y - belowSlit; g.Long > most {
		return g, limit.Errorf("closure", "a slit of %v in the centre back, want at most %v: widen the neck, or leave a "+
			"shoulder open",
			limit.Metres(g.Long), limit.Metres(math.Max(most, 0)))
	}
	g.Back, g.BackOut = []r2.Vec{{Y: neck.Y - g.Long}}, r2.Vec{X: 1}
	return g, nil
}

// mark sets the stops at places down a seam of the cowl, which is worn at a side, and of
// its plain piece (m), on the wearer's left.
func (g *Gap) mark(cowl, plain []r2.Vec, stops []float64, worn Side) {
	for _, s := range stops {
		at, out := worn.stop(cowl, s)
		on, back := worn.Other().stop(plain, s)
		g.Front, g.Out = append(g.Front, at), out
		g.Back, g.BackOut = append(g.Back, on), back
	}
}

// stop returns the place s metres down a seam of the wearer's left half of a piece worn at
// a side, and the way out of the piece there.
func (w Side) stop(seam []r2.Vec, s float64) (at, out r2.Vec) {
	at, i := polyline.Along(seam, s)
	out = outward(seam[i], seam[i+1])
	if w == AtBack { // where the wearer's left lies at X below 0
		return mirrored(at), mirrored(out)
	}
	return at, out
}

// Head returns the neck opening of p and b with the gap open, m.
func (g Gap) Head(p Cowl, b Back) float64 {
	if g.Closure == ShoulderOpen || g.Closure == BackOpen {
		return Opening(p, b) + 2*g.Long
	}
	return Opening(p, b)
}

// Waist returns what the bust has to pass with the gap open, m: the sewn waist, and with a
// zip both its edges too. A zip with a hem ends within the side seam, so that the hem is
// what has to be passed.
func (g Gap) Waist(p Cowl, b Back) float64 {
	switch {
	case g.Closure != SideZip:
		return WaistOpening(p, b)
	case p.Hem > 0:
		return 2 * (polyline.Length(p.Waist) + polyline.Length(b.Waist))
	}
	return WaistOpening(p, b) + 2*g.Long
}
