package form

import (
	"math"

	"cowl/mesh/body"
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Rows of the level table, bottom to top.
const (
	rowBottom = iota
	rowHip
	rowBelly
	rowWaist
	rowUnderbust
	rowBust
	rowChest
	rowUpper
	rowPit
	rowNeck
	rowTop
)

// frontEase is how much longer the front waist quarter is than a quarter of
// the waist: the side seam lies that far behind the middle (common practice).
const frontEase = 0.005

// fit solves for the shape of a body whose landmarks lie at the body's lengths
// measured over the form. Heights and depths depend on each other: from the
// flat lengths as first heights the round settles in a few turns.
func fit(b body.Body) (*shape, error) {
	at := flatHeights(b)
	for round := range 30 {
		s, err := fitAt(b, at)
		if err != nil {
			return nil, err
		}
		next := s.heightsOver(b)
		if next.miss(at) < 3e-4 {
			return s, s.setShoulder(b)
		}
		if round > 4 && round%2 == 1 {
			next = at.halfway(next) // heights that swing come to rest
		}
		at = next
	}
	return nil, limit.Errorf("body", "no form of bust %v has apex depth %v and nape to waist %v: check them against "+
		"each other", limit.Metres(b.Bust), limit.Metres(b.ApexDepth), limit.Metres(b.NapeToWaist))
}

// fitAt solves for the girths with the landmarks at the given heights.
func fitAt(b body.Body, at heights) (*shape, error) {
	s := &shape{at: at}
	s.table = standard(b, s.at)
	if err := s.ordered(b); err != nil {
		return nil, err
	}
	if err := s.setRidge(b, b.ShoulderSlope); err != nil {
		return nil, err
	}
	s.mound = standardMound(b, s.at)
	for range 60 {
		if err := s.refit(); err != nil {
			return nil, err
		}
		if s.step(b) < 2e-5 {
			return s, nil
		}
	}
	return nil, limit.Errorf("body", "no section of the form carries bust %v, waist %v, hip %v, neck %v: check them "+
		"against each other", limit.Metres(b.Bust), limit.Metres(b.Waist), limit.Metres(b.Hip), limit.Metres(b.Neck))
}

// ordered returns an error if the rows of the table do not rise: each landmark
// must lie half a centimetre over the one below it.
func (s *shape) ordered(b body.Body) error {
	names := []string{
		rowBottom: "bottom", rowHip: "hip", rowBelly: "belly", rowWaist: "waist", rowUnderbust: "under-bust", rowBust: "apex",
		rowChest: "chest", rowUpper: "upper chest", rowPit: "front neck point", rowNeck: "neck point", rowTop: "neck cap",
	}
	for i := 1; i < len(s.table); i++ {
		if !(s.table[i].y > s.table[i-1].y+0.005) {
			return limit.Errorf("body", "the %s would lie at the %s or below it: check bust %v, armscye depth %v, apex "+
				"depth %v and nape to waist %v against each other",
				names[i], names[i-1], limit.Metres(b.Bust), limit.Metres(b.ArmscyeDepth), limit.Metres(b.ApexDepth),
				limit.Metres(b.NapeToWaist))
		}
	}
	return nil
}

// refit splines the table anew.
func (s *shape) refit() (err error) {
	s.prof, err = profileOf(s.table)
	return err
}

// step moves the girths, the front share of the waist, the neck and the bust
// apex towards the body and returns the largest miss before the move, m; a
// mound that moves changes the girth by a tenth of its way or less.
func (s *shape) step(b body.Body) float64 {
	waist, hip, bust := tape(s.outline(0)), tape(s.outline(s.at.hip)), tape(s.outline(s.at.apex))
	quarter := s.frontWaist()
	neck := tape(s.outline(s.at.neck))
	miss := max(math.Abs(waist-b.Waist), math.Abs(hip-b.Hip), math.Abs(bust-b.Bust),
		math.Abs(quarter-b.Waist/4-frontEase), math.Abs(neck-b.Neck))

	s.scale(rowWaist, b.Waist/waist)
	s.scale(rowHip, b.Hip/hip)
	s.scale(rowBottom, b.Hip/hip)
	s.scale(rowBelly, (b.Hip/hip+b.Waist/waist)/2)
	for _, r := range []int{rowUnderbust, rowBust, rowChest} {
		s.scale(r, b.Bust/bust)
	}
	shift := 1.5 * (b.Waist/4 + frontEase - quarter*b.Waist/waist)
	s.table[rowWaist].front += shift
	s.table[rowWaist].back -= shift
	// The neck width is given, so only its depth can carry the girth.
	s.scale(rowNeck, 1+2*(b.Neck/neck-1))
	before := s.mound
	s.aim(b)
	// Halfway only: girth and mounds act on each other and would swing.
	s.mound.x, s.mound.y = (s.mound.x+before.x)/2, (s.mound.y+before.y)/2
	return max(miss, math.Abs(s.mound.x-before.x)/10, math.Abs(s.mound.y-before.y)/10)
}

// scale stretches one row about its centre.
func (s *shape) scale(row int, k float64) {
	l := &s.table[row]
	l.front, l.back = l.front*k, l.back*k
	if row <= rowBust {
		l.half *= k
	}
}

// aim moves the mounds until the foremost point of the left one is the apex:
// Newton's method on the slopes of the front there, each in its own centre
// coordinate, which is enough because a bell is nearly a product in x and y.
func (s *shape) aim(b body.Body) {
	const e = 1e-5
	x, y := b.BustSpan/2, s.at.apex
	slopeX := func() float64 { return (s.frontZ(x+e, y) - s.frontZ(x-e, y)) / (2 * e) }
	slopeY := func() float64 { return (s.frontZ(x, y+e) - s.frontZ(x, y-e)) / (2 * e) }
	for range 20 {
		s.mound.x = near(s.mound.x-s.newton(slopeX, &s.mound.x, s.mound.wide), x, s.mound.wide)
		s.mound.y = near(s.mound.y-s.newton(slopeY, &s.mound.y, s.mound.tall), y, s.mound.tall)
	}
}

// near holds a mound centre so close to the apex that the apex lies within the
// turning points of the bell, where it is steepest: where the rib cage falls off
// faster than that, as under apexes far apart, farther would only lose the mound.
func near(centre, apex, bell float64) float64 {
	reach := bell / math.Sqrt2
	return min(max(centre, apex-reach), apex+reach)
}

// newton returns the step towards the root of f in the mound coordinate *c. It
// is at most a tenth of the bell, whose flank has no use for longer ones.
func (s *shape) newton(f func() float64, c *float64, bell float64) float64 {
	const e = 1e-5
	v := f()
	*c += e
	d := (f() - v) / e
	*c -= e
	// Unless the bell turns over too close to the apex, d is > 0.
	step := v / max(d, s.mound.height/(bell*bell)/4)
	return min(max(step, -bell/10), bell/10)
}

// outline returns the right-left symmetric section at height y as a closed
// polygon, without the ends of the form.
func (s *shape) outline(y float64) []r2.Vec {
	const quarter = 96
	c := s.contour(y)
	pts := make([]r2.Vec, 0, 4*quarter)
	for i := 0; i < quarter; i++ {
		x := c.half * math.Pow(math.Sin(math.Pi/2*float64(i)/quarter), 2/c.n)
		for _, z := range []float64{s.frontZ(x, y), s.backZ(x, y)} {
			pts = append(pts, r2.Vec{X: x, Y: z}, r2.Vec{X: -x, Y: z})
		}
	}
	return append(pts, r2.Vec{X: c.half, Y: c.centre}, r2.Vec{X: -c.half, Y: c.centre})
}

// frontWaist returns the length of the waist from CF to the side, m.
func (s *shape) frontWaist() float64 {
	const n = 200
	c := s.contour(0)
	pts := make([]r3.Vec, n+1)
	for i := range pts {
		x := c.half * math.Pow(math.Sin(math.Pi/2*float64(i)/n), 2/c.nFront)
		pts[i] = r3.Vec{X: x, Z: s.frontZ(x, 0)}
	}
	return polyLength(pts)
}
