package draft

import (
	"fmt"
	"math"
	"slices"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// TrimLine is a line drawn on the flat piece along which surplus is cut off
// both halves, m: on the wearer's left half, X from CF, Y as in Cowl. It comes
// in over one seam and goes out over the same or another; what lies between
// them, away from CF, falls away.
type TrimLine []r2.Vec

// TrimField is what errors call the trim numbered k from 0.
func TrimField(k int) string { return fmt.Sprintf("trim %d", k+1) }

// seam numbers in the order of the half outline, cowl point to CF.
const (
	shoulderSeam = iota
	armholeSeam
	sideSeam
	waistSeam
)

// crossing is where a trim line meets a seam.
type crossing struct {
	seam int
	down float64 // m, along the seam from its start
	at   r2.Vec
	line int     // side of the trim line
	far  float64 // m, along the trim line
}

// trimmed returns p with the surplus beyond the line cut off both halves.
func (p Cowl) trimmed(line TrimLine) (Cowl, error) {
	first, last, err := p.crossings(line)
	if err != nil {
		return Cowl{}, err
	}
	mid := between(line, first, last)
	if first.far > last.far {
		first, last = last, first
		mid = between(line, first, last)
	}
	if later(first, last) {
		first, last, mid = last, first, polyline.Reversed(mid)
	}
	if err := p.spares(first, last, mid); err != nil {
		return Cowl{}, err
	}
	q, err := p.Redrawn(p.Lines().without(first, last, mid))
	if err != nil {
		return Cowl{}, limit.Errorf("trims", "the piece that is left: %v", err)
	}
	if !polyline.Contains(q.Outline, p.Apex) {
		return Cowl{}, limit.Errorf("trims", "cuts off the bust point, want it left on the piece")
	}
	q.Extension = p.Extension
	return q, nil
}

// later reports whether a lies nearer to CF than b, round the half.
func later(a, b crossing) bool {
	return a.seam > b.seam || a.seam == b.seam && a.down > b.down
}

// crossings returns the two places where the line meets the seams.
func (p Cowl) crossings(line TrimLine) (a, b crossing, err error) {
	if len(line) < 2 {
		return a, b, limit.Errorf("trims", "has %d points, want 2 or more", len(line))
	}
	for _, v := range line {
		if !(v.X > 0 && v.X <= farthest && math.Abs(v.Y) <= farthest) {
			return a, b, limit.Errorf("trims", "point %v, want X %.0f and Y %.0f: draw it on the wearer's left half, the "+
				"other half is cut like it",
				place(v), limit.Between(0, farthest, limit.Length), limit.Between(-farthest, farthest, limit.Length))
		}
	}
	top := slices.Concat(p.FacingEnd, p.FacingEdge, []r2.Vec{{Y: p.FoldY}, {X: p.HalfEdge, Y: p.FoldY}})
	if linesMeet(line, top) {
		return a, b, limit.Errorf("trims", "meets the cowl edge or its facing, which folds along a straight line: lower "+
			"the edge by lower_cm instead")
	}
	if p.DartLeft != nil && linesMeet(line, p.DartLeft) {
		return a, b, limit.Errorf("trims", "crosses what is left of the dart: keep off it, or close more of the dart")
	}
	var all []crossing
	l := p.Lines()
	for k, seam := range [][]r2.Vec{l.Shoulder, l.Armhole, l.Side, l.Waist} {
		for _, c := range meets(line, seam) {
			c.seam = k
			if !slices.ContainsFunc(all, func(o crossing) bool { return dist(o.at, c.at) < samePoint }) {
				all = append(all, c)
			}
		}
	}
	if len(all) != 2 {
		return a, b, limit.Errorf("trims", "crosses the seams of the half in %d places, want 2: begin and end it outside "+
			"the piece%v", len(all), p.endsInside(line))
	}
	return all[0], all[1], nil
}

// endsInside says which ends of a line lie inside the piece.
func (p Cowl) endsInside(line TrimLine) limit.Words {
	said := limit.Say("")
	for _, e := range []struct {
		name string
		at   r2.Vec
	}{{"first", line[0]}, {"last", line[len(line)-1]}} {
		if polyline.Contains(p.Outline, e.at) {
			said = limit.Say("%v; its %s point %v lies inside", said, e.name, place(e.at))
		}
	}
	return said
}

// meets lists where the line crosses a seam.
func meets(line, seam []r2.Vec) []crossing {
	var out []crossing
	far := 0.0
	for i := 1; i < len(line); i++ {
		down := 0.0
		d := r2.Sub(line[i], line[i-1])
		for j := 1; j < len(seam); j++ {
			e, w := r2.Sub(seam[j], seam[j-1]), r2.Sub(seam[j-1], line[i-1])
			if det := r2.Cross(d, e); det != 0 {
				t, u := r2.Cross(w, e)/det, r2.Cross(w, d)/det
				if t >= 0 && t <= 1 && u >= 0 && u <= 1 {
					out = append(out, crossing{down: down + u*r2.Norm(e), at: lerp(seam[j-1], seam[j], u), line: i - 1, far: far +
						t*r2.Norm(d)})
				}
			}
			down += r2.Norm(e)
		}
		far += r2.Norm(d)
	}
	return out
}

// between returns the trim line from one crossing to one farther along it.
func between(line TrimLine, a, b crossing) []r2.Vec {
	out := []r2.Vec{a.at}
	for i := a.line + 1; i <= b.line; i++ {
		out = join(out, line[i])
	}
	return join(out, b.at)
}

// spares says what the cut between two crossings must not take.
func (p Cowl) spares(first, last crossing, mid []r2.Vec) error {
	half, _ := polyline.Along(mid, polyline.Length(mid)/2)
	if !polyline.Contains(p.Outline, half) {
		return limit.Errorf("trims", "begins inside the piece and leaves it, want it to come in from outside and go out "+
			"again")
	}
	if first.seam == shoulderSeam {
		least := leastShoulder
		if n := len(p.Pleats); n > 0 {
			_, end := p.Legs(n - 1)
			least = end + pleatTip
			if p.Pleats[n-1].To == Neck {
				least += p.Pleats[n-1].Depth
			}
		}
		if first.down < least {
			return limit.Errorf("trims", "cuts the shoulder %v from the cowl point, want at least %v: the cowl point and "+
				"what is left of the shoulder carry the edge", limit.Metres(first.down), limit.Metres(least))
		}
		if last.seam == waistSeam {
			return limit.Errorf("trims", "cuts off armhole and side seam together, want one of them left")
		}
	}
	return nil
}

// owner returns the seam that a trim between two crossings becomes part of:
// the whole seam that it goes across, or over a corner the one that it takes
// more of, along which it therefore runs. The shoulder keeps its line.
func (l Lines) owner(first, last crossing) int {
	switch {
	case last.seam == first.seam+2:
		return first.seam + 1
	case last.seam == first.seam:
		return first.seam
	case first.seam == shoulderSeam:
		return last.seam
	}
	seams := [][]r2.Vec{l.Shoulder, l.Armhole, l.Side, l.Waist}
	if polyline.Length(seams[first.seam])-first.down > last.down {
		return first.seam
	}
	return last.seam
}

// without returns the lines with what lies between two crossings replaced by
// mid.
func (l Lines) without(first, last crossing, mid []r2.Vec) Lines {
	seams := [][]r2.Vec{l.Shoulder, l.Armhole, l.Side, l.Waist}
	owner := l.owner(first, last)
	before := append(upTo(seams[first.seam], first.down), first.at)
	left := polyline.Length(seams[last.seam]) - last.down
	after := append([]r2.Vec{last.at}, polyline.Reversed(upTo(polyline.Reversed(seams[last.seam]), left))...)
	var drawn []r2.Vec
	if first.seam == owner {
		drawn = join(drawn, before...)
	} else {
		seams[first.seam] = join(nil, before...)
	}
	drawn = join(drawn, mid...)
	if last.seam == owner {
		drawn = join(drawn, after...)
	} else {
		seams[last.seam] = join(nil, after...)
	}
	seams[owner] = drawn
	l.Shoulder, l.Armhole, l.Side, l.Waist = seams[0], seams[1], seams[2], seams[3]
	return l
}

// upTo returns the points of a line that lie less than s metres along it.
func upTo(line []r2.Vec, s float64) []r2.Vec {
	out := []r2.Vec{}
	for i, v := range line {
		if polyline.Length(line[:i+1]) < s {
			out = append(out, v)
		}
	}
	return out
}
