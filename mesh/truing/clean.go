package truing

import (
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// move is how a seam moves in the flat: by a at its start, by b at its end, in
// between in proportion, so that a straight seam stays straight and a clean
// curve clean.
type move struct{ a, b r2.Vec }

// at returns the step at share t.
func (m move) at(t float64) r2.Vec { return r2.Add(r2.Scale(1-t, m.a), r2.Scale(t, m.b)) }

// moved fits a move to the marks of a half (least squares).
func (m *seam) moved(h Half) move {
	var f fit
	for _, k := range m.marks {
		if !h.takes(k.side) {
			continue
		}
		want, _ := along(m.line, k.t)
		f.add(1, k.t, r2.Sub(k.at, want))
	}
	if f.count() == 0 {
		return move{}
	}
	const least = 1e-3 // of the seam, that the marks are apart
	a, slope, ok := f.solve(least)
	if !ok {
		return move{f.mean(), f.mean()}
	}
	return move{a, r2.Add(a, slope)}
}

// leftRight returns the largest difference of two marks of the same place,
// folded onto each other, m.
func leftRight(marks []mark) float64 {
	var most float64
	for _, l := range marks {
		for _, r := range marks {
			if l.side > 0 && r.side < 0 && math.Abs(l.t-r.t) < 1e-6 {
				most = math.Max(most, r2.Norm(r2.Sub(l.at, r.at)))
			}
		}
	}
	return most
}

// redraw moves the lines of the draft so that they meet: a corner goes where
// its seams agree on, the armhole follows its ends, CF stays CF.
func redraw(l draft.Lines, moves map[string]move, lower string) draft.Lines {
	shoulder, side, waist := moves["shoulder"], moves["side seam"], moves[lower]
	corner := r2.Scale(0.5, r2.Add(side.b, waist.a))
	cf := r2.Vec{Y: waist.b.Y}
	out := l
	out.Shoulder = shifted(l.Shoulder, shoulder)
	out.Armhole = shifted(l.Armhole, move{shoulder.b, side.a})
	out.Side = shifted(l.Side, move{side.a, corner})
	out.Waist = shifted(l.Waist, move{corner, cf})
	n := len(out.Waist)
	out.Waist[n-1].X = 0
	if l.Waist[n-2].Y == l.Waist[n-1].Y { // squared to CF in the draft
		out.Waist[n-2].Y = out.Waist[n-1].Y
	}
	if l.Dart == nil {
		out.Waist = rounded(out.Waist)
		return out
	}
	out.Dart = truedDart(l, move{corner, cf})
	for i, v := range l.Waist {
		if v == l.Dart[0] {
			out.Waist[i] = out.Dart[0]
		}
		if v == l.Dart[2] {
			out.Waist[i] = out.Dart[2]
		}
	}
	return out
}

// shifted returns the line moved by m.
func shifted(line []r2.Vec, m move) []r2.Vec {
	out := slices.Clone(line)
	whole, s := polyline.Length(line), 0.0
	for i := range out {
		if i > 0 {
			s += r2.Norm(r2.Sub(line[i], line[i-1]))
		}
		out[i] = r2.Add(line[i], m.at(s/whole))
	}
	return out
}

// movedPleats returns the pleats of p with their legs where the shoulder seam, moved
// point by point, has taken them.
func movedPleats(p draft.Cowl, to []r2.Vec) []draft.Pleat {
	out := slices.Clone(p.Pleats)
	taken := 0.0
	for k := range out {
		a, b := p.Legs(k)
		a, b = carried(p.Shoulder, to, a), carried(p.Shoulder, to, b)
		out[k].At, out[k].Depth = a-taken, (b-a)/2
		taken += b - a
	}
	return out
}

// carried returns how far along the line to the place s of the line from has
// come; to has the points of from, moved (m).
func carried(from, to []r2.Vec, s float64) float64 {
	at, i := along(from, s/polyline.Length(from))
	u := r2.Norm(r2.Sub(at, from[i])) / r2.Norm(r2.Sub(from[i+1], from[i]))
	return polyline.Length(to[:i+1]) + u*r2.Norm(r2.Sub(to[i+1], to[i]))
}

// truedDart moves the legs with the waist and gives both their mean length,
// or they could not be stitched.
func truedDart(l draft.Lines, m move) []r2.Vec {
	outer := r2.Add(l.Dart[0], m.at(share(l.Waist, l.Dart[0])))
	inner := r2.Add(l.Dart[2], m.at(share(l.Waist, l.Dart[2])))
	a, b := r2.Sub(outer, l.Dart[1]), r2.Sub(inner, l.Dart[1])
	mean := (r2.Norm(a) + r2.Norm(b)) / 2
	return []r2.Vec{
		r2.Add(l.Dart[1], r2.Scale(mean/r2.Norm(a), a)), l.Dart[1],
		r2.Add(l.Dart[1], r2.Scale(mean/r2.Norm(b), b)),
	}
}

const (
	// roundFrom is the turn from which a corner within a seam is drawn round (rad).
	roundFrom = 3 * math.Pi / 180
	// roundOver is how far before and after the corner the curve runs, m: at
	// 12°, the corner of a closed dart, it cuts the corner by 1 mm.
	roundOver   = 0.020
	roundPieces = 8
)

// rounded draws the corners within a seam as curves (quadratic Bézier), as a
// waist is drawn after its dart is closed.
func rounded(line []r2.Vec) []r2.Vec {
	out := []r2.Vec{line[0]}
	for i := 1; i < len(line)-1; i++ {
		a, b := r2.Sub(line[i-1], line[i]), r2.Sub(line[i+1], line[i])
		turn := math.Pi - math.Acos(min(max(r2.Cos(a, b), -1), 1))
		over := min(roundOver, r2.Norm(a)/2, r2.Norm(b)/2)
		if turn < roundFrom {
			out = append(out, line[i])
			continue
		}
		p, q := r2.Add(line[i], r2.Scale(over, r2.Unit(a))), r2.Add(line[i], r2.Scale(over, r2.Unit(b)))
		for k := 0; k <= roundPieces; k++ {
			t := float64(k) / roundPieces
			out = append(out, r2.Add(r2.Scale((1-t)*(1-t), p), r2.Add(r2.Scale(2*t*(1-t), line[i]), r2.Scale(t*t, q))))
		}
	}
	return append(out, line[len(line)-1])
}
