package draft

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// front is the half front while it is being cut: the neck is gone, the seams
// move, CF and edge are not yet drawn.
type front struct {
	shoulder     []r2.Vec // cowl point to tip
	armhole      []r2.Vec // tip to underarm
	side         r2.Vec   // side seam at the waist
	outer, inner r2.Vec   // waist ends of the dart legs
	apex         r2.Vec
	cf           r2.Vec      // waist on the block's CF
	shifted      bool        // CF has moved away from cf
	pleats       []Pleat     // in shoulder
	drapes       []DrapeLine // of the slashes that were opened
}

// newFront cuts the neck of b away at the cowl point, metres down the shoulder.
func newFront(b Block, cowl float64) front {
	return front{
		shoulder: []r2.Vec{b.CowlPoint(cowl), b.ShoulderTip},
		armhole:  b.armhole(),
		side:     b.SideWaist, outer: b.DartOuter, inner: b.DartInner,
		apex: b.Apex, cf: r2.Vec{Y: b.CFWaist.Y},
	}
}

// edge returns the cowl point, where the squared edge ends.
func (f front) edge() r2.Vec { return f.shoulder[0] }

// waist returns the waist line, side to CF. Legs of a closed dart that differ
// by a hair are trued to their mean.
func (f front) waist() []r2.Vec {
	w := []r2.Vec{f.side, f.outer, f.inner, f.cf}
	if dist(f.outer, f.inner) <= leastDart {
		w = []r2.Vec{f.side, lerp(f.outer, f.inner, 0.5), f.cf}
	}
	w = join(nil, w...)
	if f.shifted {
		w = join(w, r2.Vec{Y: f.cf.Y})
	}
	return w
}

// moved returns f with every point moved by m.
func (f front) moved(m func(r2.Vec) r2.Vec) front {
	f.shoulder, f.armhole = movedLine(f.shoulder, m), movedLine(f.armhole, m)
	f.side, f.outer, f.inner = m(f.side), m(f.outer), m(f.inner)
	f.apex, f.cf = m(f.apex), m(f.cf)
	return f
}

func movedLine(line []r2.Vec, m func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, p := range line {
		out[i] = m(p)
	}
	return out
}

// about returns the turn by a about c, away from CF at the top for a above 0.
func about(c r2.Vec, a float64) func(r2.Vec) r2.Vec {
	return func(p r2.Vec) r2.Vec { return r2.Rotate(p, -a, c) }
}

// closed returns f with the dart closed by angle a: all that lies to the side
// of a slash CF–apex–outer leg swings about the apex, and the fullness opens
// at CF.
func (f front) closed(a float64) front {
	g := f.moved(about(f.apex, a))
	g.inner, g.cf = f.inner, f.cf
	return g
}

// pivoted returns f turned by a about the waist on CF.
func (f front) pivoted(a float64) front { return f.moved(about(f.cf, a)) }

// shiftedBy returns f moved d away from CF.
func (f front) shiftedBy(d float64) front {
	g := f.moved(func(p r2.Vec) r2.Vec { return r2.Vec{X: p.X + d, Y: p.Y} })
	g.shifted = d > 0
	return g
}

// slash is one cut from CF to the shoulder seam.
type slash struct {
	at    r2.Vec  // on CF
	hinge r2.Vec  // on the shoulder seam
	long  float64 // m, between them
}

// slashes returns n cuts, the top one first. Hinges divide the shoulder seam
// and CF ends divide CF between the edge and the level of the apex; the lowest
// cut runs from the tip to CF at apex level.
func (f front) slashes(n int) []slash {
	cuts := make([]slash, n)
	for i := range cuts {
		t := float64(i+1) / float64(n)
		hinge, _ := polyline.Along(f.shoulder, t*polyline.Length(f.shoulder))
		at := r2.Vec{Y: f.edge().Y + t*(f.apex.Y-f.edge().Y)}
		cuts[i] = slash{at: at, hinge: hinge, long: dist(hinge, at)}
	}
	return cuts
}

// spread returns f with n slashes opened by the gap g at CF each, hinged on
// the shoulder seam; the seam bends at the hinges and keeps its length. In the
// middle of each gap lies the line of a drape.
func (f front) spread(n int, g float64) front {
	cuts := f.slashes(n)
	seam, middle := []r2.Vec{f.edge()}, []r2.Vec{{}}
	for _, c := range cuts {
		seam, middle = append(seam, c.hinge), append(middle, c.at)
	}
	for i := n; i >= 1; i-- { // from the lowest cut up: what lies above swings with it
		a := opening(cuts[i-1], g)
		swing := about(seam[i], a)
		for k := range i {
			seam[k], middle[k] = swing(seam[k]), swing(middle[k])
		}
		middle[i] = about(seam[i], a/2)(middle[i])
	}
	f.shoulder, f.drapes = join(nil, seam...), nil
	for i := 1; i <= n; i++ {
		f.drapes = append(f.drapes, DrapeLine{CF: r2.Vec{Y: middle[i].Y}, Shoulder: seam[i]})
	}
	return f
}

// opening returns the angle of a cut whose ends are g apart.
func opening(s slash, g float64) float64 {
	return 2 * math.Asin(math.Min(1, g/(2*s.long)))
}
