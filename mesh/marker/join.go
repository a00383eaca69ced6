package marker

import (
	"math"

	"cowl/mesh/limit"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Part says what of a piece is laid.
type Part int

// The parts of a piece.
const (
	Whole  Part = iota
	Body        // the piece without its corner
	Corner      // the corner that is joined on
)

// String returns what is written on the part.
func (p Part) String() string { return [...]string{"", "without its corner", "corner"}[p] }

// clearOfCentre is how far a joined corner keeps from CF or CB, m: never a
// seam in the middle of a bias front.
const clearOfCentre = 0.05

// parts returns p whole if the cloth is wide enough, or in two parts joined
// along the straight grain.
func (c Cloth) parts(p paper.Piece) ([]blank, error) {
	whole := blank{cut: clipped(p), grain: p.Grain()}
	cut, _ := turned(whole.cut, whole.grain)
	_, hi := paper.Box(cut)
	if hi.X <= c.Width+1e-9 {
		return []blank{whole}, nil
	}
	if c.Join {
		for _, low := range []bool{true, false} {
			if two, ok := c.split(p, whole, low); ok {
				return two, nil
			}
		}
	}
	why := "take wider cloth, another grain or a separate facing"
	if !c.Join {
		why += ", or join a corner"
	} else {
		why += "; no corner low at the side can be joined on"
	}
	return nil, limit.Errorf("width", "%s is %v across the cloth with allowances, on %v of usable width: %v; %s",
		p.Name, limit.Metres(hi.X), limit.Metres(c.Width), ErrTooWide, why)
}

// split cuts what is too wide off the low or the high side, along the warp,
// with an allowance on both parts.
func (c Cloth) split(p paper.Piece, whole blank, low bool) ([]blank, bool) {
	sin, cos := math.Sincos(whole.grain)
	across := r2.Vec{X: cos, Y: -sin} // place across the cloth is Dot(v, across)
	if low {
		across = r2.Scale(-1, across)
	}
	far := math.Inf(-1)
	near := math.Inf(1)
	for _, v := range whole.cut {
		far, near = math.Max(far, r2.Dot(v, across)), math.Min(near, r2.Dot(v, across))
	}
	seam := near + c.Width - c.Seam // the body reaches an allowance beyond it
	if far-seam+c.Seam > c.Width {
		return nil, false // the corner is wider than the cloth
	}
	corner := polyline.Clip(whole.cut, across, seam)
	if !lowAtSide(p, corner) {
		return nil, false
	}
	whole.join = ends(corner, across, seam)
	body, loose := whole, whole
	body.part, body.cut = Body, polyline.Clip(whole.cut, r2.Scale(-1, across), -seam-c.Seam)
	loose.part, loose.cut = Corner, polyline.Clip(whole.cut, across, seam-c.Seam)
	return []blank{body, loose}, true
}

// ends returns the ends of the side of a clipped polygon on which it was cut.
func ends(poly []r2.Vec, n r2.Vec, d float64) []r2.Vec {
	var a, b r2.Vec
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range poly {
		if math.Abs(r2.Dot(n, v)-d) > 1e-9 {
			continue
		}
		if s := r2.Cross(n, v); s < lo {
			a, lo = v, s
		}
		if s := r2.Cross(n, v); s > hi {
			b, hi = v, s
		}
	}
	return []r2.Vec{a, b}
}

// lowAtSide reports whether the corner lies below the underarm and off the
// middle, on one side of it.
func lowAtSide(p paper.Piece, corner []r2.Vec) bool {
	underarm, ok := underarm(p)
	if !ok || len(corner) < 3 {
		return false
	}
	left := corner[0].X > 0
	for _, v := range corner {
		if v.Y > underarm || math.Abs(v.X) < clearOfCentre || (v.X > 0) != left {
			return false
		}
	}
	return true
}

// underarm returns the height of the upper end of the side seams; false for a
// piece that has none.
func underarm(p paper.Piece) (float64, bool) {
	y, ok := math.Inf(-1), false
	for _, e := range p.Edges {
		if e.Name == "left side seam" || e.Name == "right side seam" {
			y, ok = math.Max(y, math.Max(p.Outline[e.From].Y, p.Outline[e.To].Y)), true
		}
	}
	return y, ok
}
