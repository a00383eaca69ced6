package draft

import (
	"math"

	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// Added says what was done to the block to get the extension.
type Added struct {
	DartShare float64 // 0..1, share of the dart that was closed
	FromDart  float64 // m, extension that closing gave
	FromOther float64 // m, extension that How gave
	Amount    float64 // pivot: angle, rad; shift: distance, m; slash: gap of each slash on CF, m
}

const (
	// steepest is as far as the front may be pivoted: at 45° the waist seam
	// falls as much as it runs and is a waist seam no longer.
	steepest = math.Pi / 4
	// furthest is as far as the front may be shifted: the full waist grows by
	// twice that.
	furthest = 0.30
	// widest is as far as a slash may be opened on CF: twice the 7.5 cm that
	// cowl sleeves are spread by; more is a gather, not a fold.
	widest = 0.15
	// extensionSlack is how close to a limit an extension still counts as
	// within it (m).
	extensionSlack = 1e-6
)

// shape closes the dart and adds what is missing of the extension.
func shape(b Block, c Cut) (front, Added, error) {
	f := newFront(b, c.CowlPoint)
	pleats := c.pleats(b)
	extension := func(g front) float64 { return g.pleated(pleats).edge().X - f.edge().X }
	dart := b.DartAngle()
	if b.DartIntake() <= leastDart {
		dart = 0
	}
	var a Added
	a.DartShare = dartShare(c, func(s float64) float64 { return extension(f.closed(s * dart)) })
	g := f.closed(a.DartShare * dart)
	a.FromDart = g.edge().X - f.edge().X
	if c.Extension < 0 {
		c.Extension = a.FromDart
	}
	missing := c.Extension - extension(g) // pleats draw the edge up, and some of it in
	if math.Abs(missing) > extensionSlack {
		open, most := g.opener(c)
		reach := extension(open(most))
		if missing < 0 || c.Extension > reach+extensionSlack {
			return front{}, Added{}, unreachable(c, a, reach)
		}
		a.Amount = solve(most, c.Extension, func(t float64) float64 { return extension(open(t)) })
		g = open(a.Amount)
		a.FromOther = extension(g) - a.FromDart
	}
	g = g.pleated(pleats)
	return g, a, g.falls()
}

// dartShare returns the share of the dart to close; gives is the extension a
// share gives.
func dartShare(c Cut, gives func(float64) float64) float64 {
	switch {
	case c.DartShare >= 0:
		return c.DartShare
	case c.Extension < 0 || gives(1) <= c.Extension:
		return 1
	}
	return solve(1, c.Extension, gives)
}

// opener returns what c.How does to f by an amount, and the largest amount.
func (f front) opener(c Cut) (open func(float64) front, most float64) {
	switch c.How {
	case Shift:
		return f.shiftedBy, furthest
	case Slash:
		// Past the upright the top of the shoulder seam would lean over CF and
		// the edge grow shorter again.
		cuts := f.slashes(c.Slashes)
		lean := turn(r2.Vec{Y: -1}, r2.Sub(cuts[0].hinge, f.edge()))
		total := func(g float64) (a float64) {
			for _, s := range cuts {
				a += opening(s, g)
			}
			return a
		}
		most = widest
		if total(widest) > lean {
			most = solve(widest, lean, total)
		}
		return func(g float64) front { return f.spread(c.Slashes, g) }, most
	}
	return f.pivoted, steepest
}

// solve returns t in 0..most with rising(t) = want, by bisection; a want
// outside the values of rising gives the nearer end.
func solve(most, want float64, rising func(float64) float64) float64 {
	lo, hi := 0.0, most
	for range 60 {
		mid := (lo + hi) / 2
		if rising(mid) < want {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// unreachable says what extensions a cut can have.
func unreachable(c Cut, a Added, reach float64) error {
	lo, fix := a.FromDart, "close less of the dart"
	if c.DartShare < 0 {
		lo = 0
	}
	if c.Extension > reach {
		switch {
		case a.DartShare < 1:
			fix = "close more of the dart"
		case c.How != Pivot:
			fix = "add it by pivot, which reaches furthest"
		default:
			fix = "ask for less: a deeper cowl needs a longer front"
		}
	}
	return limit.Errorf("extension", "extension %v, want %v with %.0f %% of the dart closed and the rest by %v: %s",
		limit.Metres(c.Extension), limit.Between(math.Ceil(lo*1000)/1000, math.Floor(reach*1000)/1000, limit.Length),
		a.DartShare*100, c.How, fix)
}
