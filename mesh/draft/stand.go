package draft

import (
	"math"
	"slices"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Stand is what is done to a front on the stand after it is drafted. The zero
// value does nothing, and so does DefaultStand.
type Stand struct {
	Lower  float64 // m, the edge is trimmed lower by this, square to CF
	TakeIn float64 // m, surplus cut off the side seam at the waist and below it, running to nothing at the underarm

	// Release slashes on both halves, square into the piece; a length of 0 is none.
	ReleaseWaist     float64 // m, from the waist
	ReleaseWaistAt   float64 // 0..1 along the half waist, from the side seam to CF
	ReleaseArmhole   float64 // m, from the armhole
	ReleaseArmholeAt float64 // 0..1 along the armhole, from the shoulder tip to the underarm

	Weight float64 // kg, sewn to the free edge of the facing on CF

	StayShoulder, StayEdge bool // a stay tape sewn along both shoulder seams; along the cowl edge
}

// DefaultStand does nothing; slashes that are given a length begin half way
// along their seam.
func DefaultStand() Stand { return Stand{ReleaseWaistAt: 0.5, ReleaseArmholeAt: 0.5} }

// Release is a straight cut from a seam into the piece, m. What lies beside it
// hangs on its own.
type Release struct{ From, To r2.Vec }

const (
	mostTakenIn  = 0.05  // m, more wants another block
	mostReleased = 0.15  // m, longer and the piece comes apart
	mostWeight   = 0.050 // kg; 5 to 15 g is usual, covered lead or chain (common practice)
)

// Ranges returns the numbers of s with what each may be by itself on the piece
// p as it was cut.
func (s Stand) Ranges(p Cowl) []limit.Range {
	kept := limit.Say("at least %.0f of shoulder must be left to carry it", limit.Metres(leastShoulder))
	if p.Pleats != nil {
		kept = limit.Say("%.1f of shoulder must be left before the first pleat", limit.Metres(pleatLead))
	}
	slash := limit.Say("a slash is as short as lets the cloth lie")
	return []limit.Range{
		{Field: "lower", Value: s.Lower, Hi: math.Max(p.roomToLower(), 0), Unit: limit.Length,
			Why: limit.Say("the edge moves down the shoulder, and %v", kept)},
		{Field: "take in", Value: s.TakeIn, Hi: mostTakenIn, Unit: limit.Length, Why: limit.Say("more wants another size")},
		{Field: "release waist", Value: s.ReleaseWaist, Hi: mostReleased, Unit: limit.Length, Why: slash},
		{Field: "release armhole", Value: s.ReleaseArmhole, Hi: mostReleased, Unit: limit.Length, Why: slash},
		{Field: "release waist at", Value: s.ReleaseWaistAt, Hi: 1, Unit: limit.Share,
			Why: limit.Say("0 is the side seam, 1 the centre front")},
		{Field: "release armhole at", Value: s.ReleaseArmholeAt, Hi: 1, Unit: limit.Share,
			Why: limit.Say("0 is the shoulder tip, 1 the underarm")},
		{Field: "weight", Value: s.Weight, Hi: mostWeight, Unit: limit.Mass,
			Why: limit.Say("%.0f is usual", limit.Between(0.005, 0.015, limit.Mass))},
	}
}

// Treated returns p with s done to it: first the edge and the side seam by
// number, then the trims, one after the other, then slashes and what is sewn on.
// A value out of its range, and a trim that does not cut off a piece of armhole,
// side seam, waist or shoulder and leave the rest whole, are errors.
func (p Cowl) Treated(s Stand, trims ...TrimLine) (Cowl, error) {
	if (s == (Stand{}) || s == DefaultStand()) && len(trims) == 0 {
		return p, nil
	}
	if err := limit.Check(s.Ranges(p)); err != nil {
		return Cowl{}, err
	}
	if p.Hem > 0 && s.ReleaseWaist > 0 {
		return Cowl{}, limit.Errorf("release waist",
			"release waist %v, but the front goes on below the waist and is free there: leave the slash out, or let the "+
				"front end at the waist", limit.Metres(s.ReleaseWaist))
	}
	l := p.Lines()
	down := 0.0
	l.Shoulder, down = lowered(l.Shoulder, p.FoldY-s.Lower)
	if s.TakeIn > 0 {
		at, i := polyline.Along(l.Waist, s.TakeIn)
		l.Side = p.takenIn(s.TakeIn)
		l.Waist = append([]r2.Vec{at}, l.Waist[i+1:]...)
	}
	q := p
	q.CowlPoint += down
	q.Pleats = slices.Clone(p.Pleats)
	for k := range q.Pleats {
		q.Pleats[k].At -= down
	}
	q, err := q.Redrawn(l)
	if err != nil {
		return Cowl{}, err
	}
	q.Extension = q.HalfEdge - p.Block.CowlPoint(q.CowlPoint).X
	for k, line := range trims {
		if q, err = q.trimmed(line); err != nil {
			return Cowl{}, limit.Errorf(TrimField(k), "%s %v", TrimField(k), err)
		}
	}
	if s.Weight > 0 && q.Facing == 0 {
		return Cowl{}, limit.Errorf("weight", "weight hangs from the facing, and there is none: give the front a facing")
	}
	q.Weight, q.StayShoulder, q.StayEdge = s.Weight, s.StayShoulder, s.StayEdge
	q.Releases, err = q.released(s)
	return q, err
}

// released returns the slashes of both halves, wearer's left first.
func (p Cowl) released(s Stand) ([]Release, error) {
	var out []Release
	for _, r := range []struct {
		name     string
		line     []r2.Vec
		at, long float64
	}{
		{"release waist", p.Waist, s.ReleaseWaistAt, s.ReleaseWaist},
		{"release armhole", p.Armhole, s.ReleaseArmholeAt, s.ReleaseArmhole},
	} {
		if r.long == 0 {
			continue
		}
		both := slit(r.line, r.at, r.long)
		from, to := both[0].From, both[0].To
		if !p.clear(lerp(from, to, 0.005/r.long), to) {
			return nil, limit.Errorf(r.name, "%s %v at %.2f of the seam, want it to end %.0f inside the piece, off the "+
				"centre front and the dart: make it shorter or move it",
				r.name, limit.Metres(r.long), r.at, limit.Metres(clearOfRelease))
		}
		out = append(out, both...)
	}
	return out, nil
}

// slit cuts square into both halves, by long metres, at a share of a seam.
func slit(line []r2.Vec, share, long float64) []Release {
	from, i := polyline.Along(line, share*polyline.Length(line))
	to := r2.Sub(from, r2.Scale(long, outward(line[i], line[i+1])))
	return []Release{{from, to}, {mirrored(from), mirrored(to)}}
}

// clearOfRelease is how far a slash keeps off every other line, m.
const clearOfRelease = 0.02

// clear reports whether a cut on the left half keeps off every line but the
// one it begins on.
func (p Cowl) clear(from, to r2.Vec) bool {
	d := r2.Unit(r2.Sub(to, from))
	side := r2.Scale(clearOfRelease, r2.Vec{X: -d.Y, Y: d.X})
	tip := r2.Add(to, r2.Scale(clearOfRelease, d))
	bounds := append(append([]r2.Vec(nil), p.Outline...), p.Outline[0])
	cf := []r2.Vec{{Y: p.FoldY + 1}, {Y: p.FoldY - 1}}
	for _, cut := range [][]r2.Vec{{from, tip}, {to, r2.Add(to, side)}, {to, r2.Sub(to, side)}} {
		if linesMeet(cut, bounds) || linesMeet(cut, cf) || p.DartLeft != nil && linesMeet(cut, p.DartLeft) {
			return false
		}
	}
	return true
}

// roomToLower returns how far the edge may be lowered, m: to the place of the
// shoulder seam below which leastShoulder is left, and pleatLead before a pleat.
func (p Cowl) roomToLower() float64 {
	down := polyline.Length(p.Shoulder) - leastShoulder
	if p.Pleats != nil {
		first, _ := p.Pleats[0].lies()
		down = first - pleatLead
	}
	at, _ := polyline.Along(p.Shoulder, down)
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
			return rest, polyline.Length(seam) - polyline.Length(rest)
		}
	}
	return seam, 0
}
