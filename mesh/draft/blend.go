package draft

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Blending is what a patternmaker does before the pattern is cut: the lines that run on
// over a seam are drawn so that they go over it without a corner. Waist and armhole
// of the front are squared to side seam and shoulder, waist and centre front too, and
// the corner of a closed dart goes into one curve (common practice).
const (
	// squareFor is how far a line is drawn straight from a seam that it is squared
	// to, m: the corner can be checked with a set square there.
	squareFor = 0.005
	// blendOver is the share of an armhole that is drawn anew at either end.
	blendOver = 0.3
	// mostBlend is as far as a corner is turned (rad): beyond, it was drawn so on purpose.
	mostBlend = 30 * math.Pi / 180
	// easedDart is a dart too narrow to be sewn, m: it is eased in (common practice).
	easedDart = 0.005
)

// Blended returns p with its waist as one clean curve from the side seam to the centre
// front, square to both, and its armhole square to shoulder and side seam. A front that
// goes on to a hem has such a line at its waist, and a hem that is square to the side
// seam. What is left of the dart is closed for it and opened again; less than 5 mm is not
// sewn but eased, and counts as Eased.
// Seam lengths of shoulder and side stay. A piece that can no longer be drawn is an error.
func (p Cowl) Blended() (Cowl, error) {
	l := p.Lines()
	q := p
	if l.Dart != nil && dist(l.Dart[0], l.Dart[2]) < easedDart {
		q.Eased, l.Dart = dist(l.Dart[0], l.Dart[2]), nil
	}
	l.Armhole = blendedArmhole(l.Armhole, l.Shoulder, l.Side)
	if p.Hem == 0 {
		l.Waist, l.Dart = blendedWaist(l.Side, l.Waist, l.Dart)
	} else {
		l.Waist = hemFrom(l.Side, l.Waist[len(l.Waist)-1].Y, squareFor)
	}
	q, err := q.Redrawn(l)
	if err != nil {
		return Cowl{}, err
	}
	if p.Hem > 0 {
		side := append(cutAt(q.Side, q.sideWaist), q.WaistLine[0])
		q.WaistLine, _ = blendedWaist(join(nil, side...), q.WaistLine, nil)
	}
	q.Clean = true
	return q, nil
}

// cutAt returns the points of a line before the place s metres down it.
func cutAt(line []r2.Vec, s float64) []r2.Vec {
	_, i := polyline.Along(line, s)
	return append([]r2.Vec(nil), line[:i+1]...)
}

// blendedWaist returns the waist, side to centre line, as one curve that leaves the side
// seam and reaches the centre line squarely, and the dart with legs that end on it: it
// is closed about its point first, so that the curve is clean once it is sewn. A waist
// that turns too far for that stays as it is.
func blendedWaist(side, waist, dart []r2.Vec) (line, legs []r2.Vec) {
	return waistFrom(side, waist, dart, math.Pi/2)
}

// waistFrom is blendedWaist with the angle inside the piece between side seam and waist (rad).
func waistFrom(side, waist, dart []r2.Vec, angle float64) (line, legs []r2.Vec) {
	n := len(side)
	from, to := waist[0], waist[len(waist)-1]
	leave := r2.Unit(r2.Rotate(r2.Sub(side[n-2], side[n-1]), angle, r2.Vec{}))
	if dart == nil {
		if !blendable(leave, from, to) {
			return waist, nil
		}
		return squared(from, to, leave, r2.Vec{X: -1}), nil
	}
	a := turn(r2.Sub(dart[0], dart[1]), r2.Sub(dart[2], dart[1]))
	closing := func(v r2.Vec) r2.Vec { return r2.Rotate(v, a, dart[1]) }
	from, leave = closing(from), r2.Rotate(leave, a, r2.Vec{})
	if !blendable(leave, from, to) {
		return waist, dart
	}
	curve := squared(from, to, leave, r2.Vec{X: -1})
	leg := r2.Unit(r2.Sub(dart[2], dart[1]))
	at := meets([]r2.Vec{dart[1], r2.Add(dart[1], r2.Scale(farthest, leg))}, curve)
	if len(at) != 1 {
		return waist, dart
	}
	_, k := polyline.Along(curve, at[0].down)
	outer := append(append([]r2.Vec(nil), curve[:k+1]...), at[0].at)
	outer = movedLine(join(nil, outer...), func(v r2.Vec) r2.Vec { return r2.Rotate(v, -a, dart[1]) })
	inner := join([]r2.Vec{at[0].at}, curve[k+1:]...)
	legs = []r2.Vec{outer[len(outer)-1], dart[1], inner[0]}
	return append(outer, inner...), legs
}

// blendable reports whether a line that leaves a place along a direction can come
// to another without turning back.
func blendable(leave, from, to r2.Vec) bool {
	chord := r2.Sub(to, from)
	return math.Abs(turn(chord, leave)) < math.Pi/3 && math.Abs(turn(chord, r2.Vec{X: -1})) < math.Pi/3 &&
		r2.Norm(chord) > 4*squareFor
}

// squared returns a curve that leaves a along u and reaches b along v, unit vectors, and
// is straight there for squareFor.
func squared(a, b, u, v r2.Vec) []r2.Vec {
	p, q := r2.Add(a, r2.Scale(squareFor, u)), r2.Sub(b, r2.Scale(squareFor, v))
	h := dist(p, q)
	line := []r2.Vec{a}
	for i := range 2*pointsPerSpan + 1 {
		line = append(line, hermite(p, q, r2.Scale(h, u), r2.Scale(h, v), float64(i)/(2*pointsPerSpan)))
	}
	return append(line, b)
}

// blendedArmhole returns the armhole, tip to underarm, square to the seams at its ends.
func blendedArmhole(armhole, shoulder, side []r2.Vec) []r2.Vec {
	return armholeFrom(armhole, shoulder, side, math.Pi/2, math.Pi/2)
}

// armholeFrom returns the armhole with the angles inside the piece that it has with the
// shoulder seam and with the side seam (rad). An end that is more than mostBlend off, and
// one that has it already, stay.
func armholeFrom(armhole, shoulder, side []r2.Vec, tip, under float64) []r2.Vec {
	n := len(shoulder)
	out := turnedEnd(armhole, r2.Sub(shoulder[n-2], shoulder[n-1]), tip)
	return polyline.Reversed(turnedEnd(polyline.Reversed(out), r2.Sub(side[1], side[0]), -under))
}

// turnedEnd draws the beginning of a line anew so that it leaves its first point turned
// by angle from the seam's direction.
func turnedEnd(line []r2.Vec, seam r2.Vec, angle float64) []r2.Vec {
	leave := r2.Unit(r2.Rotate(seam, angle, r2.Vec{}))
	if off := math.Abs(turn(r2.Sub(line[1], line[0]), leave)); off > mostBlend || off < 1e-9 {
		return line
	}
	over := blendOver * polyline.Length(line)
	to, k := polyline.Along(line, over)
	into := r2.Unit(r2.Sub(line[k+1], line[k]))
	from := r2.Add(line[0], r2.Scale(squareFor, leave))
	h := dist(from, to)
	out := []r2.Vec{line[0]}
	for i := range pointsPerSpan + 1 {
		out = append(out, hermite(from, to, r2.Scale(h, leave), r2.Scale(h, into), float64(i)/pointsPerSpan))
	}
	return join(out, line[k+1:]...)
}
