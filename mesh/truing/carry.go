package truing

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// reach is how far around its rim the cloth is taken to go on as it lies, m:
// half the cloth that is left outside a seam when a toile is trimmed.
const reach = 0.015

// carrier brings places in space back to the flat front: never to the facing,
// which lies beneath it.
type carrier struct {
	sheet *mesh.Sheet
	tris  []int // of the front
	rim   map[[2]int32]bool
	at    []int // vertices of the front
}

// newCarrier sorts out the front of a draped sheet.
func newCarrier(s *mesh.Sheet) carrier {
	c := carrier{sheet: s, rim: map[[2]int32]bool{}}
	used := make([]bool, len(s.Pos))
	for i, t := range s.Tris {
		if s.Facing[i] {
			continue
		}
		c.tris = append(c.tris, i)
		for k := range 3 {
			used[t[k]] = true
			a, b := t[k], t[(k+1)%3]
			if c.rim[[2]int32{b, a}] {
				delete(c.rim, [2]int32{b, a})
			} else {
				c.rim[[2]int32{a, b}] = true
			}
		}
	}
	for v, u := range used {
		if u {
			c.at = append(c.at, v)
		}
	}
	return c
}

// foot is the place of the cloth that lies nearest to a place in space.
type foot struct {
	flat   r2.Vec  // m
	at     r3.Vec  // m
	normal r3.Vec  // unit, of the triangle
	away   float64 // m, how far off the cloth the place is
	rim    bool    // whether it is the rim of the cloth that is nearest
}

// foot returns the nearest place of the front.
func (c carrier) foot(q r3.Vec) foot {
	best := foot{away: math.Inf(1)}
	s := c.sheet
	for _, i := range c.tris {
		t := s.Tris[i]
		w := nearest(q, s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]])
		var p r3.Vec
		var f r2.Vec
		for k := range 3 {
			p = r3.Add(p, r3.Scale(w[k], s.Pos[t[k]]))
			f = r2.Add(f, r2.Scale(w[k], s.Flat[t[k]]))
		}
		if d := r3.Norm(r3.Sub(q, p)); d < best.away {
			n := r3.Cross(r3.Sub(s.Pos[t[1]], s.Pos[t[0]]), r3.Sub(s.Pos[t[2]], s.Pos[t[0]]))
			best = foot{flat: f, at: p, normal: r3.Unit(n), away: d, rim: c.onRim(t, w)}
		}
	}
	return best
}

// onRim reports whether the place with weights w of triangle t lies on the rim.
func (c carrier) onRim(t [3]int32, w [3]float64) bool {
	const on = 1e-9
	for k := range 3 {
		if w[(k+2)%3] < on && c.rim[[2]int32{t[k], t[(k+1)%3]}] {
			return true
		}
	}
	return false
}

// mark returns the flat place that a pencil at q marks. Beyond the rim the
// cloth is taken to go on as it lies there; false further off than reach.
func (c carrier) mark(q r3.Vec) (r2.Vec, bool) {
	f := c.foot(q)
	off := r3.Sub(q, f.at)
	off = r3.Sub(off, r3.Scale(r3.Dot(off, f.normal), f.normal))
	if !f.rim || r3.Norm(off) < 1e-9 {
		return f.flat, f.away <= reach
	}
	return r2.Add(f.flat, c.flatStep(f, off)), f.away <= reach
}

// flatStep returns the flat step of a small step in space along the cloth at f: the
// linear map that fits the cloth around best (least squares).
func (c carrier) flatStep(f foot, step r3.Vec) r2.Vec {
	e1 := r3.Unit(step)
	e2 := r3.Cross(f.normal, e1)
	var around fit
	for _, v := range c.at {
		flat := r2.Sub(c.sheet.Flat[v], f.flat)
		if r2.Norm(flat) > 2*reach {
			continue
		}
		d := r3.Sub(c.sheet.Pos[v], f.at)
		around.add(r3.Dot(d, e1), r3.Dot(d, e2), flat)
	}
	const least = 3e-5
	along, _, ok := around.solve(least)
	if !ok {
		return r2.Vec{} // too little cloth around to tell
	}
	return r2.Scale(r3.Norm(step), along)
}

// nearest returns the weights of the place of triangle abc that is nearest to
// q (C. Ericson, Real-Time Collision Detection, 2005, section 5.1.5).
func nearest(q, a, b, c r3.Vec) [3]float64 {
	ab, ac, ap := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(q, a)
	d1, d2 := r3.Dot(ab, ap), r3.Dot(ac, ap)
	if d1 <= 0 && d2 <= 0 {
		return [3]float64{1, 0, 0}
	}
	bp := r3.Sub(q, b)
	d3, d4 := r3.Dot(ab, bp), r3.Dot(ac, bp)
	if d3 >= 0 && d4 <= d3 {
		return [3]float64{0, 1, 0}
	}
	vc := d1*d4 - d3*d2
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		t := d1 / (d1 - d3)
		return [3]float64{1 - t, t, 0}
	}
	cp := r3.Sub(q, c)
	d5, d6 := r3.Dot(ab, cp), r3.Dot(ac, cp)
	if d6 >= 0 && d5 <= d6 {
		return [3]float64{0, 0, 1}
	}
	vb := d5*d2 - d1*d6
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		t := d2 / (d2 - d6)
		return [3]float64{1 - t, 0, t}
	}
	va := d3*d6 - d5*d4
	if va <= 0 && d4-d3 >= 0 && d5-d6 >= 0 {
		t := (d4 - d3) / (d4 - d3 + d5 - d6)
		return [3]float64{0, 1 - t, t}
	}
	s := 1 / (va + vb + vc)
	return [3]float64{1 - (vb+vc)*s, vb * s, vc * s}
}
