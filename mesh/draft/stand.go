package draft

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Stand is what is done to a front on the stand after it is drafted. The zero
// value does nothing.
type Stand struct {
	Lower  float64 // m, the edge is trimmed lower by this, square to CF
	TakeIn float64 // m, surplus cut off the side seam at the waist, running to nothing at the underarm
}

// mostTakenIn is as far as a side seam is taken in on the stand, m: more wants
// another block.
const mostTakenIn = 0.05

// Treated returns p with s done to it. A value out of its range is an error.
func (p Piece) Treated(s Stand) (Piece, error) {
	if s == (Stand{}) {
		return p, nil
	}
	room := p.roomToLower()
	var errs []error
	for _, l := range []limit{
		{"lower", s.Lower * 100, 0, math.Max(room, 0) * 100, "cm", "the edge moves down the shoulder, and at least 3 cm of shoulder must be left to carry it"},
		{"take in", s.TakeIn * 100, 0, mostTakenIn * 100, "cm", "more wants another size"},
	} {
		const slack = 1e-9
		if !(l.value >= l.lo-slack && l.value <= l.hi+slack) {
			errs = append(errs, fmt.Errorf("draft: %s %.1f cm, want %.1f–%.1f cm: %s", l.name, l.value, l.lo, l.hi, l.fix))
		}
	}
	if err := errors.Join(errs...); err != nil {
		return Piece{}, err
	}
	l := p.Lines()
	down := 0.0
	l.Shoulder, down = lowered(l.Shoulder, p.FoldY-s.Lower)
	if s.TakeIn > 0 {
		at, i := along(l.Waist, s.TakeIn)
		l.Waist = append([]r2.Vec{at}, l.Waist[i+1:]...)
		l.Side = []r2.Vec{l.Side[0], at}
	}
	q := p
	q.CowlPoint += down
	q, err := q.Redrawn(l)
	if err != nil {
		return Piece{}, err
	}
	q.Extension = q.HalfEdge - p.Block.CowlPoint(q.CowlPoint).X
	return q, nil
}

// roomToLower returns how far the edge may be lowered, m: to the place of the
// shoulder seam below which leastShoulder is left.
func (p Piece) roomToLower() float64 {
	at, _ := along(p.Shoulder, length(p.Shoulder)-leastShoulder)
	return p.FoldY - at.Y
}

// lowered cuts a shoulder seam off at the height y and returns by how much it
// became shorter.
func lowered(seam []r2.Vec, y float64) (rest []r2.Vec, gone float64) {
	for i := 1; i < len(seam); i++ {
		a, b := seam[i-1], seam[i]
		if b.Y < y && a.Y >= y {
			at := lerp(a, b, (a.Y-y)/(a.Y-b.Y))
			rest = join([]r2.Vec{at}, seam[i:]...)
			return rest, length(seam) - length(rest)
		}
	}
	return seam, 0
}
